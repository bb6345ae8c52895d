package straywire.faults;

import java.util.ArrayList;
import java.util.Collection;
import java.util.Comparator;
import java.util.EnumMap;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.Collectors;

/** Makes hypotheses with the same edits one, and shares the prior out among what is left. */
final class HypothesisMerge {
  private final Priors priors;

  HypothesisMerge(Priors priors) {
    this.priors = priors;
  }

  /** Input priors are frequency times weight; output priors add up to 1. */
  List<Hypothesis> merged(List<Hypothesis> hypotheses) {
    Map<Mechanism, List<Hypothesis>> byMechanism = new EnumMap<>(Mechanism.class);
    for (Hypothesis h : hypotheses) {
      byMechanism.computeIfAbsent(h.mechanism(), m -> new ArrayList<>()).add(h);
    }
    // A mechanism's frequency is shared among its places before mechanisms are compared: a supply
    // jumper is both a jumper and one of the few supply jumpers, and the latter tells more.
    List<Hypothesis> shared = new ArrayList<>();
    byMechanism.forEach((mechanism, places) -> shared.addAll(shares(mechanism, places)));
    List<Hypothesis> single = sameEditsOnce(shared);
    double faults = single.stream().filter(h -> !healthy(h)).mapToDouble(Hypothesis::prior).sum();
    return single.stream()
        .map(h -> healthy(h) ? h : scaled(h, (1 - priors.nothingWrong()) / faults))
        .sorted(Comparator.comparing(Hypothesis::mechanism).thenComparing(Hypothesis::id))
        .toList();
  }

  private List<Hypothesis> shares(Mechanism mechanism, List<Hypothesis> places) {
    List<Hypothesis> once = sameEditsOnce(places);
    if (mechanism == Mechanism.NOTHING_WRONG) {
      return once;
    }
    double sum = once.stream().mapToDouble(Hypothesis::prior).sum();
    return once.stream().map(h -> scaled(h, priors.frequency(mechanism) / sum)).toList();
  }

  private static List<Hypothesis> sameEditsOnce(List<Hypothesis> hypotheses) {
    Map<Set<Edit>, List<Hypothesis>> byEdits = new LinkedHashMap<>();
    for (Hypothesis h : hypotheses) {
      byEdits.computeIfAbsent(new HashSet<>(h.edits()), e -> new ArrayList<>()).add(h);
    }
    return byEdits.values().stream().map(HypothesisMerge::one).toList();
  }

  /** The likeliest speaks, the first of equals; all rules and reasons are kept. */
  private static Hypothesis one(List<Hypothesis> same) {
    Hypothesis best = same.get(0);
    Collection<String> rules = new TreeSet<>();
    for (Hypothesis h : same) {
      best = h.prior() > best.prior() ? h : best;
      rules.addAll(List.of(h.rule().split(", ")));
    }
    String reasons =
        same.stream().map(Hypothesis::reason).distinct().collect(Collectors.joining(" "));
    return new Hypothesis(
        best.id(),
        best.mechanism(),
        best.edits(),
        best.prior(),
        String.join(", ", rules),
        reasons,
        best.words(),
        best.repair());
  }

  private static boolean healthy(Hypothesis h) {
    return h.mechanism() == Mechanism.NOTHING_WRONG;
  }

  private static Hypothesis scaled(Hypothesis h, double factor) {
    return new Hypothesis(
        h.id(),
        h.mechanism(),
        h.edits(),
        h.prior() * factor,
        h.rule(),
        h.reason(),
        h.words(),
        h.repair());
  }
}
