package straywire.sim;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;

/**
 * Which drivers are felt at which node, and in which lanes. Copper does not move while a lane group
 * lives, so that this is worked out once and no level has to be spread over edges afterwards.
 */
final class Reach {
  /** Drivers felt at each node, rising. */
  final int[][] driversAt;

  /** Lanes in which each of {@link #driversAt} is felt there; never zero. */
  final long[][] lanesAt;

  /** Nodes at which a driver is felt, by driver, rising. */
  final int[][] nodesOf;

  Reach(Topology topology, Drivers drivers) {
    List<List<Integer>> felt = new ArrayList<>();
    List<List<Long>> lanes = new ArrayList<>();
    for (int node = 0; node < topology.nodeCount; node++) {
      felt.add(new ArrayList<>());
      lanes.add(new ArrayList<>());
    }
    nodesOf = new int[drivers.count][];
    int[][] nodesFrom = new int[topology.nodeCount][];
    long[][] lanesFrom = new long[topology.nodeCount][];
    long[] marks = new long[topology.nodeCount];
    for (int driver = 0; driver < drivers.count; driver++) {
      int from = drivers.node[driver];
      if (nodesFrom[from] == null) {
        topology.reach(from, topology.used, marks);
        nodesFrom[from] =
            Arrays.stream(topology.cluster(from)).filter(node -> marks[node] != 0).toArray();
        lanesFrom[from] = Arrays.stream(nodesFrom[from]).mapToLong(node -> marks[node]).toArray();
      }
      nodesOf[driver] = nodesFrom[from];
      for (int i = 0; i < nodesFrom[from].length; i++) {
        felt.get(nodesFrom[from][i]).add(driver);
        lanes.get(nodesFrom[from][i]).add(lanesFrom[from][i]);
      }
    }
    driversAt = new int[topology.nodeCount][];
    lanesAt = new long[topology.nodeCount][];
    for (int node = 0; node < topology.nodeCount; node++) {
      driversAt[node] = felt.get(node).stream().mapToInt(Integer::intValue).toArray();
      lanesAt[node] = lanes.get(node).stream().mapToLong(Long::longValue).toArray();
    }
  }
}
