package straywire.sim;

import java.util.Arrays;

/** Sorts the lanes of a node into {@link Signal}s, in a settled state of one lane group. */
final class SignalReader {
  private final LaneGroup group;
  private final long[] marks;

  SignalReader(LaneGroup group) {
    this.group = group;
    marks = new long[group.nodes];
  }

  /** For each signal, by ordinal, the lanes that show it; each lane in use is in exactly one. */
  long[] read(long[] state, int node) {
    long[] lanes = new long[Signal.COUNT];
    long rest = group.used() & ~group.noLogic;
    put(lanes, Signal.NOTHING, group.noLogic);
    rest = take(lanes, Signal.UNSTABLE, rest, unsettled(state, node));
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
    rest = take(lanes, Signal.RAISED_LOW, rest, low & raisedAt(state, node));
    rest = take(lanes, Signal.LOW, rest, low);
    rest = take(lanes, Signal.CLAMPED_HIGH, rest, high & group.clamped[node]);
    rest = take(lanes, Signal.HIGH_CMOS, rest, high & cmosAt(state, node));
    rest = take(lanes, Signal.HIGH, rest, high);
    rest = take(lanes, Signal.STARVED, rest, starvedAt(node));
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

  /** An oscillation leaves both levels possible; the other nodes of such a lane are at rest. */
  private long unsettled(long[] state, int node) {
    return group.unstable(state) & group.mayBeHigh(state, node) & group.mayBeLow(state, node);
  }

  private long raisedAt(long[] state, int node) {
    clear(node);
    for (int i = 0; i < group.seats.size(); i++) {
      long raised = group.raised(state, i);
      if (raised != 0) {
        PartSeat seat = group.seats.get(i);
        for (int d = 0; d < seat.driving.length; d++) {
          mark(node, seat, d, raised & group.drivers.low(state, seat.firstDriver + d));
        }
      }
    }
    return spread(node);
  }

  private long cmosAt(long[] state, int node) {
    clear(node);
    for (PartSeat seat : group.seats) {
      if (seat.family.feedsThroughInputs()) {
        for (int d = 0; d < seat.driving.length; d++) {
          mark(node, seat, d, group.drivers.high(state, seat.firstDriver + d));
        }
      }
    }
    return spread(node);
  }

  private long starvedAt(int node) {
    clear(node);
    for (PartSeat seat : group.seats) {
      for (int pin = 1; pin < seat.node.length; pin++) {
        if (sameCluster(seat.node[pin], node)) {
          marks[seat.node[pin]] |= seat.starved(pin);
        }
      }
    }
    return spread(node);
  }

  private void mark(int node, PartSeat seat, int driving, long lanes) {
    int at = seat.node[seat.driving[driving]];
    if (sameCluster(at, node)) {
      marks[at] |= lanes;
    }
  }

  private boolean sameCluster(int a, int b) {
    return group.topology.clusterOfNode[a] == group.topology.clusterOfNode[b];
  }

  private void clear(int node) {
    Arrays.fill(marks, 0);
    marks[node] = 0;
  }

  private long spread(int node) {
    group.topology.spreadCluster(marks, group.topology.clusterOfNode[node]);
    return marks[node];
  }
}
