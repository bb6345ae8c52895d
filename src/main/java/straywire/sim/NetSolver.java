package straywire.sim;

import java.util.Arrays;

/**
 * Solves the level of each node from what drives it: strengths spread over the edges of a cluster
 * and the highest rank decides, lane by lane.
 *
 * <p>An unknown driver is tried both ways. In the low world every driver that may be low is, in the
 * high world every driver that may be high is; since the level at a node never falls when a driver
 * rises, a node on which both worlds agree is known.
 */
final class NetSolver {
  static final int RAIL_RANK = 7;
  static final int PULL_RANK = 2;

  private static final int LOW_IN_LOW_WORLD = 0;
  private static final int HIGH_IN_LOW_WORLD = 1;
  private static final int LOW_IN_HIGH_WORLD = 2;
  private static final int HIGH_IN_HIGH_WORLD = 3;
  private static final int SLOTS = (RAIL_RANK + 1) * 4;

  /** Ranks from this one up are outputs, closed contacts and rails; below are resistors. */
  private static final int FIRST_OUTPUT_RANK = PULL_RANK + 1;

  private final Topology topology;
  private final Drivers drivers;
  private final int[][] slotsOfCluster;
  private final long[] planes;

  /** Scratch of one spread. */
  private final int[] busy = new int[SLOTS];

  NetSolver(Topology topology, Drivers drivers) {
    this.topology = topology;
    this.drivers = drivers;
    planes = new long[topology.nodeCount * SLOTS];
    slotsOfCluster = new int[topology.clusterNodes.length][];
    for (int cluster = 0; cluster < slotsOfCluster.length; cluster++) {
      slotsOfCluster[cluster] = slotsUsed(cluster);
    }
  }

  private int[] slotsUsed(int cluster) {
    boolean[] used = new boolean[SLOTS];
    for (int node : topology.clusterNodes[cluster]) {
      for (int driver : drivers.onNode[node]) {
        markBothWorlds(used, drivers.lowRank[driver] * 4);
        markBothWorlds(used, drivers.highRank[driver] * 4 + 1);
      }
      if (topology.railLow[node] != 0) {
        markBothWorlds(used, RAIL_RANK * 4);
      }
      if (topology.railHigh[node] != 0) {
        markBothWorlds(used, RAIL_RANK * 4 + 1);
      }
    }
    int[] slots = new int[SLOTS];
    int count = 0;
    // Highest rank first: the order in which they decide.
    for (int rank = RAIL_RANK; rank >= 0; rank--) {
      for (int kind = 0; kind < 4; kind++) {
        if (used[rank * 4 + kind]) {
          slots[count++] = rank * 4 + kind;
        }
      }
    }
    return Arrays.copyOf(slots, count);
  }

  private static void markBothWorlds(boolean[] used, int slot) {
    used[slot] = true;
    used[slot + 2] = true;
  }

  /**
   * Works out the nodes of one cluster.
   *
   * @param levels receives three words a node, in the order of the cluster's nodes: may be high,
   *     may be low, may be open
   */
  void solve(int cluster, long[] state, long[] levels) {
    int[] nodes = topology.clusterNodes[cluster];
    if (nodes.length == 1
        && drivers.onNode[nodes[0]].length == 1
        && (topology.railHigh[nodes[0]] | topology.railLow[nodes[0]]) == 0) {
      int driver = drivers.onNode[nodes[0]][0];
      levels[0] = drivers.high(state, driver) & topology.used;
      levels[1] = drivers.low(state, driver) & topology.used;
      // As in two worlds: a level that may be either is not asked whether it may be open as well.
      levels[2] = drivers.off(state, driver) & ~(levels[0] & levels[1]) & topology.used;
      return;
    }
    fill(cluster, state);
    int[] slots = slotsOfCluster[cluster];
    for (int i = 0; i < nodes.length; i++) {
      decide(nodes[i] * SLOTS, slots, levels, i * 3);
    }
  }

  private void decide(int at, int[] slots, long[] levels, int out) {
    long high = 0;
    long low = 0;
    long openLow = topology.used;
    long openHigh = topology.used;
    int i = 0;
    while (i < slots.length) {
      int rank = slots[i] >>> 2;
      long lowWorld = 0;
      long highWorld = 0;
      for (; i < slots.length && slots[i] >>> 2 == rank; i++) {
        long plane = planes[at + slots[i]];
        switch (slots[i] & 3) {
          case LOW_IN_LOW_WORLD -> {
            low |= plane & openLow;
            lowWorld |= plane;
          }
          case HIGH_IN_LOW_WORLD -> {
            high |= plane & openLow;
            lowWorld |= plane;
          }
          case LOW_IN_HIGH_WORLD -> {
            low |= plane & openHigh;
            highWorld |= plane;
          }
          default -> {
            high |= plane & openHigh;
            highWorld |= plane;
          }
        }
      }
      openLow &= ~lowWorld;
      openHigh &= ~highWorld;
    }
    levels[out] = high;
    levels[out + 1] = low;
    levels[out + 2] = openLow | openHigh;
  }

  private void fill(int cluster, long[] state) {
    int[] slots = slotsOfCluster[cluster];
    for (int node : topology.clusterNodes[cluster]) {
      int at = node * SLOTS;
      for (int slot : slots) {
        planes[at + slot] = 0;
      }
      if (topology.railLow[node] != 0) {
        planes[at + RAIL_RANK * 4 + LOW_IN_LOW_WORLD] = topology.railLow[node];
        planes[at + RAIL_RANK * 4 + LOW_IN_HIGH_WORLD] = topology.railLow[node];
      }
      if (topology.railHigh[node] != 0) {
        planes[at + RAIL_RANK * 4 + HIGH_IN_LOW_WORLD] = topology.railHigh[node];
        planes[at + RAIL_RANK * 4 + HIGH_IN_HIGH_WORLD] = topology.railHigh[node];
      }
      for (int driver : drivers.onNode[node]) {
        long high = drivers.high(state, driver);
        long low = drivers.low(state, driver);
        long off = drivers.off(state, driver);
        int lowSlot = at + drivers.lowRank[driver] * 4;
        int highSlot = at + drivers.highRank[driver] * 4;
        planes[lowSlot + LOW_IN_LOW_WORLD] |= low;
        planes[highSlot + HIGH_IN_LOW_WORLD] |= high & ~low & ~off;
        planes[highSlot + HIGH_IN_HIGH_WORLD] |= high;
        planes[lowSlot + LOW_IN_HIGH_WORLD] |= low & ~high & ~off;
      }
    }
    if (topology.clusterEdges[cluster].length > 0) {
      spread(cluster, slots);
    }
  }

  /** Puts the slots that drive anything in a cluster now into {@link #busy}; gives their number. */
  private int busySlots(int cluster, int[] slots) {
    int count = 0;
    for (int slot : slots) {
      long any = 0;
      for (int node : topology.clusterNodes[cluster]) {
        any |= planes[node * SLOTS + slot];
      }
      if (any != 0) {
        busy[count++] = slot;
      }
    }
    return count;
  }

  private void spread(int cluster, int[] slots) {
    int[] edges = topology.clusterEdges[cluster];
    int count = busySlots(cluster, slots);
    boolean moved = true;
    while (moved) {
      long change = 0;
      for (int edge : edges) {
        int from = topology.edgeFrom[edge] * SLOTS;
        int to = topology.edgeTo[edge] * SLOTS;
        long lanes = topology.edgeLanes[edge];
        for (int i = 0; i < count; i++) {
          int slot = busy[i];
          long a = planes[from + slot];
          long b = planes[to + slot];
          long differ = (a ^ b) & lanes;
          if (differ != 0) {
            planes[from + slot] = a | differ;
            planes[to + slot] = b | differ;
            change |= differ;
          }
        }
      }
      moved = change != 0;
    }
  }

  /**
   * Spreads the drives of one cluster, so that {@link #drives} can tell what drives its nodes.
   * Slots that nothing in the cluster uses are zero at all times.
   */
  void spreadDrives(int cluster, long[] state) {
    fill(cluster, state);
  }

  /** What certainly drives a node of the cluster spread last: rails, outputs, resistors. */
  Drives drives(int node) {
    int at = node * SLOTS;
    long outputLow = 0;
    long outputHigh = 0;
    for (int rank = FIRST_OUTPUT_RANK; rank <= RAIL_RANK; rank++) {
      outputLow |= planes[at + rank * 4 + LOW_IN_HIGH_WORLD];
      outputHigh |= planes[at + rank * 4 + HIGH_IN_LOW_WORLD];
    }
    int rail = at + RAIL_RANK * 4;
    return new Drives(
        planes[rail + LOW_IN_HIGH_WORLD], planes[rail + HIGH_IN_LOW_WORLD], outputLow, outputHigh);
  }

  /** Lanes in which something of a kind certainly drives a node. */
  record Drives(long railLow, long railHigh, long outputLow, long outputHigh) {}
}
