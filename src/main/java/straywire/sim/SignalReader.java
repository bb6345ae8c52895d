package straywire.sim;

import java.util.Arrays;

/** Sorts the lanes of a node into {@link Signal}s, in a settled state of one lane group. */
final class SignalReader {
  private final LaneGroup group;
  private final long[] raised;
  private final long[] cmosHigh;
  private final long[] cmosLow;
  private final long[] starved;

  /** The state that raised and CMOS levels were marked for. */
  private long[] marked = {};

  SignalReader(LaneGroup group) {
    this.group = group;
    raised = new long[group.nodes];
    cmosHigh = new long[group.nodes];
    cmosLow = new long[group.nodes];
    starved = new long[group.nodes];
    for (PartSeat seat : group.seats) {
      for (int pin = 1; pin < seat.node.length; pin++) {
        starved[seat.node[pin]] |= seat.starved(pin);
      }
    }
    group.topology.spread(starved);
  }

  /** For each signal, by ordinal, the lanes that show it; each lane in use is in exactly one. */
  long[] read(long[] state, int node) {
    mark(state);
    return sorted(state, node);
  }

  /** The same for every node. */
  long[][] readAll(long[] state) {
    mark(state);
    long[][] all = new long[group.nodes][];
    for (int node = 0; node < all.length; node++) {
      all[node] = sorted(state, node);
    }
    return all;
  }

  private long[] sorted(long[] state, int node) {
    long[] lanes = new long[Signal.COUNT];
    long rest = group.used() & ~group.dead(state);
    put(lanes, Signal.NOTHING, group.dead(state));
    rest = take(lanes, Signal.UNSTABLE, rest, group.unstable(state, node));
    NetSolver.Drives drives = group.solver.drives(node, state);
    rest = take(lanes, Signal.FIGHT, rest, drives.railLow() & drives.railHigh());
    rest = take(lanes, Signal.RAIL_LOW, rest, drives.railLow());
    rest = take(lanes, Signal.RAIL_HIGH, rest, drives.railHigh());

    long high = group.mayBeHigh(state, node);
    long low = group.mayBeLow(state, node);
    long open = group.mayBeOpen(state, node);
    long fight = drives.outputLow() & drives.outputHigh();
    rest = take(lanes, Signal.FIGHT_LOW, rest, fight & low & ~high);
    rest = take(lanes, Signal.FIGHT, rest, fight);
    rest = take(lanes, Signal.UNKNOWN, rest, (high & low) | (open & (high | low)));
    rest = take(lanes, Signal.PULLED_LOW, rest, low & ~drives.outputLow());
    rest = take(lanes, Signal.PULLED_HIGH, rest, high & ~drives.outputHigh());
    rest = take(lanes, Signal.RAISED_LOW, rest, low & raised[node]);
    rest = take(lanes, Signal.LOW_CMOS, rest, low & cmosLow[node]);
    rest = take(lanes, Signal.LOW, rest, low);
    rest = take(lanes, Signal.CLAMPED_HIGH, rest, high & group.clamped[node]);
    rest = take(lanes, Signal.HIGH_CMOS, rest, high & cmosHigh[node]);
    rest = take(lanes, Signal.HIGH, rest, high);
    rest = take(lanes, Signal.STARVED, rest, starved[node]);
    rest = take(lanes, Signal.OPEN_INPUT, rest, group.leaning[node]);
    put(lanes, Signal.NOTHING, rest);
    return lanes;
  }

  private static long take(long[] lanes, Signal signal, long rest, long these) {
    put(lanes, signal, rest & these);
    return rest & ~these;
  }

  private static void put(long[] lanes, Signal signal, long these) {
    lanes[signal.ordinal()] |= these;
  }

  /** Marks the nodes that a raised low, or a CMOS level, reaches. */
  private void mark(long[] state) {
    // A state is never changed once handed out: what was marked for it still holds.
    if (state == marked) {
      return;
    }
    marked = state;
    Arrays.fill(raised, 0);
    Arrays.fill(cmosHigh, 0);
    Arrays.fill(cmosLow, 0);
    boolean any = false;
    for (int i = 0; i < group.seats.size(); i++) {
      PartSeat seat = group.seats.get(i);
      long up = group.raised(state, i);
      if (up == 0 && !seat.family.feedsThroughInputs()) {
        continue;
      }
      any = true;
      for (int d = 0; d < seat.driving.length; d++) {
        int node = seat.node[seat.driving[d]];
        raised[node] |= up & group.drivers.low(state, seat.firstDriver + d);
        if (seat.family.feedsThroughInputs()) {
          cmosHigh[node] |= group.drivers.high(state, seat.firstDriver + d);
          cmosLow[node] |= group.drivers.low(state, seat.firstDriver + d);
        }
      }
    }
    if (any) {
      group.topology.spread(raised);
      group.topology.spread(cmosHigh);
      group.topology.spread(cmosLow);
    }
  }
}
