package straywire.module;

import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Set;

/**
 * An append-only record of a sitting.
 *
 * @param module name of the module it is about
 * @param title one line on what it records; empty for a live sitting
 * @param lines entries with their numbers, ascending from 1
 */
public record BenchLog(String module, String title, List<Line> lines) {
  /** A numbered entry. */
  public record Line(int number, Entry entry) {}

  public BenchLog {
    lines = List.copyOf(lines);
  }

  /** The entries that still count: without those withdrawn and the withdrawals themselves. */
  public List<Line> standing() {
    Set<Integer> gone = new HashSet<>();
    for (int i = lines.size() - 1; i >= 0; i--) {
      Line line = lines.get(i);
      if (line.entry() instanceof Entry.Withdrawn w && !gone.contains(line.number())) {
        gone.add(w.number());
      }
    }
    List<Line> standing = new ArrayList<>();
    for (Line line : lines) {
      if (!gone.contains(line.number()) && !(line.entry() instanceof Entry.Withdrawn)) {
        standing.add(line);
      }
    }
    return standing;
  }

  public BenchLog with(Entry entry) {
    List<Line> more = new ArrayList<>(lines);
    more.add(new Line(lines.isEmpty() ? 1 : lines.get(lines.size() - 1).number() + 1, entry));
    return new BenchLog(module, title, more);
  }
}
