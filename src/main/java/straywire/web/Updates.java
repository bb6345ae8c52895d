package straywire.web;

import java.io.IOException;
import java.io.OutputStream;
import java.nio.charset.StandardCharsets;
import java.util.concurrent.Semaphore;
import org.eclipse.jetty.http.HttpHeader;
import org.eclipse.jetty.http.HttpStatus;
import org.eclipse.jetty.io.Content;
import org.eclipse.jetty.server.Request;
import org.eclipse.jetty.server.Response;
import org.eclipse.jetty.util.Callback;

/**
 * Tells each open window how the sitting stands, at once and whenever that changes, as server-sent
 * events. A window keeps one thread of the server, so their number is limited.
 */
final class Updates {
  /** Windows at once. */
  static final int MOST_WINDOWS = 20;

  /** A sign of life in between, shorter than the time after which a silent line is cut. */
  private static final long SIGN_OF_LIFE_MILLISECONDS = 10_000;

  private final PageSitting sitting;
  private final Semaphore windows = new Semaphore(MOST_WINDOWS);

  Updates(PageSitting sitting) {
    this.sitting = sitting;
  }

  boolean handle(Request request, Response response, Callback callback) {
    if (!windows.tryAcquire()) {
      return Replies.say(
          request,
          response,
          callback,
          HttpStatus.SERVICE_UNAVAILABLE_503,
          "too many windows are open, at most " + MOST_WINDOWS);
    }
    try (OutputStream out = Content.Sink.asOutputStream(response)) {
      response.setStatus(HttpStatus.OK_200);
      response.getHeaders().put(HttpHeader.CONTENT_TYPE, "text/event-stream;charset=utf-8");
      tell(out);
      callback.succeeded();
    } catch (IOException e) {
      callback.failed(e);
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
      callback.failed(e);
    } finally {
      windows.release();
    }
    return true;
  }

  private void tell(OutputStream out) throws IOException, InterruptedException {
    int told = -1;
    boolean open = true;
    while (open) {
      int version;
      String view;
      synchronized (sitting) {
        version = sitting.version();
        view = sitting.view();
      }
      String event = version == told ? ": still here\n\n" : "data: " + view + "\n\n";
      told = version;
      out.write(event.getBytes(StandardCharsets.UTF_8));
      out.flush();
      open = sitting.awaitAfter(told, SIGN_OF_LIFE_MILLISECONDS);
    }
  }
}
