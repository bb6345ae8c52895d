package straywire.web;

import java.nio.ByteBuffer;
import java.nio.charset.StandardCharsets;
import org.eclipse.jetty.http.HttpHeader;
import org.eclipse.jetty.http.HttpStatus;
import org.eclipse.jetty.server.Response;
import org.eclipse.jetty.util.Callback;

/** Writes whole answers. */
final class Replies {
  private static final String JSON = "application/json";

  private Replies() {}

  static boolean json(Response response, Callback callback, String text) {
    return send(response, callback, HttpStatus.OK_200, JSON, text.getBytes(StandardCharsets.UTF_8));
  }

  /** A refusal in one line. */
  static boolean refuse(Response response, Callback callback, String why) {
    return say(response, callback, HttpStatus.FORBIDDEN_403, why);
  }

  static boolean say(Response response, Callback callback, int status, String why) {
    return send(
        response,
        callback,
        status,
        "text/plain;charset=utf-8",
        ("straywire: " + why + "\n").getBytes(StandardCharsets.UTF_8));
  }

  static boolean send(Response response, Callback callback, int status, String type, byte[] bytes) {
    response.setStatus(status);
    response.getHeaders().put(HttpHeader.CONTENT_TYPE, type);
    response.getHeaders().put(HttpHeader.CONTENT_LENGTH, bytes.length);
    response.write(true, ByteBuffer.wrap(bytes), callback);
    return true;
  }
}
