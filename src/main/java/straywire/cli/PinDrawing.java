package straywire.cli;

import java.util.ArrayList;
import java.util.List;
import straywire.module.Fitted;
import straywire.sitting.ExpectedLevels.PinLevel;

/** A chip as seen from above with the notch up, what each leg shows beside it. */
final class PinDrawing {
  private PinDrawing() {}

  /**
   * The drawing.
   *
   * @param levels of all legs in pin order; an even number
   */
  static List<String> of(Fitted part, List<PinLevel> levels, Glyphs glyphs) {
    int rows = levels.size() / 2;
    int left = widest(levels.subList(0, rows));
    List<String> lines = new ArrayList<>();
    lines.add(
        part.label()
            + "  "
            + part.part().type()
            + " "
            + part.family().name()
            + (part.note().isEmpty() ? "" : ", " + part.note()));
    String indent = " ".repeat(18 + left);
    lines.add(indent + "+---" + glyphs.notch + "---+");
    for (int i = 0; i < rows; i++) {
      PinLevel l = levels.get(i);
      PinLevel r = levels.get(levels.size() - 1 - i);
      lines.add(
          String.format(
                  "%7s %-8s %" + left + "s |%-3d %3d| %-" + widest(levels) + "s %7s %s",
                  l.volts(),
                  l.level(),
                  l.pin().name(),
                  l.pin().number(),
                  r.pin().number(),
                  r.pin().name(),
                  r.volts(),
                  r.level())
              .stripTrailing());
    }
    lines.add(indent + "+-------+");
    return lines;
  }

  private static int widest(List<PinLevel> levels) {
    return levels.stream().mapToInt(l -> l.pin().name().length()).max().orElse(1);
  }
}
