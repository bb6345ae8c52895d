package straywire.cli;

import java.nio.file.Path;
import java.time.InstantSource;
import java.util.Optional;
import straywire.bench.Sitting;
import straywire.casebook.Workbench;
import straywire.module.LogWriter;

/** Opens the sitting of a command: with the time and a checksum on each line of its journal. */
final class Journals {
  private Journals() {}

  static Sitting sitting(Workbench workbench, Optional<Path> journal) {
    LogWriter.Style style = new LogWriter.Style(Optional.of(InstantSource.system()), true);
    return journal
        .map(file -> Sitting.open(workbench, file, style))
        .orElseGet(() -> Sitting.unrecorded(workbench));
  }
}
