package straywire.advice;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import straywire.module.BenchLog;
import straywire.module.Entry;
import straywire.module.LampState;
import straywire.module.Module;
import straywire.module.ModuleFile;
import straywire.module.Word;
import straywire.parts.ShippedParts;

/** The demo module, and logs about it in few words. */
final class BeatMemory {
  static final Module MODULE =
      ModuleFile.read(Path.of("cases/beat-memory/module.yaml"), new ShippedParts());

  private BeatMemory() {}

  static BenchLog log(Entry... entries) {
    List<BenchLog.Line> lines = new ArrayList<>();
    for (Entry entry : entries) {
      lines.add(new BenchLog.Line(lines.size() + 1, entry));
    }
    return new BenchLog(MODULE.name(), "", lines);
  }

  /** A word of lamps, high bit first, in the marks of the log. */
  static Entry.Seen seen(String word, String marks) {
    Word lamps = MODULE.lampWord(word).orElseThrow();
    Map<String, LampState> states = new TreeMap<>();
    for (int i = 0; i < lamps.members().size(); i++) {
      char mark = marks.charAt(i);
      for (LampState state : LampState.values()) {
        if (state.mark() == mark) {
          states.put(lamps.members().get(i), state);
        }
      }
    }
    return new Entry.Seen(states);
  }
}
