package straywire.module;

import java.util.List;

/**
 * A contact of a control to a rail: closed in one of the two positions, open in the other.
 *
 * @param label what a fault of it is named by: the control's own for the first contact; for the
 *     other of a change-over the label of its terminal, or control and rail when both contacts meet
 *     at one terminal, such as {@code S1/VCC}
 * @param control label of the control
 * @param terminal where its wire ends
 * @param closesTo rail segment
 * @param closedWhenHigh the position in which it is closed
 * @param pullTo rail segment of the resistor at its terminal; empty for none, or when the first
 *     contact at that terminal has it
 * @param pullOhms ohms; 0 for none
 */
public record Contact(
    String label,
    String control,
    End terminal,
    String closesTo,
    boolean closedWhenHigh,
    String pullTo,
    int pullOhms)
    implements ControlContact {
  @Override
  public List<End> ends() {
    return List.of(terminal);
  }

  /** True for the contact by whose label its control goes. */
  public boolean first() {
    return label.equals(control);
  }
}
