package straywire.steps;

import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;
import straywire.faults.Edit;
import straywire.faults.Hypothesis;
import straywire.module.Control;
import straywire.module.End;
import straywire.module.Module;
import straywire.module.Net;
import straywire.sim.UnionFind;

/**
 * Parts, controls and lamps that wires join, rails left aside. What a hand does on one island shows
 * nothing of a fault that lies on others.
 */
final class Islands {
  private final Module module;
  private final Map<String, Integer> islandOf = new TreeMap<>();

  Islands(Module module) {
    this.module = module;
    Map<String, Integer> number = numbered(module);
    UnionFind joined = new UnionFind(number.size());
    for (Net net : module.nets()) {
      if (!net.onRail()) {
        int first = number.get(net.ends().get(0).label());
        net.ends().forEach(end -> joined.join(first, number.get(end.label())));
      }
    }
    for (Control control : module.controls().values()) {
      int own = number.get(control.label());
      control.terminals().forEach(end -> joined.join(own, number.get(end.label())));
    }
    int[] islands = joined.numbered();
    number.forEach((label, n) -> islandOf.put(label, islands[n]));
  }

  /** All that may lie on an island, whether a net names it or not. */
  private static Map<String, Integer> numbered(Module module) {
    Set<String> labels = new TreeSet<>(module.parts().keySet());
    labels.addAll(module.controls().keySet());
    module.terminals().forEach(end -> labels.add(end.label()));
    labels.addAll(module.lamps().keySet());
    module.nets().forEach(net -> net.ends().forEach(end -> labels.add(end.label())));
    Map<String, Integer> number = new TreeMap<>();
    labels.forEach(label -> number.put(label, number.size()));
    return number;
  }

  /** The number of the island on which a part, control or lamp lies. */
  int of(String label) {
    return islandOf.get(label);
  }

  /** The islands of several labels. */
  Set<Integer> of(Set<String> labels) {
    Set<Integer> islands = new TreeSet<>();
    labels.forEach(label -> islands.add(of(label)));
    return islands;
  }

  /**
   * The islands on which hypotheses change anything. All there are when one of them changes rails
   * alone, or when none changes anything.
   */
  Set<Integer> touched(List<Hypothesis> hypotheses) {
    Set<Integer> touched = new TreeSet<>();
    for (Hypothesis hypothesis : hypotheses) {
      for (Edit edit : hypothesis.edits()) {
        boolean railsAlone = true;
        for (End end : edit.touches(module)) {
          if (end.kind() != End.Kind.RAIL) {
            touched.add(of(end.label()));
            railsAlone = false;
          }
        }
        if (railsAlone) {
          return all();
        }
      }
    }
    return touched.isEmpty() ? all() : touched;
  }

  private Set<Integer> all() {
    Set<Integer> all = of(module.parts().keySet());
    all.addAll(of(module.controls().keySet()));
    return all;
  }
}
