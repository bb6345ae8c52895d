package straywire.sim;

import java.util.Collections;
import java.util.Map;
import java.util.SortedMap;
import java.util.TreeMap;

/**
 * All lanes of a {@link Boards} at one moment. Never changed once handed out, so that keeping one
 * is a snapshot.
 */
public final class BoardState {
  private final boolean powered;
  private final SortedMap<String, Boolean> controls;
  private final long[][] groups;

  BoardState(boolean powered, Map<String, Boolean> controls, long[][] groups) {
    this.powered = powered;
    this.controls = Collections.unmodifiableSortedMap(new TreeMap<>(controls));
    this.groups = groups;
  }

  /** False with power off: nothing is remembered. */
  public boolean powered() {
    return powered;
  }

  /** Level of each control, true is high. */
  public SortedMap<String, Boolean> controls() {
    return controls;
  }

  /** State words of each lane group; none with power off. */
  long[][] groups() {
    return groups;
  }
}
