package straywire.module;

/** What the second throw of a change-over switch or button does. */
public sealed interface ChangeOver {
  /**
   * The common is at the rail that the control closes to; each throw is a terminal of its own, with
   * a resistor of its own when the control has one.
   *
   * @param label of the second throw's terminal
   */
  record OtherThrow(String label) implements ChangeOver {}

  /**
   * The common is the control's terminal; the second throw is at the rail of the other level.
   *
   * @param rail segment of that rail
   */
  record OtherRail(String rail) implements ChangeOver {}
}
