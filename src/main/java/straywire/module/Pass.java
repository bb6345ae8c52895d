package straywire.module;

import java.util.List;

/**
 * One contact of a change-over between lines: joins a throw to the common in one of the two
 * positions, so that whatever is on either line is on both.
 *
 * @param label what a fault of it is named by: the label of its throw
 * @param control label of the control
 * @param common where the wire of the common leg ends
 * @param thrown where the wire of the throw ends
 * @param closedWhenHigh the position in which it is closed
 */
public record Pass(String label, String control, End common, End thrown, boolean closedWhenHigh)
    implements ControlContact {
  /** The lines it joins, that of the throw first. */
  @Override
  public List<End> ends() {
    return List.of(thrown, common);
  }
}
