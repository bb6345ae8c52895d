package straywire.sim;

import java.util.Arrays;
import java.util.Optional;

/**
 * What one step changed in a state, so that the state before it can be had from the one after. A
 * large memory has ten thousands of words of which a step changes few: keeping every state of a
 * sitting whole would fill the heap.
 */
public final class StateChange {
  /** Nothing changed. */
  public static final StateChange NONE =
      new StateChange(Optional.empty(), new int[0][], new long[0][]);

  /** For each lane group the places that changed, and what stood there before. */
  private final int[][] places;

  private final long[][] values;

  /**
   * The state before, but for what lies in the lane groups; whole when those came or went with the
   * power; empty when nothing changed.
   */
  private final Optional<BoardState> before;

  private StateChange(Optional<BoardState> before, int[][] places, long[][] values) {
    this.before = before;
    this.places = places;
    this.values = values;
  }

  /** What turned one state into the other; both of the same boards. */
  public static StateChange between(BoardState before, BoardState after) {
    if (before == after) {
      return NONE;
    }
    int groups = before.groups().length;
    if (groups == 0 || after.groups().length != groups) {
      return new StateChange(Optional.of(before), new int[0][], new long[0][]);
    }
    int[][] places = new int[groups][];
    long[][] values = new long[groups][];
    for (int g = 0; g < groups; g++) {
      note(before.groups()[g], after.groups()[g], g, places, values);
    }
    BoardState shell = new BoardState(before.powered(), before.controls(), new long[0][]);
    return new StateChange(Optional.of(shell), places, values);
  }

  private static void note(long[] was, long[] is, int group, int[][] places, long[][] values) {
    int[] changed = new int[16];
    int count = 0;
    for (int at = Arrays.mismatch(was, is); at >= 0; at = next(was, is, at + 1)) {
      if (count == changed.length) {
        changed = Arrays.copyOf(changed, 2 * count);
      }
      changed[count] = at;
      count++;
    }
    places[group] = Arrays.copyOf(changed, count);
    values[group] = new long[count];
    for (int i = 0; i < count; i++) {
      values[group][i] = was[changed[i]];
    }
  }

  private static int next(long[] was, long[] is, int from) {
    int ahead = Arrays.mismatch(was, from, was.length, is, from, is.length);
    return ahead < 0 ? -1 : from + ahead;
  }

  /** The state before the change. */
  public BoardState undo(BoardState after) {
    if (places.length == 0) {
      return before.orElse(after);
    }
    long[][] groups = new long[places.length][];
    for (int g = 0; g < groups.length; g++) {
      groups[g] = after.groups()[g].clone();
      for (int i = 0; i < places[g].length; i++) {
        groups[g][places[g][i]] = values[g][i];
      }
    }
    BoardState shell = before.orElseThrow();
    return new BoardState(shell.powered(), shell.controls(), groups);
  }
}
