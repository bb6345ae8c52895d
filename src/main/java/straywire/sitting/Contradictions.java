package straywire.sitting;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.TreeMap;
import straywire.module.BenchLog;
import straywire.module.ControlState;
import straywire.module.Entry;
import straywire.module.LampState;
import straywire.module.Point;
import straywire.observe.ReadingTable;
import straywire.steps.Outlook;
import straywire.steps.Outlook.Ground;
import straywire.steps.Outlook.Suspect;
import straywire.symptoms.SymptomScores;

/** Entries that do not go together: one of them may be a slip. */
final class Contradictions {
  /** An entry this unlikely, as a natural log, under every leading suspect does not fit. */
  private static final double DOES_NOT_FIT = -2.5;

  /** Suspects are leading until this share of the probability is theirs. */
  private static final double LEADING_SHARE = 0.9;

  private static final int MOST_LEADERS = 3;

  private Contradictions() {}

  /** Readings of one thing that differ, though neither controls nor power were touched between. */
  static List<String> readings(List<BenchLog.Line> lines, ControlState start, ReadingTable table) {
    List<String> found = new ArrayList<>();
    Map<String, Read> lamps = new TreeMap<>();
    Map<Point, Read> points = new TreeMap<>();
    ControlState state = start;
    for (BenchLog.Line line : lines) {
      ControlState after = state.after(line.entry());
      if (!after.equals(state) || touchesUnseen(line.entry())) {
        lamps.clear();
        points.clear();
      }
      state = after;
      if (line.entry() instanceof Entry.Seen seen) {
        seen.lamps().forEach((lamp, shown) -> lamp(line.number(), lamp, shown, lamps, found));
      } else if (line.entry() instanceof Entry.Measured m) {
        point(line.number(), m, points, table, found);
      }
    }
    return found;
  }

  /** Work that leaves the controls where they were. */
  private static boolean touchesUnseen(Entry entry) {
    return entry instanceof Entry.Press || SymptomScores.leavesMemoryUnknown(entry);
  }

  /** A reading and the entry that told it. */
  private record Read(int entry, String words, int band) {}

  private static void lamp(
      int entry, String lamp, LampState shown, Map<String, Read> lamps, List<String> found) {
    if (shown != LampState.LIT && shown != LampState.DARK) {
      return;
    }
    Read now = new Read(entry, shown.word(), shown.ordinal());
    Read before = lamps.put(lamp, now);
    if (before != null && before.band() != now.band()) {
      found.add(differ(lamp, before, now));
    }
  }

  private static void point(
      int entry,
      Entry.Measured measured,
      Map<Point, Read> points,
      ReadingTable table,
      List<String> found) {
    double volts = measured.volts();
    Read now = new Read(entry, String.format(Locale.ROOT, "%.2f V", volts), table.band(volts));
    Read before = points.put(measured.point(), now);
    // Next to the edge of a band two honest readings may fall either side of it.
    if (before != null && Math.abs(before.band() - now.band()) > 1) {
      found.add(differ(measured.point().toString(), before, now));
    }
  }

  private static String differ(String what, Read before, Read now) {
    return "entries "
        + before.entry()
        + " and "
        + now.entry()
        + " differ: "
        + what
        + " was "
        + before.words()
        + ", then "
        + now.words()
        + ", with nothing touched between";
  }

  /** Entries that no leading suspect explains. */
  static List<String> unexplained(Outlook outlook, List<BenchLog.Line> standing) {
    List<Suspect> leading = new ArrayList<>();
    double share = 0;
    for (Suspect suspect : outlook.suspects()) {
      if (share < LEADING_SHARE && leading.size() < MOST_LEADERS) {
        leading.add(suspect);
        share += suspect.probability();
      }
    }
    List<String> found = new ArrayList<>();
    for (int index = 0; index < standing.size(); index++) {
      int entry = index;
      if (leading.stream().allMatch(s -> speaksAgainst(s, entry))) {
        found.add(
            "entry "
                + standing.get(index).number()
                + " fits none of the leading suspects; look again, or undo it if it was a slip");
      }
    }
    return found;
  }

  private static boolean speaksAgainst(Suspect suspect, int entry) {
    return suspect.grounds().stream()
        .filter(g -> g.entry() == entry)
        .mapToDouble(Ground::logFactor)
        .anyMatch(factor -> factor < DOES_NOT_FIT);
  }
}
