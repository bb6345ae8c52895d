package straywire.web;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStreamReader;
import java.io.OutputStream;
import java.net.CookieManager;
import java.net.Socket;
import java.net.URI;
import java.net.http.HttpClient;
import java.net.http.HttpRequest;
import java.net.http.HttpResponse;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.Iterator;
import java.util.stream.Stream;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import straywire.advice.RuleBase;
import straywire.casebook.Workbench;
import straywire.module.Module;
import straywire.module.ModuleFile;
import straywire.parts.ShippedParts;
import straywire.sitting.Sitting;

class PageServerTest {
  private static final ObjectMapper MAPPER = new ObjectMapper();

  private static final Module MODULE =
      ModuleFile.readShipped(Path.of("cases/beat-memory/module.yaml"), new ShippedParts());

  private Sitting sitting;
  private PageServer page;
  private URI root;
  private HttpClient browser;

  @BeforeEach
  void serve() throws Exception {
    sitting = Sitting.unrecorded(new Workbench(MODULE, RuleBase.shipped()));
    page = PageServer.serve(sitting, 0);
    root = page.address().resolve("/");
    browser =
        HttpClient.newBuilder()
            .cookieHandler(new CookieManager())
            .followRedirects(HttpClient.Redirect.NORMAL)
            .build();
    assertThat(get(browser, page.address()).statusCode()).isEqualTo(200);
  }

  @AfterEach
  void stop() throws IOException {
    page.close();
    sitting.close();
  }

  private static HttpResponse<String> get(HttpClient client, URI address) throws Exception {
    return client.send(
        HttpRequest.newBuilder(address).build(), HttpResponse.BodyHandlers.ofString());
  }

  private HttpRequest.Builder post(String body) {
    return HttpRequest.newBuilder(root.resolve("/dialogue"))
        .header("Content-Type", "application/json")
        .header("Origin", origin())
        .POST(HttpRequest.BodyPublishers.ofString(body));
  }

  private String origin() {
    return "http://127.0.0.1:" + root.getPort();
  }

  private HttpResponse<String> sent(HttpRequest.Builder request) throws Exception {
    return browser.send(request.build(), HttpResponse.BodyHandlers.ofString());
  }

  private JsonNode said(String body) throws Exception {
    HttpResponse<String> reply = sent(post(body));
    assertThat(reply.statusCode()).isEqualTo(200);
    return MAPPER.readTree(reply.body());
  }

  @Test
  void aWholeSittingGoesFromPowerUpToItsFinding() throws Exception {
    said("{\"answer\":{\"seen\":{\"memory\":\"01110100\",\"bus\":\"00000000\"}}}");
    JsonNode differs = said("{\"answer\":\"10010100\"}");
    assertThat(differs.at("/view/state/stage").asText()).isEqualTo("searching");
    said("{\"answer\":{\"seen\":{\"memory\":\"00000100\"}}}");
    JsonNode found = said("{\"answer\":{\"measured\":\"U2.3/row\",\"volts\":1.45}}");
    assertThat(found.at("/view/state/suspects/0/faults/0/id").asText())
        .isEqualTo("jumper-missing U1.3-U2.3");
    assertThat(found.at("/view/places/jumper-missing U1.3-U2.3").toString())
        .isEqualTo("[\"U1.3\",\"U2.3\"]");
    said("{\"command\":\"repaired\"}");
    for (int round = 0; round < 20; round++) {
      JsonNode next = MAPPER.readTree(get(browser, root.resolve("/view")).body()).at("/state/next");
      if (next.isMissingNode()) {
        break;
      }
      said("{\"answer\":\"" + next.at("/expected/0").asText() + "\"}");
    }
    JsonNode finished = said("{\"command\":\"finish\"}");
    assertThat(finished.at("/view/state/stage").asText()).isEqualTo("closed");
  }

  @Test
  void ownWordsAreTakenAsInTheTerminal() throws Exception {
    JsonNode reply = said("{\"words\":\"measure U1.16 5.0\"}");
    assertThat(reply.at("/entered").toString()).isEqualTo("[1]");
    assertThat(reply.at("/view/log/0/words").asText()).startsWith("measure U1.16");
    assertThat(said("{\"words\":\"measure U9.1 5.0\"}").at("/error").asText()).contains("U9");
  }

  @Test
  void anUndoneEntryIsShownAsTakenBack() throws Exception {
    said("{\"words\":\"power on\"}");
    JsonNode undone = said("{\"command\":\"undo\"}");
    assertThat(undone.at("/view/log/0/stands").asBoolean(true)).isFalse();
  }

  @Test
  void anotherWindowIsToldOfAnEntryAtOnce() throws Exception {
    HttpResponse<Stream<String>> stream =
        browser.send(
            HttpRequest.newBuilder(root.resolve("/updates")).build(),
            HttpResponse.BodyHandlers.ofLines());
    assertThat(stream.headers().firstValue("Content-Type").orElse(""))
        .startsWith("text/event-stream");
    try (Stream<String> lines = stream.body()) {
      Iterator<String> events = lines.filter(line -> line.startsWith("data: ")).iterator();
      assertThat(view(events).at("/version").asInt()).isZero();
      said("{\"words\":\"power on\"}");
      assertThat(view(events).at("/log/0/words").asText()).isEqualTo("power on");
    }
  }

  private static JsonNode view(Iterator<String> events) throws IOException {
    return MAPPER.readTree(events.next().substring("data: ".length()));
  }

  @Test
  void theDrawingHasEveryPinWithItsNameAndLine() throws Exception {
    JsonNode drawing = MAPPER.readTree(get(browser, root.resolve("/module")).body());
    JsonNode pin = drawing.at("/parts/0/pins/2");
    assertThat(drawing.at("/parts/0/label").asText()).isEqualTo("U1");
    assertThat(pin.at("/name").asText()).isEqualTo("/WE");
    assertThat(pin.at("/net").asText()).isEqualTo("WRITE");
  }

  @Test
  void whoHasNotTheTokenIsServedNothing() throws Exception {
    HttpClient stranger = HttpClient.newHttpClient();
    for (String path : new String[] {"/", "/page.js", "/module", "/view", "/updates"}) {
      assertThat(get(stranger, root.resolve(path)).statusCode()).as(path).isEqualTo(403);
    }
    assertThat(get(stranger, root.resolve("/?token=guess")).statusCode()).isEqualTo(403);
    HttpResponse<String> entry =
        stranger.send(
            post("{\"words\":\"power on\"}").build(), HttpResponse.BodyHandlers.ofString());
    assertThat(entry.statusCode()).isEqualTo(403);
    assertThat(sitting.log().lines()).isEmpty();
  }

  @Test
  void theTokenIsAnotherOneAtEveryStart() throws Exception {
    Sitting other = Sitting.unrecorded(new Workbench(MODULE, RuleBase.shipped()));
    try (PageServer second = PageServer.serve(other, 0)) {
      assertThat(second.address().getQuery()).isNotEqualTo(page.address().getQuery());
      assertThat(second.address().getQuery()).hasSizeGreaterThan("token=".length() + 30);
    }
  }

  @Test
  void anEntryFromAnotherOriginIsRefused() throws Exception {
    for (String origin : new String[] {"http://example.org", "null", "http://127.0.0.1:1"}) {
      HttpRequest.Builder request =
          HttpRequest.newBuilder(root.resolve("/dialogue"))
              .header("Content-Type", "application/json")
              .header("Origin", origin)
              .POST(HttpRequest.BodyPublishers.ofString("{\"words\":\"power on\"}"));
      assertThat(sent(request).statusCode()).as(origin).isEqualTo(403);
    }
    HttpRequest.Builder without =
        HttpRequest.newBuilder(root.resolve("/dialogue"))
            .header("Content-Type", "application/json")
            .POST(HttpRequest.BodyPublishers.ofString("{\"words\":\"power on\"}"));
    assertThat(sent(without).statusCode()).isEqualTo(403);
    assertThat(sitting.log().lines()).isEmpty();
  }

  @Test
  void aNameThatOnlyPointsHereIsRefused() throws Exception {
    assertThat(raw("GET / HTTP/1.1\r\nHost: evil.example:" + root.getPort()))
        .startsWith("HTTP/1.1 403");
    assertThat(raw("GET / HTTP/1.1\r\nHost: 127.0.0.1:1")).startsWith("HTTP/1.1 403");
  }

  @Test
  void noPathLeadsOutOfThePage() throws Exception {
    String cookie = cookie();
    for (String path :
        new String[] {
          "/../pom.xml",
          "/%2e%2e/pom.xml",
          "/..%2fpom.xml",
          "/page/../../pom.xml",
          "//etc/passwd",
          "/page.js/",
          "/page.js%00.html"
        }) {
      String answer =
          raw(
              "GET "
                  + path
                  + " HTTP/1.1\r\nHost: 127.0.0.1:"
                  + root.getPort()
                  + "\r\nCookie: "
                  + cookie);
      assertThat(answer).as(path).matches("(?s)HTTP/1\\.1 40[034] .*");
    }
  }

  private String cookie() throws Exception {
    HttpResponse<String> entry = get(HttpClient.newHttpClient(), page.address());
    String set = entry.headers().firstValue("Set-Cookie").orElseThrow();
    assertThat(set).contains("HttpOnly").contains("SameSite=Strict");
    return set.split(";", 2)[0];
  }

  /** One request as it is written, for what a client would put right itself. */
  private String raw(String head) throws IOException {
    try (Socket socket = new Socket("127.0.0.1", root.getPort())) {
      OutputStream out = socket.getOutputStream();
      out.write((head + "\r\nConnection: close\r\n\r\n").getBytes(StandardCharsets.US_ASCII));
      out.flush();
      try (BufferedReader in =
          new BufferedReader(
              new InputStreamReader(socket.getInputStream(), StandardCharsets.UTF_8))) {
        StringBuilder all = new StringBuilder();
        in.lines().forEach(line -> all.append(line).append('\n'));
        return all.toString();
      }
    }
  }

  @Test
  void everyAnswerForbidsScriptsFromElsewhereAndFrames() throws Exception {
    for (String path : new String[] {"/", "/page.js", "/view", "/nothing"}) {
      HttpResponse<String> answer = get(browser, root.resolve(path));
      assertThat(answer.headers().firstValue("Content-Security-Policy").orElse(""))
          .as(path)
          .contains("default-src 'none'")
          .contains("script-src 'self'")
          .contains("frame-ancestors 'none'")
          .doesNotContain("unsafe");
      assertThat(answer.headers().firstValue("X-Content-Type-Options")).hasValue("nosniff");
      assertThat(answer.headers().firstValue("Server")).isEmpty();
    }
  }

  @Test
  void thePageNamesNoOutsideAddress() throws Exception {
    long bytes = 0;
    for (String path :
        new String[] {"/", "/page.css", "/page.js", "/drawing.js", "/answers.js", "/icon.svg"}) {
      String text = get(browser, root.resolve(path)).body();
      bytes += text.getBytes(StandardCharsets.UTF_8).length;
      assertThat(text.replace("http://www.w3.org/2000/svg", ""))
          .as(path)
          .doesNotContain("http://")
          .doesNotContain("https://");
      assertThat(text).as(path).doesNotContain(" style=").doesNotContain("innerHTML");
    }
    assertThat(bytes).as("bytes of the first page").isLessThan(300_000);
  }

  @Test
  void anEntryThatIsFarTooLongIsTurnedDown() throws Exception {
    String note = "{\"words\":\"note " + "x".repeat(PageHandler.LONGEST_REQUEST) + "\"}";
    assertThat(sent(post(note)).statusCode()).isEqualTo(413);
    assertThat(sitting.log().lines()).isEmpty();
  }

  @Test
  void onlyJsonIsTakenAndOnlyKnownMethods() throws Exception {
    HttpRequest.Builder form =
        HttpRequest.newBuilder(root.resolve("/dialogue"))
            .header("Origin", origin())
            .header("Content-Type", "text/plain")
            .POST(HttpRequest.BodyPublishers.ofString("{\"words\":\"power on\"}"));
    assertThat(sent(form).statusCode()).isEqualTo(415);
    HttpRequest.Builder delete =
        HttpRequest.newBuilder(root.resolve("/view")).header("Origin", origin()).DELETE();
    assertThat(sent(delete).statusCode()).isEqualTo(405);
    assertThat(said("{").at("/error").asText()).isNotEmpty();
    assertThat(said("{\"command\":\"jump\"}").at("/error").asText()).contains("jump");
  }
}
