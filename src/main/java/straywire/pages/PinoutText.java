package straywire.pages;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import straywire.logic.PinSpec;
import straywire.parts.Part;

/** A chip as seen from above with the notch up, in letters. */
public final class PinoutText {
  private PinoutText() {}

  /**
   * The drawing.
   *
   * @param notch one letter for the notch
   */
  public static List<String> of(Part part, String notch) {
    int rows = part.pinCount() / 2;
    int left = part.pins().stream().limit(rows).mapToInt(p -> p.name().length()).max().orElse(1);
    List<String> lines = new ArrayList<>();
    String indent = " ".repeat(left + 4);
    lines.add(indent + "+---" + notch + "---+");
    for (int row = 1; row <= rows; row++) {
      PinSpec l = part.pin(row);
      PinSpec r = part.pin(part.pinCount() + 1 - row);
      lines.add(
          String.format(
              Locale.ROOT,
              "%" + (left + 2) + "s -|%-3d %3d|- %s",
              l.name(),
              l.number(),
              r.number(),
              r.name()));
    }
    lines.add(indent + "+-------+");
    return lines;
  }
}
