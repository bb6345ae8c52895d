package straywire.web;

import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.util.Optional;
import org.eclipse.jetty.http.HttpHeader;
import org.eclipse.jetty.http.HttpStatus;
import org.eclipse.jetty.server.Handler;
import org.eclipse.jetty.server.Request;
import org.eclipse.jetty.server.Response;
import org.eclipse.jetty.util.Callback;

/** Answers what the page asks for. Described in {@code docs/page.md}. */
final class PageHandler extends Handler.Abstract {
  /** Bytes of one request; the longest entry that makes sense is far shorter. */
  static final int LONGEST_REQUEST = 16 * 1024;

  private final PageFiles files = new PageFiles();
  private final PageSitting sitting;
  private final Updates updates;

  PageHandler(PageSitting sitting) {
    this.sitting = sitting;
    updates = new Updates(sitting);
  }

  @Override
  public boolean handle(Request request, Response response, Callback callback) throws IOException {
    String path = Request.getPathInContext(request);
    return switch (request.getMethod()) {
      case "GET" -> asked(path, request, response, callback);
      case "POST" -> said(path, request, response, callback);
      default ->
          Replies.say(
              request,
              response,
              callback,
              HttpStatus.METHOD_NOT_ALLOWED_405,
              "only GET and POST are known");
    };
  }

  private boolean asked(String path, Request request, Response response, Callback callback) {
    return switch (path) {
      case "/module" -> Replies.json(response, callback, sitting.drawing().toString());
      case "/view" -> Replies.json(response, callback, sitting.view());
      case "/updates" -> updates.handle(request, response, callback);
      default -> file(path, request, response, callback);
    };
  }

  private boolean file(String path, Request request, Response response, Callback callback) {
    Optional<PageFiles.Sent> file = files.at(path);
    return file.isPresent()
        ? Replies.send(response, callback, HttpStatus.OK_200, file.get().type(), file.get().bytes())
        : Replies.say(request, response, callback, HttpStatus.NOT_FOUND_404, "nothing is here");
  }

  private boolean said(String path, Request request, Response response, Callback callback)
      throws IOException {
    if (!path.equals("/dialogue")) {
      return Replies.say(request, response, callback, HttpStatus.NOT_FOUND_404, "nothing is here");
    }
    String type = request.getHeaders().get(HttpHeader.CONTENT_TYPE);
    if (type == null || !type.startsWith("application/json")) {
      return Replies.say(
          request,
          response,
          callback,
          HttpStatus.UNSUPPORTED_MEDIA_TYPE_415,
          "expected application/json");
    }
    InputStream in = Request.asInputStream(request);
    byte[] body = in.readNBytes(LONGEST_REQUEST + 1);
    if (body.length > LONGEST_REQUEST) {
      return Replies.say(
          request,
          response,
          callback,
          HttpStatus.PAYLOAD_TOO_LARGE_413,
          "an entry has at most " + LONGEST_REQUEST + " bytes");
    }
    return Replies.json(
        response, callback, sitting.reply(new String(body, StandardCharsets.UTF_8)));
  }
}
