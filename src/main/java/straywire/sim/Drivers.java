package straywire.sim;

import java.util.List;

/**
 * Everything that can drive a node of a lane group: outputs of parts, contacts and pull resistors
 * of controls. What each drives now lies in the state as three words: may be high, may be low, may
 * be off.
 */
final class Drivers {
  private static final int CONTACT_AND_PULL = 2;

  final int count;
  final int[] lowRank;
  final int[] highRank;
  final int[] node;

  /** Ohms between a rail and the node; 0 for what is no resistor. */
  final int[] ohms;

  private final int stateAt;

  Drivers(List<PartSeat> seats, List<ControlSeat> controls, int stateAt) {
    this.stateAt = stateAt;
    int total = controls.size() * CONTACT_AND_PULL;
    for (PartSeat seat : seats) {
      total += seat.driving.length;
    }
    count = total;
    lowRank = new int[count];
    highRank = new int[count];
    node = new int[count];
    ohms = new int[count];
    for (PartSeat seat : seats) {
      for (int i = 0; i < seat.driving.length; i++) {
        add(seat.firstDriver + i, seat.node[seat.driving[i]], seat.lowRank(), seat.highRank());
      }
    }
    for (ControlSeat control : controls) {
      add(control.firstDriver, control.node, NetSolver.RAIL_RANK, NetSolver.RAIL_RANK);
      add(control.firstDriver + 1, control.node, NetSolver.PULL_RANK, NetSolver.PULL_RANK);
      ohms[control.firstDriver + 1] = control.pullOhms;
    }
  }

  private void add(int driver, int onto, int low, int high) {
    node[driver] = onto;
    lowRank[driver] = low;
    highRank[driver] = high;
  }

  long high(long[] state, int driver) {
    return state[stateAt + driver];
  }

  long low(long[] state, int driver) {
    return state[stateAt + count + driver];
  }

  long off(long[] state, int driver) {
    return state[stateAt + 2 * count + driver];
  }

  /** In lanes {@code where}: makes a driver unknown in {@code lanes}, and off in the others. */
  void setUnknown(long[] state, int driver, long lanes, long where) {
    int high = stateAt + driver;
    int low = high + count;
    int off = low + count;
    state[high] = (state[high] & ~where) | (lanes & where);
    state[low] = (state[low] & ~where) | (lanes & where);
    state[off] = (state[off] & ~where) | (~lanes & where);
  }

  /** In lanes {@code where}: what a driver may be. */
  void setIn(long[] state, int driver, long high, long low, long off, long where) {
    int at = stateAt + driver;
    state[at] = (state[at] & ~where) | (high & where);
    state[at + count] = (state[at + count] & ~where) | (low & where);
    state[at + 2 * count] = (state[at + 2 * count] & ~where) | (off & where);
  }

  /**
   * Sets a driver whose level is known in every lane; lanes in neither plane are off. Returns the
   * lanes in which it changed.
   */
  long set(long[] state, int driver, long high, long low) {
    long changed = (high(state, driver) ^ high) | (low(state, driver) ^ low);
    state[stateAt + driver] = high;
    state[stateAt + count + driver] = low;
    state[stateAt + 2 * count + driver] = ~(high | low);
    return changed;
  }
}
