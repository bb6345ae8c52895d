package straywire.module;

import java.util.List;
import java.util.Optional;

/** What the throws of a change-over switch or button do. */
public sealed interface ChangeOver {
  /**
   * The second contact of a control to a rail; none of one between lines.
   *
   * @param whenHigh the position in which it is closed
   */
  Optional<Contact> contact(Control control, boolean whenHigh);

  /** The contacts of a control between lines: that of the position low first; or none. */
  default List<Pass> passes(Control control) {
    return List.of();
  }

  /** Where the wires of throws end that have a terminal beside the control's own. */
  default List<End> terminals() {
    return List.of();
  }

  /** True when the common leg is on a rail, false when it is the control's own terminal. */
  boolean commonOnRail();

  /**
   * The common is at the rail that the control closes to; each throw is a terminal of its own, with
   * a resistor of its own when the control has one.
   *
   * @param label of the second throw's terminal
   */
  record OtherThrow(String label) implements ChangeOver {
    @Override
    public Optional<Contact> contact(Control control, boolean whenHigh) {
      return Optional.of(
          new Contact(
              label,
              control.label(),
              throwEnd(label),
              control.closesTo(),
              whenHigh,
              control.pullTo(),
              control.pullOhms()));
    }

    @Override
    public List<End> terminals() {
      return List.of(throwEnd(label));
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
    public Optional<Contact> contact(Control control, boolean whenHigh) {
      String label = control.label() + "/" + rail;
      return Optional.of(
          new Contact(label, control.label(), control.terminal(), rail, whenHigh, "", 0));
    }

    @Override
    public boolean commonOnRail() {
      return false;
    }
  }

  /**
   * The common is the control's terminal and a line like any other; each throw is a terminal of its
   * own, joined to the common in its position.
   *
   * @param lowThrow label of the throw joined in the position low
   * @param highThrow label of the throw joined in the position high
   */
  record BetweenLines(String lowThrow, String highThrow) implements ChangeOver {
    @Override
    public Optional<Contact> contact(Control control, boolean whenHigh) {
      return Optional.empty();
    }

    @Override
    public List<Pass> passes(Control control) {
      return List.of(pass(control, lowThrow, false), pass(control, highThrow, true));
    }

    private static Pass pass(Control control, String label, boolean whenHigh) {
      return new Pass(label, control.label(), control.terminal(), throwEnd(label), whenHigh);
    }

    @Override
    public List<End> terminals() {
      return List.of(throwEnd(lowThrow), throwEnd(highThrow));
    }

    @Override
    public boolean commonOnRail() {
      return false;
    }
  }

  private static End throwEnd(String label) {
    return new End(End.Kind.THROW, label, 0);
  }
}
