package straywire.module;

/** What the second throw of a change-over switch or button does. */
public sealed interface ChangeOver {
  /**
   * The second contact of a control.
   *
   * @param whenHigh the position in which it is closed
   */
  Contact contact(Control control, boolean whenHigh);

  /** True when the common leg is on a rail, false when it is the control's own terminal. */
  boolean commonOnRail();

  /**
   * The common is at the rail that the control closes to; each throw is a terminal of its own, with
   * a resistor of its own when the control has one.
   *
   * @param label of the second throw's terminal
   */
  record OtherThrow(String label) implements ChangeOver {
    /** Where its wire ends. */
    public End terminal() {
      return new End(End.Kind.THROW, label, 0);
    }

    @Override
    public Contact contact(Control control, boolean whenHigh) {
      return new Contact(
          label,
          control.label(),
          terminal(),
          control.closesTo(),
          whenHigh,
          control.pullTo(),
          control.pullOhms());
    }

    @Override
    public boolean commonOnRail() {
      return true;
    }
  }

  /**
   * The common is the control's terminal; the second throw is at the rail of the other level.
   *
   * @param rail segment of that rail
   */
  record OtherRail(String rail) implements ChangeOver {
    @Override
    public Contact contact(Control control, boolean whenHigh) {
      return new Contact(
          control.label() + "/" + rail, control.label(), control.terminal(), rail, whenHigh, "", 0);
    }

    @Override
    public boolean commonOnRail() {
      return false;
    }
  }
}
