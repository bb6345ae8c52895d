package straywire.cli;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.time.InstantSource;
import java.time.ZoneOffset;
import java.time.format.DateTimeFormatter;
import java.util.Locale;
import straywire.casebook.Workbench;
import straywire.module.LogWriter;
import straywire.sitting.Sitting;

/** Opens sittings with the time and a checksum on each line of their journals. */
final class Journals {
  private static final DateTimeFormatter NAME =
      DateTimeFormatter.ofPattern("yyyyMMdd-HHmmss", Locale.ROOT).withZone(ZoneOffset.UTC);

  private Journals() {}

  static Sitting sitting(Workbench workbench, Path journal) {
    LogWriter.Style style =
        new LogWriter.Style(java.util.Optional.of(InstantSource.system()), true);
    return Sitting.open(workbench, journal, style);
  }

  /** A new journal in a folder, named for module and time (UTC); the folder is made. */
  static Path fresh(Path folder, String module, Instant now) {
    try {
      Files.createDirectories(folder);
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
    return folder.resolve(module + "-" + NAME.format(now) + ".jsonl");
  }
}
