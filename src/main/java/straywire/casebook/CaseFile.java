package straywire.casebook;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import straywire.format.InputError;
import straywire.module.BenchLog;
import straywire.module.Entry;
import straywire.module.LogWriter;
import straywire.module.Module;

/** Makes a case of a finished sitting. */
public final class CaseFile {
  private CaseFile() {}

  /**
   * Writes what stands of a log, numbered anew, with what a replay must find.
   *
   * @param file the new case, beside its module
   * @param from name of the log, for what is wrong with it
   * @param title empty for the words of the finding
   * @param withinSteps steps after the first deviation in which a replay must find it
   * @throws InputError when the sitting has no finding, or the file is there already
   */
  public static void write(
      Path file, Module module, String from, BenchLog log, String title, int withinSteps) {
    Entry.Finding finding = finding(from, log);
    List<Entry> entries = entries(log);
    entries.add(finding);
    entries.add(new Entry.Expected(finding.faults(), withinSteps));
    if (Files.exists(file)) {
      throw new InputError(file.toString(), 0, "is there already; take another name");
    }
    try {
      Files.createDirectories(file.toAbsolutePath().getParent());
      try (LogWriter writer =
          LogWriter.create(
              file, module, title.isEmpty() ? finding.words() : title, LogWriter.Style.PLAIN)) {
        for (Entry entry : entries) {
          writer.append(entry);
        }
      }
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  private static Entry.Finding finding(String from, BenchLog log) {
    Optional<Entry.Finding> last = Optional.empty();
    for (BenchLog.Line line : log.standing()) {
      if (line.entry() instanceof Entry.Finding finding) {
        last = Optional.of(finding);
      }
    }
    return last.orElseThrow(
        () -> new InputError(from, 0, "the sitting has no finding yet; finish it first"));
  }

  /** What stands, without finding and expectation; numbers that entries speak of go along. */
  private static List<Entry> entries(BenchLog log) {
    Map<Integer, Integer> numbers = new HashMap<>();
    List<Entry> entries = new ArrayList<>();
    for (BenchLog.Line line : log.standing()) {
      Entry entry = line.entry();
      if (entry instanceof Entry.Finding || entry instanceof Entry.Expected) {
        continue;
      }
      if (entry instanceof Entry.Symptom s) {
        List<Integer> about =
            s.entries().stream().filter(numbers::containsKey).map(numbers::get).toList();
        entry = new Entry.Symptom(s.symptom(), s.place(), s.answer(), about, s.asked());
      }
      entries.add(entry);
      numbers.put(line.number(), entries.size());
    }
    return entries;
  }
}
