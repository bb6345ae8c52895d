package straywire.module;

/**
 * A switch or button the hand moves. It closes to a rail segment against a pull resistor.
 *
 * @param closesTo rail segment its contact closes to
 * @param pullTo rail segment its resistor goes to; empty when it has none
 * @param pullOhms ohms; 0 when it has none
 * @param restLevel level at rest for a button (pressed is the opposite); position at power-up for a
 *     switch. Level true is high.
 */
public record Control(
    String label,
    Kind kind,
    String title,
    String closesTo,
    String pullTo,
    int pullOhms,
    boolean restLevel) {
  /** How the hand works it. */
  public enum Kind {
    SWITCH,
    BUTTON
  }
}
