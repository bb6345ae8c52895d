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

  /** False with power off: nothing is remembered but what is kept without power. */
  public boolean powered() {
    return powered;
  }

  /** Level of each control, true is high. */
  public SortedMap<String, Boolean> controls() {
    return controls;
  }

  /**
   * State words of each lane group. With power off those in which it went, of which only what is
   * kept without power still counts; none when no part keeps anything, or nothing is known of it.
   */
  long[][] groups() {
    return groups;
  }
}
