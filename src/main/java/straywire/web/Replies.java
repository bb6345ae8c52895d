package straywire.web;

import java.io.IOException;
import java.io.InputStream;
import java.nio.ByteBuffer;
import java.nio.charset.StandardCharsets;
import org.eclipse.jetty.http.HttpHeader;
import org.eclipse.jetty.http.HttpStatus;
import org.eclipse.jetty.server.Request;
import org.eclipse.jetty.server.Response;
import org.eclipse.jetty.util.Callback;

/** Writes whole answers. */
final class Replies {
  private static final int MOST_DISCARDED = 256 * 1024;

  private static final String JSON = "application/json";

  private Replies() {}

  static boolean json(Response response, Callback callback, String text) {
    return send(response, callback, HttpStatus.OK_200, JSON, text.getBytes(StandardCharsets.UTF_8));
  }

  /** A refusal in one line. */
  static boolean refuse(Request request, Response response, Callback callback, String why) {
    return say(request, response, callback, HttpStatus.FORBIDDEN_403, why);
  }

  /**
   * Why nothing was done, in one line. What is still being sent is read first, within reason: a
   * line cut amid the sending loses the answer.
   */
  static boolean say(
      Request request, Response response, Callback callback, int status, String why) {
    try (InputStream in = Request.asInputStream(request)) {
      in.readNBytes(MOST_DISCARDED);
    } catch (IOException e) {
      callback.failed(e);
      return true;
    }
    response.getHeaders().put(HttpHeader.CONNECTION, "close");
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
