package straywire.web;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;

/**
 * The files of the page, by the address they are asked for. They are listed here and read once, so
 * that no address can name anything else.
 */
final class PageFiles {
  /** One file as it is sent. */
  record Sent(String type, byte[] bytes) {
    Sent {
      bytes = bytes.clone();
    }
  }

  private static final String SCRIPT = "text/javascript;charset=utf-8";

  private static final Map<String, String> TYPES =
      Map.of(
          "/page.html",
          "text/html;charset=utf-8",
          "/page.css",
          "text/css;charset=utf-8",
          "/page.js",
          SCRIPT,
          "/drawing.js",
          SCRIPT,
          "/answers.js",
          SCRIPT,
          "/icon.svg",
          "image/svg+xml");

  private final Map<String, Sent> files = new TreeMap<>();

  PageFiles() {
    TYPES.forEach((name, type) -> files.put(name, new Sent(type, read("/page" + name))));
    files.put("/", files.get("/page.html"));
  }

  private static byte[] read(String resource) {
    try (InputStream in = PageFiles.class.getResourceAsStream(resource)) {
      if (in == null) {
        throw new IllegalStateException("The page lacks " + resource);
      }
      return in.readAllBytes();
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  Optional<Sent> at(String path) {
    return Optional.ofNullable(files.get(path));
  }
}
