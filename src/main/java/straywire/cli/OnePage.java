package straywire.cli;

import java.util.ArrayList;
import java.util.List;

/**
 * Lines that must fit one screen: when they are too many, those that matter least go first, of
 * equals the last one. The order of the rest stays.
 */
final class OnePage {
  /** How much a line matters, most first. */
  enum Matters {
    /** Never left out: what to do, a caution, what is suspected. */
    MOST,
    /** What the lamps show and should show. */
    LAMPS,
    /** What the leading suspects stand for beside their first fault. */
    FAULTS,
    /** Which entries speak for and against. */
    GROUNDS,
    /** What is normal, what does not go together. */
    REMARKS,
    /** What was just entered. */
    ECHO
  }

  private record Line(Matters matters, String text) {}

  private final int rows;
  private final String leftOut;
  private final List<Line> lines = new ArrayList<>();

  /**
   * @param rows that there are, at least 1
   * @param leftOut what to say in place of lines that are left out
   */
  OnePage(int rows, String leftOut) {
    this.rows = rows;
    this.leftOut = leftOut;
  }

  void add(Matters matters, String text) {
    lines.add(new Line(matters, text));
  }

  /** The lines that fit; more than the rows when those that matter most are more. */
  List<String> fitted() {
    List<Line> kept = new ArrayList<>(lines);
    Matters[] all = Matters.values();
    boolean tooMany = lines.size() > rows;
    for (int least = all.length - 1; least > 0 && tooMany; least--) {
      // One row says that some are left out.
      for (int i = kept.size() - 1; i >= 0 && kept.size() >= rows; i--) {
        if (kept.get(i).matters() == all[least]) {
          kept.remove(i);
        }
      }
    }
    List<String> texts = new ArrayList<>(kept.stream().map(Line::text).toList());
    if (kept.size() < lines.size()) {
      texts.add(0, leftOut);
    }
    return texts;
  }
}
