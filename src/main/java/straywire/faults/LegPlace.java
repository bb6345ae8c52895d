package straywire.faults;

import java.util.List;

/**
 * Where a leg of a two-row (DIP) part is, seen from above with the notch up: pin 1 is left of the
 * notch and the count runs down the left row and up the right one (common practice, no source).
 *
 * @param leftRow true for the left row
 * @param fromNotch place in its row, 1 next to the notch
 */
public record LegPlace(boolean leftRow, int fromNotch) {
  /** The view every place in a repair text is told from. */
  public static final String VIEW = "as seen from above with the notch up";

  private static final List<String> ORDINALS =
      List.of(
          "first",
          "second",
          "third",
          "fourth",
          "fifth",
          "sixth",
          "seventh",
          "eighth",
          "ninth",
          "tenth",
          "eleventh",
          "twelfth",
          "thirteenth",
          "fourteenth",
          "fifteenth",
          "sixteenth",
          "seventeenth",
          "eighteenth",
          "nineteenth",
          "twentieth");

  /**
   * Place of a pin.
   *
   * @param pin pin number, 1 to {@code pinCount}
   * @param pinCount even, 2 to 40
   */
  public static LegPlace of(int pin, int pinCount) {
    if (pinCount < 2 || pinCount % 2 != 0 || pinCount > 2 * ORDINALS.size()) {
      throw new IllegalArgumentException(
          "A two-row part has an even number of legs from 2 to 40, got " + pinCount);
    }
    if (pin < 1 || pin > pinCount) {
      throw new IllegalArgumentException("Pins run from 1 to " + pinCount + ", got " + pin);
    }
    boolean left = pin <= pinCount / 2;
    return new LegPlace(left, left ? pin : pinCount + 1 - pin);
  }

  /** Such as {@code left row, third from the notch}. */
  public String words() {
    return (leftRow ? "left" : "right")
        + " row, "
        + ORDINALS.get(fromNotch - 1)
        + " from the notch";
  }
}
