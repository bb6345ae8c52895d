package straywire.sim;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.Stream;
import straywire.module.SeriesResistor;

/**
 * Which drivers are felt at which node, and in which lanes. Copper does not move while a lane group
 * lives, so that this is worked out once and no level has to be spread over edges afterwards.
 */
final class Reach {
  /** Drivers felt at each node over copper alone, rising. */
  final int[][] driversAt;

  /** Lanes in which each of {@link #driversAt} is felt there; never zero. */
  final long[][] lanesAt;

  /** Drivers felt at a node through resistors between lines; nodes without any are left out. */
  private final Map<Integer, List<Through>> throughAt = new HashMap<>();

  /** Nodes at which a driver is felt, by driver, rising. */
  final int[][] nodesOf;

  /**
   * A driver felt through resistors.
   *
   * @param resistors how many lie between, the fewest that do in these lanes
   * @param ohms of them all
   */
  record Through(int driver, int resistors, int ohms, long lanes) {}

  /** A node that the copper or resistors from some node lead to. */
  private record Place(int node, int ohms, long lanes) {}

  /** A resistor between lines, from one of its nodes. */
  private record Link(int to, int ohms) {}

  /** A place behind so many resistors. */
  private record Beyond(Place place, int resistors) {}

  /**
   * What lies around a node.
   *
   * @param nodes of all places, rising
   */
  private record Around(List<Place> copper, List<Beyond> beyond, int[] nodes) {}

  private final Topology topology;
  private final Map<Integer, List<Link>> linksAt = new HashMap<>();
  private final long[] marks;

  Reach(Topology topology, Drivers drivers, Wiring wiring) {
    this.topology = topology;
    marks = new long[topology.nodeCount];
    List<List<Integer>> felt = new ArrayList<>();
    List<List<Long>> lanes = new ArrayList<>();
    for (int node = 0; node < topology.nodeCount; node++) {
      felt.add(new ArrayList<>());
      lanes.add(new ArrayList<>());
    }
    wiring.module().passives().series().values().forEach(s -> link(s, wiring));
    nodesOf = new int[drivers.count][];
    Map<Integer, Around> around = new HashMap<>();
    for (int driver = 0; driver < drivers.count; driver++) {
      Around from = around.computeIfAbsent(drivers.node[driver], this::around);
      nodesOf[driver] = from.nodes();
      for (Place place : from.copper()) {
        felt.get(place.node()).add(driver);
        lanes.get(place.node()).add(place.lanes());
      }
      for (Beyond beyond : from.beyond()) {
        Place place = beyond.place();
        throughAt
            .computeIfAbsent(place.node(), node -> new ArrayList<>())
            .add(new Through(driver, beyond.resistors(), place.ohms(), place.lanes()));
      }
    }
    driversAt = new int[topology.nodeCount][];
    lanesAt = new long[topology.nodeCount][];
    for (int node = 0; node < topology.nodeCount; node++) {
      driversAt[node] = felt.get(node).stream().mapToInt(Integer::intValue).toArray();
      lanesAt[node] = lanes.get(node).stream().mapToLong(Long::longValue).toArray();
    }
  }

  private void link(SeriesResistor resistor, Wiring wiring) {
    int one = topology.node(wiring.row(resistor.ends().get(0)));
    int two = topology.node(wiring.row(resistor.ends().get(1)));
    linksAt.computeIfAbsent(one, node -> new ArrayList<>()).add(new Link(two, resistor.ohms()));
    linksAt.computeIfAbsent(two, node -> new ArrayList<>()).add(new Link(one, resistor.ohms()));
  }

  /** Drivers felt at a node through resistors between lines, by driver, fewest resistors first. */
  List<Through> throughAt(int node) {
    return throughAt.getOrDefault(node, List.of());
  }

  private Around around(int from) {
    List<Place> copper = over(new Place(from, 0, topology.used));
    List<Beyond> beyond = linksAt.isEmpty() ? List.of() : beyond(copper);
    int[] nodes =
        Stream.concat(copper.stream(), beyond.stream().map(Beyond::place))
            .mapToInt(Place::node)
            .sorted()
            .distinct()
            .toArray();
    return new Around(copper, beyond, nodes);
  }

  /**
   * Places behind one resistor, then those behind two, and so on. Of several ways with equally many
   * resistors that of the least ohms speaks for all: it is what decides.
   */
  private List<Beyond> beyond(List<Place> copper) {
    List<Beyond> all = new ArrayList<>();
    long[] covered = new long[topology.nodeCount];
    copper.forEach(place -> covered[place.node()] |= place.lanes());
    List<Place> reached = copper;
    for (int resistors = 1; !reached.isEmpty(); resistors++) {
      List<Place> next = new ArrayList<>();
      for (Place place : reached) {
        for (Link link : linksAt.getOrDefault(place.node(), List.of())) {
          long lanes = place.lanes() & ~covered[link.to()];
          if (lanes != 0) {
            next.addAll(over(new Place(link.to(), place.ohms() + link.ohms(), lanes)));
          }
        }
      }
      next.sort(Comparator.comparingInt(Place::ohms));
      reached = new ArrayList<>();
      for (Place place : next) {
        long lanes = place.lanes() & ~covered[place.node()];
        if (lanes != 0) {
          covered[place.node()] |= lanes;
          Place least = new Place(place.node(), place.ohms(), lanes);
          reached.add(least);
          all.add(new Beyond(least, resistors));
        }
      }
    }
    return all;
  }

  /** A place and the copper around it. */
  private List<Place> over(Place start) {
    topology.reach(start.node(), start.lanes(), marks);
    List<Place> places = new ArrayList<>();
    for (int node : topology.cluster(start.node())) {
      if (marks[node] != 0) {
        places.add(new Place(node, start.ohms(), marks[node]));
      }
    }
    return places;
  }
}
