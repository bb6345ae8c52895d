package straywire.sitting;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.networknt.schema.Schema;
import com.networknt.schema.SchemaRegistry;
import com.networknt.schema.SpecificationVersion;
import java.io.BufferedReader;
import java.io.IOException;
import java.io.PrintWriter;
import java.io.StringReader;
import java.io.StringWriter;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

class DialogueTest {
  private static final ObjectMapper JSON = new ObjectMapper();
  private static final Schema SCHEMA = schema();

  private static Schema schema() {
    try {
      return SchemaRegistry.withDefaultDialect(SpecificationVersion.DRAFT_2020_12)
          .getSchema(Files.readString(Path.of("docs", "schema", "dialogue.schema.json")));
    } catch (IOException e) {
      throw new IllegalStateException(e);
    }
  }

  private static List<String> talk(List<String> in) throws IOException {
    StringWriter out = new StringWriter();
    new Dialogue(Sitting.unrecorded(BeatBench.WORKBENCH))
        .run(
            new BufferedReader(new StringReader(String.join("\n", in))),
            new PrintWriter(out, true));
    return Arrays.asList(out.toString().split("\n"));
  }

  private static JsonNode reply(String line) throws IOException {
    return JSON.readTree(
        new Dialogue(Sitting.unrecorded(BeatBench.WORKBENCH)).reply(line).toString());
  }

  @Test
  void freeWordsAreEnteredWhenClearAndElseToBePicked() throws IOException {
    List<String> out =
        talk(
            List.of(
                "{\"words\":\"it smells burnt\"}",
                "{\"words\":\"bits are reversed\"}",
                "{\"words\":\"frobnicate the zither\"}",
                "{\"command\":\"symptoms\"}"));
    for (String line : out) {
      assertThat(SCHEMA.validate(JSON.readTree(line))).isEmpty();
    }
    assertThat(JSON.readTree(out.get(0)).get("asks").asText()).isEqualTo("What do you notice?");
    assertThat(JSON.readTree(out.get(1)).at("/heard/0/entry/symptom").asText()).isEqualTo("smell");
    assertThat(JSON.readTree(out.get(1)).at("/entered/0").asInt()).isEqualTo(1);
    assertThat(JSON.readTree(out.get(2)).get("pick").findValuesAsText("symptom"))
        .containsExactly("reversed-all", "reversed-nibble");
    assertThat(JSON.readTree(out.get(3)).get("error").asText()).startsWith("words: nothing known");
    assertThat(JSON.readTree(out.get(4)).get("symptoms").findValuesAsText("symptom"))
        .contains("bus-never-releases", "chip-warm")
        .doesNotContain("counts-backwards");
  }

  @Test
  void theDocumentedSittingRunsAsItIsWritten() throws IOException {
    String text = Files.readString(Path.of("docs", "dialogue.md"));
    List<String> in = new ArrayList<>();
    List<String> out = new ArrayList<>();
    for (String line : text.lines().toList()) {
      if (line.startsWith("> {")) {
        in.add(line.substring(2));
      } else if (line.startsWith("< {")) {
        out.add(line.substring(2));
      }
    }
    assertThat(in).hasSizeGreaterThan(15);
    List<String> said = talk(in);
    assertThat(said).hasSameSizeAs(out);
    for (int i = 0; i < out.size(); i++) {
      List<String> problems = new ArrayList<>();
      differ("", JSON.readTree(out.get(i)), JSON.readTree(said.get(i)), problems);
      assertThat(problems)
          .as("line out %d, after %s", i, i == 0 ? "the start" : in.get(i - 1))
          .isEmpty();
    }
    for (String line : in) {
      assertThat(SCHEMA.validate(JSON.readTree(line))).as(line).isEmpty();
    }
    for (String line : said) {
      assertThat(SCHEMA.validate(JSON.readTree(line))).as(line).isEmpty();
    }
  }

  /** What is written must be there; fields left out and ends of lists cut off may be anything. */
  private static void differ(String at, JsonNode written, JsonNode said, List<String> problems) {
    if (written.isObject()) {
      for (Map.Entry<String, JsonNode> field : written.properties()) {
        String place = at + "/" + field.getKey();
        if (said.has(field.getKey())) {
          differ(place, field.getValue(), said.get(field.getKey()), problems);
        } else {
          problems.add(place + " is not there");
        }
      }
    } else if (written.isArray() && said.size() >= written.size()) {
      for (int i = 0; i < written.size(); i++) {
        differ(at + "/" + i, written.get(i), said.get(i), problems);
      }
    } else if (!written.equals(said)) {
      problems.add(at + " is " + said + ", not " + written);
    }
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      quoteCharacter = '`',
      textBlock =
          """
          {"entry":{"pres":"write"}} | no entry is called pres; nearest is press
          {"entry":{"press":"drive"}} | drive is a switch; set it high or low
          {"entry":{"measured":"U1.17","volts":1}} | U1 (74x189) has no pin 17; its pins are 1 to 16
          {"entry":{"measured":"U1.3","volts":99}} | volts: expected -30 to 30, got 99
          {"entry":"power on"} | entry: expected an object such as {"power":"on"}
          {"command":"nxt"} | no command is called nxt; known are outlook, next, symptoms, dont-know, accept, undo, repaired, levels, hidden, log, finish, quit
          {"command":"undo"} | there is nothing to undo
          {"command":"next","part":"U1"} | no field is called part here
          {"command":"levels","part":"U9"} | no part is labelled U9; nearest is U1
          {"command":"repaired"} | nothing is suspected now; say what you did: repaired WORDS
          {"command":"repaired","fault":"x"} | fault: expected which fault of the leading suspect, from 1
          {"answer":"1001"} | see: memory has 8 places, high bit first (R7 R6 R5 R4 R3 R2 R1 R0), got 4 in "1001"
          {"answer":{"press":"write"}} | that does not answer the step asked for: look at memory and bus
          {"entry":{"withdrawn":1}} | there is no entry 1 so far
          {} | expected exactly one of entry, answer, words, command
          {"v":2,"command":"next"} | version 2 of the dialogue is unknown; this one is 1
          [1] | expected an object in braces, such as {"command":"next"}
          """)
  void whatIsWrongIsSaidInOneLine(String line, String error) throws IOException {
    assertThat(reply(line).get("error").asText()).isEqualTo(error);
  }

  @Test
  void everyCommandIsDocumented() throws IOException {
    String known = reply("{\"command\":\"x\"}").get("error").asText();
    String page = Files.readString(Path.of("docs", "dialogue.md"));
    for (String command : known.substring(known.indexOf("known are ") + 10).split(", ")) {
      assertThat(page).contains("| `" + command + "` |");
    }
  }

  @Test
  void whatNoLampShowsIsListedWithTheCheckThatShowsIt() throws IOException {
    JsonNode hidden = reply("{\"command\":\"hidden\"}").get("hidden");
    List<String> invisible = new ArrayList<>();
    for (JsonNode one : hidden) {
      if (one.get("no-lamp-shows-it").asBoolean()) {
        invisible.add(one.get("id").asText());
        assertThat(one.get("words").asText()).isNotEmpty();
      }
    }
    // Two address lines exchanged at one memory only rename its words.
    assertThat(invisible).anyMatch(id -> id.startsWith("ends-swapped") && id.contains("U1.1"));
  }

  @Test
  void textThatIsNotJsonIsSaidToBeSo() throws IOException {
    assertThat(reply("power on").get("error").asText())
        .startsWith("not JSON: Unrecognized token 'power'")
        .doesNotContain("\n");
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "jumper-missing write-U1.3",
        "inverter-bypassed U4.3-U4.4",
        "supply-jumper-missing GND-U3.7",
        "jumper-missing A2-U1.14"
      })
  void aRigTakesASittingToTheConfirmedRepair(String fault) throws IOException {
    DialogueRig rig = new DialogueRig(BeatBench.WORKBENCH, fault, 11);
    JsonNode closed = rig.workToTheEnd(40);
    assertThat(closed.get("state").get("stage").asText()).isEqualTo("closed");
    assertThat(rig.finding()).isEqualTo(List.of(fault));
  }

  @Test
  void theSameLinesGiveTheSameBytes() throws IOException {
    List<String> in =
        List.of(
            "{\"answer\":\"01110100 00000000\"}",
            "{\"answer\":\"10010100\"}",
            "{\"command\":\"dont-know\"}",
            "{\"command\":\"log\"}");
    assertThat(talk(in)).isEqualTo(talk(in));
  }
}
