package straywire.web;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.net.InetAddress;
import java.net.URI;
import org.eclipse.jetty.server.HttpConfiguration;
import org.eclipse.jetty.server.HttpConnectionFactory;
import org.eclipse.jetty.server.Server;
import org.eclipse.jetty.server.ServerConnector;
import org.eclipse.jetty.util.thread.QueuedThreadPool;
import straywire.sitting.Sitting;

/**
 * Serves the page of one sitting to browsers on this machine. The sitting stays the caller's, who
 * must not enter anything beside it.
 */
public final class PageServer implements AutoCloseable {
  /** One for each window that waits for news, and some that answer. */
  private static final int MOST_THREADS = Updates.MOST_WINDOWS + 20;

  private static final int LEAST_THREADS = 4;

  private static final int LONGEST_HEADERS = 8 * 1024;

  private static final int WAITING_CONNECTIONS = 64;

  private final Server server;
  private final PageSitting page;
  private final AccessToken token = AccessToken.drawn();
  private final int port;

  private PageServer(Sitting sitting, int port) throws IOException {
    page = new PageSitting(sitting);
    QueuedThreadPool threads = new QueuedThreadPool(MOST_THREADS, LEAST_THREADS);
    threads.setDaemon(true);
    threads.setName("page");
    server = new Server(threads);
    HttpConfiguration configuration = new HttpConfiguration();
    configuration.setSendServerVersion(false);
    configuration.setSendDateHeader(false);
    configuration.setRequestHeaderSize(LONGEST_HEADERS);
    ServerConnector connector =
        new ServerConnector(server, new HttpConnectionFactory(configuration));
    connector.setHost(InetAddress.getLoopbackAddress().getHostAddress());
    connector.setPort(port);
    connector.setAcceptQueueSize(WAITING_CONNECTIONS);
    server.addConnector(connector);
    // Opened before the handlers are made: these must know the port.
    connector.open();
    this.port = connector.getLocalPort();
    server.setHandler(new Gate(token, this.port, new PageHandler(page)));
    server.setErrorHandler(new Misstep());
  }

  /**
   * Starts serving.
   *
   * @param port to listen at; 0 for any that is free
   * @throws UncheckedIOException when the port is taken
   */
  public static PageServer serve(Sitting sitting, int port) {
    try {
      PageServer page = new PageServer(sitting, port);
      page.server.start();
      return page;
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    } catch (Exception e) {
      throw new IllegalStateException("The server of the page did not start", e);
    }
  }

  /** The address to open, with the token of this start. */
  public URI address() {
    return URI.create("http://127.0.0.1:" + port + "/?token=" + token.text());
  }

  /** Waits until the server was stopped. */
  public void await() throws InterruptedException {
    server.join();
  }

  @Override
  public void close() {
    page.end();
    try {
      server.stop();
    } catch (Exception e) {
      throw new IllegalStateException("The server of the page did not stop", e);
    }
  }
}
