package straywire.observe;

import java.util.List;

/**
 * What lies at hand beside the lamps, which always count.
 *
 * @param eyes a close look at wires and chips
 * @param meter a multimeter: volts, and continuity with power off
 * @param logicProbe a logic probe
 * @param spareParts known good parts to put in
 */
public record Instruments(boolean eyes, boolean meter, boolean logicProbe, boolean spareParts) {
  public static final Instruments USUAL = new Instruments(true, true, false, true);
  public static final Instruments LAMPS_ONLY = new Instruments(false, false, false, false);

  /** From the words of a log entry. */
  public static Instruments of(List<String> atHand) {
    return new Instruments(
        atHand.contains("eyes"),
        atHand.contains("meter"),
        atHand.contains("logic-probe"),
        atHand.contains("spare-parts"));
  }
}
