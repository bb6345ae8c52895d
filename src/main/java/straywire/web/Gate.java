package straywire.web;

import java.util.List;
import org.eclipse.jetty.http.HttpCookie;
import org.eclipse.jetty.http.HttpHeader;
import org.eclipse.jetty.http.HttpStatus;
import org.eclipse.jetty.server.Handler;
import org.eclipse.jetty.server.Request;
import org.eclipse.jetty.server.Response;
import org.eclipse.jetty.util.Callback;
import org.eclipse.jetty.util.Fields;

/**
 * Lets through only a browser on this machine that was given the address with the token. A page
 * from elsewhere is stopped by the host it thinks it talks to, by its origin, and by the cookie
 * that is never sent along with a request of another site.
 */
final class Gate extends Handler.Wrapper {
  /** Everything comes from this server, and nothing may put the page in a frame. */
  static final String CONTENT_POLICY =
      "default-src 'none'; script-src 'self'; style-src 'self'; img-src 'self'; connect-src 'self';"
          + " base-uri 'none'; form-action 'none'; frame-ancestors 'none'";

  private final AccessToken token;
  private final int port;
  private final List<String> hosts;

  Gate(AccessToken token, int port, Handler inner) {
    super(inner);
    this.token = token;
    this.port = port;
    hosts = List.of("127.0.0.1:" + port, "localhost:" + port, "[::1]:" + port);
  }

  @Override
  public boolean handle(Request request, Response response, Callback callback) throws Exception {
    response.getHeaders().put("Content-Security-Policy", CONTENT_POLICY);
    response.getHeaders().put("X-Content-Type-Options", "nosniff");
    response.getHeaders().put("Referrer-Policy", "no-referrer");
    response.getHeaders().put("Cross-Origin-Opener-Policy", "same-origin");
    response.getHeaders().put("Cross-Origin-Resource-Policy", "same-origin");
    response.getHeaders().put(HttpHeader.CACHE_CONTROL, "no-store");
    String host = header(request, HttpHeader.HOST);
    if (!hosts.contains(host)) {
      return Replies.refuse(
          request, response, callback, "this server answers only at its own address");
    }
    String origin = header(request, HttpHeader.ORIGIN);
    boolean asks = request.getMethod().equals("GET");
    if (origin.isEmpty() ? !asks : !origin.equals("http://" + host)) {
      return Replies.refuse(request, response, callback, "only the page itself may ask");
    }
    Fields query = Request.extractQueryParameters(request);
    Fields.Field shown = query.get("token");
    if (shown != null && asks && Request.getPathInContext(request).equals("/")) {
      return enter(shown.getValue(), request, response, callback);
    }
    if (Request.getCookies(request).stream()
        .noneMatch(c -> c.getName().equals(cookieName()) && token.is(c.getValue()))) {
      return Replies.refuse(
          request, response, callback, "open the address that the program printed when it started");
    }
    return super.handle(request, response, callback);
  }

  private static String header(Request request, HttpHeader name) {
    String value = request.getHeaders().get(name);
    return value == null ? "" : value;
  }

  /** The token leaves the address line at once, so that it is in no history and no screenshot. */
  private boolean enter(String shown, Request request, Response response, Callback callback) {
    if (!token.is(shown)) {
      return Replies.refuse(
          request,
          response,
          callback,
          "this address is of an earlier start; open the one printed last");
    }
    Response.addCookie(
        response,
        HttpCookie.build(cookieName(), token.text())
            .path("/")
            .httpOnly(true)
            .sameSite(HttpCookie.SameSite.STRICT)
            .build());
    Response.sendRedirect(request, response, callback, HttpStatus.SEE_OTHER_303, "/", true);
    return true;
  }

  /** Cookies know no ports, so that two servers of one machine would overwrite each other's. */
  private String cookieName() {
    return "straywire-" + port;
  }
}
