package straywire.module;

import java.util.Optional;

/**
 * A switch or button the hand moves. It closes to a rail segment against a pull resistor; a
 * change-over closes another contact in its other position.
 *
 * @param closesTo rail segment its contact closes to
 * @param pullTo rail segment its resistor goes to; empty when it has none
 * @param pullOhms ohms; 0 when it has none
 * @param restLevel level at rest for a button (pressed is the opposite); position at power-up for a
 *     switch. Level true is high.
 * @param changeOver what the other position does; empty for a single contact
 */
public record Control(
    String label,
    Kind kind,
    String title,
    String closesTo,
    String pullTo,
    int pullOhms,
    boolean restLevel,
    Optional<ChangeOver> changeOver) {
  /** How the hand works it. */
  public enum Kind {
    SWITCH,
    BUTTON
  }

  /** A control with a single contact. */
  public Control(
      String label,
      Kind kind,
      String title,
      String closesTo,
      String pullTo,
      int pullOhms,
      boolean restLevel) {
    this(label, kind, title, closesTo, pullTo, pullOhms, restLevel, Optional.empty());
  }

  /** Where its wire ends; that of its first throw for a change-over with two terminals. */
  public End terminal() {
    return new End(End.Kind.CONTROL, label, 0);
  }
}
