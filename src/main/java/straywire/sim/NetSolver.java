package straywire.sim;

import java.util.Arrays;
import java.util.stream.IntStream;

/**
 * Solves the level of each node from the drivers that are felt there: the highest rank decides,
 * lane by lane.
 *
 * <p>An unknown driver is tried both ways. In the low world every driver that may be low is, in the
 * high world every driver that may be high is; since the level at a node never falls when a driver
 * rises, a node on which both worlds agree is known.
 */
final class NetSolver {
  static final int RAIL_RANK = 7;
  static final int PULL_RANK = 2;

  /** Ranks from this one up are outputs, closed contacts and rails; below are resistors. */
  private static final int FIRST_OUTPUT_RANK = PULL_RANK + 1;

  private final Topology topology;
  private final Drivers drivers;
  private final Reach reach;

  /**
   * Pulls of outputs, contacts and rails on each node, strongest first: a driver pulls low with one
   * rank and high with another. A pull is the driver's number, its rank and 1 when it pulls high,
   * as {@link #pull} packs them.
   */
  private final int[][] pulls;

  /** Lanes in which each of {@link #pulls} is felt. */
  private final long[][] pullLanes;

  /** What resistors do at each node, after everything else; nodes without any share one. */
  private final Resisting[] resisting;

  NetSolver(Topology topology, Drivers drivers, Reach reach, long[] leaning) {
    this.topology = topology;
    this.drivers = drivers;
    this.reach = reach;
    pulls = new int[topology.nodeCount][];
    pullLanes = new long[topology.nodeCount][];
    resisting = new Resisting[topology.nodeCount];
    Resisting none = Resisting.none(drivers);
    for (int node = 0; node < topology.nodeCount; node++) {
      sortPulls(node);
      resisting[node] = Resisting.at(node, drivers, reach, leaning[node], none);
    }
  }

  private void sortPulls(int node) {
    int[] felt = reach.driversAt[node];
    int[] outright =
        IntStream.range(0, felt.length)
            .filter(i -> drivers.lowRank[felt[i]] != PULL_RANK)
            .toArray();
    // Place among the felt drivers in the low bits, so that sorting by rank carries it along.
    long[] byRank = new long[2 * outright.length];
    for (int p = 0; p < outright.length; p++) {
      int i = outright[p];
      byRank[2 * p] = ((long) (RAIL_RANK - drivers.lowRank[felt[i]]) << 32) | (2L * i);
      byRank[2 * p + 1] = ((long) (RAIL_RANK - drivers.highRank[felt[i]]) << 32) | (2L * i + 1);
    }
    Arrays.sort(byRank);
    pulls[node] = new int[byRank.length];
    pullLanes[node] = new long[byRank.length];
    for (int p = 0; p < byRank.length; p++) {
      int i = (int) byRank[p] >>> 1;
      boolean high = (byRank[p] & 1) != 0;
      pulls[node][p] = pull(felt[i], RAIL_RANK - (int) (byRank[p] >>> 32), high);
      pullLanes[node][p] = reach.lanesAt[node][i];
    }
  }

  private static int pull(int driver, int rank, boolean high) {
    return driver << 4 | rank << 1 | (high ? 1 : 0);
  }

  /**
   * Works out one node.
   *
   * @param levels receives three words: may be high, may be low, may be open
   */
  void solve(int node, long[] state, long[] levels) {
    int[] here = pulls[node];
    long[] lanes = pullLanes[node];
    long high = 0;
    long low = 0;
    long openLow = topology.used;
    long openHigh = topology.used;
    int rank = RAIL_RANK;
    long lowInLow = topology.railLow[node];
    long highInLow = topology.railHigh[node];
    long lowInHigh = lowInLow;
    long highInHigh = highInLow;
    for (int p = 0; p < here.length; p++) {
      int rankNow = here[p] >>> 1 & 7;
      if (rankNow != rank) {
        low |= (lowInLow & openLow) | (lowInHigh & openHigh);
        high |= (highInLow & openLow) | (highInHigh & openHigh);
        openLow &= ~(lowInLow | highInLow);
        openHigh &= ~(lowInHigh | highInHigh);
        lowInLow = 0;
        highInLow = 0;
        lowInHigh = 0;
        highInHigh = 0;
        rank = rankNow;
      }
      int driver = here[p] >>> 4;
      long mayHigh = drivers.high(state, driver) & lanes[p];
      long mayLow = drivers.low(state, driver) & lanes[p];
      long off = drivers.off(state, driver);
      if ((here[p] & 1) == 0) {
        lowInLow |= mayLow;
        lowInHigh |= mayLow & ~mayHigh & ~off;
      } else {
        highInHigh |= mayHigh;
        highInLow |= mayHigh & ~mayLow & ~off;
      }
    }
    levels[0] = high | (highInLow & openLow) | (highInHigh & openHigh);
    levels[1] = low | (lowInLow & openLow) | (lowInHigh & openHigh);
    openLow &= ~(lowInLow | highInLow);
    openHigh &= ~(lowInHigh | highInHigh);
    resisting[node].solve(state, openLow, openHigh, levels);
  }

  /** What certainly drives a node in a state: rails, outputs. */
  Drives drives(int node, long[] state) {
    long railLow = topology.railLow[node];
    long railHigh = topology.railHigh[node];
    long outputLow = 0;
    long outputHigh = 0;
    int[] felt = reach.driversAt[node];
    for (int i = 0; i < felt.length; i++) {
      int driver = felt[i];
      long certain = reach.lanesAt[node][i] & ~drivers.off(state, driver);
      long low = certain & drivers.low(state, driver) & ~drivers.high(state, driver);
      long high = certain & drivers.high(state, driver) & ~drivers.low(state, driver);
      railLow |= drivers.lowRank[driver] == RAIL_RANK ? low : 0;
      railHigh |= drivers.highRank[driver] == RAIL_RANK ? high : 0;
      outputLow |= drivers.lowRank[driver] >= FIRST_OUTPUT_RANK ? low : 0;
      outputHigh |= drivers.highRank[driver] >= FIRST_OUTPUT_RANK ? high : 0;
    }
    return new Drives(railLow, railHigh, outputLow | railLow, outputHigh | railHigh);
  }

  /** Lanes in which something of a kind certainly drives a node. */
  record Drives(long railLow, long railHigh, long outputLow, long outputHigh) {}
}
