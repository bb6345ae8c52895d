package straywire.diagnosis;

import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;
import straywire.faults.Edit;
import straywire.faults.Hypothesis;
import straywire.module.End;
import straywire.module.Module;
import straywire.module.Net;

/**
 * Parts, controls and lamps that wires join, rails left aside. What a hand does on one island shows
 * nothing of a fault that lies on others.
 */
final class Islands {
  private final Module module;
  private final Map<String, String> next = new TreeMap<>();

  Islands(Module module) {
    this.module = module;
    for (Net net : module.nets()) {
      if (!net.onRail()) {
        String first = of(net.ends().get(0).label());
        net.ends().forEach(end -> next.put(of(end.label()), first));
      }
    }
  }

  /** The island on which a part, control or lamp lies, by the label of one of its members. */
  String of(String label) {
    String at = label;
    while (!next.getOrDefault(at, at).equals(at)) {
      at = next.get(at);
    }
    return at;
  }

  /** The islands of several labels. */
  Set<String> of(Set<String> labels) {
    Set<String> islands = new TreeSet<>();
    labels.forEach(label -> islands.add(of(label)));
    return islands;
  }

  /**
   * The islands on which hypotheses change anything. All there are when one of them changes rails
   * alone, or when none changes anything.
   */
  Set<String> touched(List<Hypothesis> hypotheses) {
    Set<String> touched = new TreeSet<>();
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

  private Set<String> all() {
    Set<String> all = of(module.parts().keySet());
    all.addAll(of(module.controls().keySet()));
    return all;
  }
}
