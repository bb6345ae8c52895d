package straywire.format;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.ByteBuffer;
import java.nio.charset.CharacterCodingException;
import java.nio.charset.StandardCharsets;
import java.nio.file.AccessDeniedException;
import java.nio.file.Files;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;
import java.util.Optional;

/** Reading whole files as UTF-8, a person's own and those in the program. */
public final class TextFile {
  private TextFile() {}

  /**
   * All bytes of a file.
   *
   * @throws InputError when it is not there or may not be read
   */
  public static byte[] bytes(Path file) {
    try {
      return Files.readAllBytes(file);
    } catch (NoSuchFileException e) {
      throw new InputError(file.toString(), 0, "there is no such file");
    } catch (AccessDeniedException e) {
      throw new InputError(file.toString(), 0, "may not be read");
    } catch (IOException e) {
      boolean folder = Files.isDirectory(file);
      throw new InputError(
          file.toString(),
          0,
          folder ? "is a folder; name a file in it" : "cannot be read: " + e.getMessage());
    }
  }

  /**
   * A whole file as text.
   *
   * @throws InputError when it is not there, may not be read or is not UTF-8
   */
  public static String read(Path file) {
    return text(bytes(file))
        .orElseThrow(() -> new InputError(file.toString(), 0, "is not text in UTF-8"));
  }

  /**
   * A whole file of the program itself.
   *
   * @param path from the root of the class path, beginning with a slash
   */
  public static String shipped(String path) {
    try (InputStream in = TextFile.class.getResourceAsStream(path)) {
      if (in == null) {
        throw new IllegalStateException("The program comes without its file " + path);
      }
      return new String(in.readAllBytes(), StandardCharsets.UTF_8);
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  /** Empty when the bytes are not UTF-8. */
  public static Optional<String> text(byte[] bytes) {
    try {
      return Optional.of(
          StandardCharsets.UTF_8.newDecoder().decode(ByteBuffer.wrap(bytes)).toString());
    } catch (CharacterCodingException e) {
      return Optional.empty();
    }
  }
}
