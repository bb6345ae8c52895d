package straywire.advice;

import java.util.Comparator;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.TreeSet;
import straywire.faults.Mechanism;
import straywire.faults.Suggestion;
import straywire.module.Jumper;
import straywire.module.Module;

/**
 * Suggestions of one module, each wiring once: when several rules suggest the same, the highest
 * weight stands, of equals the first rule id.
 */
final class Proposals {
  static final Comparator<Suggestion> ORDER =
      Comparator.comparing(Suggestion::rule)
          .thenComparing(Suggestion::mechanism)
          .thenComparing(s -> String.join(" ", s.places()))
          .thenComparing(Suggestion::reason);

  private final Map<String, Jumper> jumpers = new HashMap<>();

  Proposals(Module module) {
    module.jumpers().forEach(j -> jumpers.put(j.name(), j));
  }

  List<Suggestion> once(List<Suggestion> suggestions) {
    Map<String, Suggestion> kept = new LinkedHashMap<>();
    suggestions.stream()
        .sorted(Comparator.comparing(Suggestion::weight).reversed().thenComparing(ORDER))
        .forEach(s -> kept.putIfAbsent(s.mechanism() + " " + wiring(s), s));
    return kept.values().stream().sorted(ORDER).toList();
  }

  /** Equal texts for suggestions of a mechanism that make the same wiring. */
  private String wiring(Suggestion s) {
    List<String> places = s.places();
    if (s.mechanism() == Mechanism.BRIDGED) {
      return new TreeSet<>(places).toString();
    }
    if (s.mechanism() != Mechanism.ENDS_SWAPPED && s.mechanism() != Mechanism.ORDER_REVERSED) {
      return places.toString();
    }
    // Exchanging at one end of two jumpers joins the same pairs as exchanging at the other.
    TreeSet<String> joined = new TreeSet<>();
    for (int i = 0; i < places.size(); i += 2) {
      String now = places.get(places.size() - 1 - i);
      String far = across(places.get(i), places.get(i + 1));
      joined.add(now.compareTo(far) < 0 ? now + " " + far : far + " " + now);
    }
    return joined.toString();
  }

  private String across(String jumper, String end) {
    Jumper j = jumpers.get(jumper);
    return (j.from().toString().equals(end) ? j.to() : j.from()).toString();
  }
}
