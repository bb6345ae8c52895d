package straywire.module;

import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.charset.CharacterCodingException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;
import java.util.Optional;
import straywire.parts.InputError;

/** Reading whole files as UTF-8. */
final class TextFile {
  private TextFile() {}

  static byte[] bytes(Path file) {
    try {
      return Files.readAllBytes(file);
    } catch (NoSuchFileException e) {
      throw new InputError(file.toString(), 0, "there is no such file");
    } catch (IOException e) {
      throw new InputError(file.toString(), 0, "cannot be read: " + e.getMessage());
    }
  }

  static String read(Path file) {
    return text(bytes(file))
        .orElseThrow(() -> new InputError(file.toString(), 0, "is not text in UTF-8"));
  }

  /** Empty when the bytes are not UTF-8. */
  static Optional<String> text(byte[] bytes) {
    try {
      return Optional.of(
          StandardCharsets.UTF_8.newDecoder().decode(ByteBuffer.wrap(bytes)).toString());
    } catch (CharacterCodingException e) {
      return Optional.empty();
    }
  }
}
