package straywire.sim;

import java.util.Collections;
import java.util.Map;
import java.util.SortedMap;
import java.util.SortedSet;
import java.util.TreeMap;
import java.util.TreeSet;
import straywire.module.Pass;

/**
 * Where the change-overs between lines stand at one moment: what is joined to what depends on it.
 *
 * @param positions of each of these controls, true is high; of those that move, the new one
 * @param moving those that move now; none at rest
 * @param moment of the move
 */
record Standing(SortedMap<String, Boolean> positions, SortedSet<String> moving, Moment moment) {
  /** The moments of a move, in order. */
  enum Moment {
    AT_REST,
    /** What the move opens is open, what it closes is not closed yet. */
    BETWEEN,
    OPEN_AGAIN,
    OPEN_A_THIRD_TIME,
    OPEN_A_FOURTH_TIME;

    /** The moment of a bounce, counted from 0. */
    static Moment bounce(int bounce) {
      return values()[OPEN_AGAIN.ordinal() + bounce];
    }

    private int bounce() {
      return ordinal() - OPEN_AGAIN.ordinal();
    }
  }

  Standing {
    positions = Collections.unmodifiableSortedMap(new TreeMap<>(positions));
    moving = Collections.unmodifiableSortedSet(new TreeSet<>(moving));
  }

  /** Nothing moves. */
  static Standing atRest(Wiring wiring, Map<String, Boolean> controls) {
    SortedMap<String, Boolean> positions = new TreeMap<>();
    wiring.passes().forEach(p -> positions.put(p.control(), controls.get(p.control())));
    return new Standing(positions, new TreeSet<>(), Moment.AT_REST);
  }

  /** On the way to this standing from another. */
  Standing cameFrom(Standing before, Moment moment) {
    SortedSet<String> moved = new TreeSet<>();
    positions.forEach(
        (label, high) -> {
          if (!high.equals(before.positions.get(label))) {
            moved.add(label);
          }
        });
    return new Standing(positions, moved, moment);
  }

  /** Lanes in which a contact is closed now. */
  long closed(Pass pass, ContactLanes lanes, long used) {
    boolean high = positions.get(pass.control());
    long closed = lanes.closed(high, used);
    if (!moving.contains(pass.control()) || moment == Moment.AT_REST) {
      return closed;
    }
    return moment == Moment.BETWEEN
        ? closed & lanes.closed(!high, used)
        : closed & ~(lanes.surelyBounces(moment.bounce()) & lanes.closes(high, used));
  }

  /** Lanes in which a contact has just opened, at the moment it does. */
  long opened(Pass pass, ContactLanes lanes, long used) {
    if (!moving.contains(pass.control()) || moment == Moment.AT_REST) {
      return 0;
    }
    boolean high = positions.get(pass.control());
    return moment == Moment.BETWEEN
        ? lanes.closes(!high, used)
        : lanes.surelyBounces(moment.bounce()) & lanes.closes(high, used);
  }
}
