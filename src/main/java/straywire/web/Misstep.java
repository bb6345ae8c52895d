package straywire.web;

import org.eclipse.jetty.server.Request;
import org.eclipse.jetty.server.Response;
import org.eclipse.jetty.server.handler.ErrorHandler;
import org.eclipse.jetty.util.Callback;

/** What the server itself turns down: said in one line, and nothing of its inside. */
final class Misstep extends ErrorHandler {
  @Override
  public boolean handle(Request request, Response response, Callback callback) {
    return Replies.say(
        request, response, callback, response.getStatus(), "the request was not understood");
  }
}
