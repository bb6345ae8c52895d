package straywire.sim;

import java.util.Collections;
import java.util.Map;
import java.util.SortedMap;
import java.util.TreeMap;
import java.util.function.Function;

/**
 * What the hand does at once: the controls it moves and those it leaves.
 *
 * @param levels of the controls that move, true is high
 * @param after levels of all controls, after the move
 * @param from the standing of the change-overs between lines before
 * @param to their standing after
 */
record HandMove(
    SortedMap<String, Boolean> levels, Map<String, Boolean> after, Standing from, Standing to) {
  /**
   * A move from one position of all controls to another.
   *
   * @param named the controls that the hand takes, moved or not
   */
  static HandMove of(
      Wiring wiring,
      Map<String, Boolean> before,
      Map<String, Boolean> after,
      Map<String, Boolean> named) {
    return new HandMove(
        Collections.unmodifiableSortedMap(new TreeMap<>(named)),
        after,
        Standing.atRest(wiring, before),
        Standing.atRest(wiring, after));
  }

  /** Levels of the controls that do not move. */
  Map<String, Boolean> others() {
    Map<String, Boolean> others = new TreeMap<>(after);
    others.keySet().removeAll(levels.keySet());
    return others;
  }

  /**
   * Works the lanes of one group, moment by moment.
   *
   * @param groups the same lanes by what their change-overs between lines join
   */
  void work(long[] state, Function<Standing, LaneGroup> groups) {
    LaneGroup after = groups.apply(to);
    boolean moved = !to.equals(from);
    if (moved) {
      Standing between = to.cameFrom(from, Standing.Moment.BETWEEN);
      groups.apply(between).leave(state, this, after.opened(between));
    } else {
      after.leave(state, this, 0);
    }
    Map<String, Long> closed = after.make(state, this, moved);
    for (int number = 0; number < ContactLanes.MOST_BOUNCES; number++) {
      Standing open = moved ? to.cameFrom(from, Standing.Moment.bounce(number)) : to;
      Bounce bounce = new Bounce(number, closed, after.opened(open));
      long lanes = after.again(bounce);
      if (lanes == 0) {
        return;
      }
      long[] settled = state.clone();
      (bounce.copper() == 0 ? after : groups.apply(open)).bounce(state, this, bounce, true);
      after.bounce(state, this, bounce, false);
      LaneGroup.keepOutside(lanes, settled, state);
    }
  }

  /**
   * One time that contacts open and close again.
   *
   * @param number which time, from 0
   * @param closed lanes in which a contact to a rail just closed that may bounce, by its label
   * @param copper lanes in which a contact between lines opens
   */
  record Bounce(int number, Map<String, Long> closed, long copper) {}
}
