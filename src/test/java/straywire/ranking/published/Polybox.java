package straywire.ranking.published;

import java.util.List;
import java.util.Map;
import java.util.OptionalInt;
import java.util.TreeMap;

/**
 * Three multipliers and two adders: x = a c, y = b d, z = c e, f = x + y, g = y + z, with a=3, b=2,
 * c=2, d=3, e=3. Values spread from the inputs and the evidence through healthy components, through
 * an adder in every direction.
 */
final class Polybox {
  private static final List<String> COMPONENTS = List.of("M1", "M2", "M3", "A1", "A2");
  private static final Map<String, Integer> INPUTS = Map.of("a", 3, "b", 2, "c", 2, "d", 3, "e", 3);

  private Polybox() {}

  /** Prior 0.01 of each component, 16 values at each point. */
  static WeakFaults fresh() {
    return new WeakFaults(COMPONENTS, 0.01, 16, Polybox::value);
  }

  private static OptionalInt value(int broken, Map<String, Integer> evidence, String point) {
    Map<String, Integer> known = new TreeMap<>(INPUTS);
    known.putAll(evidence);
    multiply(known, broken, "M1", "a", "c", "x");
    multiply(known, broken, "M2", "b", "d", "y");
    multiply(known, broken, "M3", "c", "e", "z");
    // Twice: what the second adder tells about y may tell the first one more.
    for (int pass = 0; pass < 2; pass++) {
      add(known, broken, "A1", "x", "y", "f");
      add(known, broken, "A2", "y", "z", "g");
    }
    return known.containsKey(point) ? OptionalInt.of(known.get(point)) : OptionalInt.empty();
  }

  private static boolean healthy(int broken, String component) {
    return (broken >> COMPONENTS.indexOf(component) & 1) == 0;
  }

  private static void multiply(
      Map<String, Integer> known, int broken, String part, String p, String q, String product) {
    if (healthy(broken, part)) {
      known.putIfAbsent(product, known.get(p) * known.get(q));
    }
  }

  private static void add(
      Map<String, Integer> known, int broken, String part, String p, String q, String sum) {
    if (!healthy(broken, part)) {
      return;
    }
    if (known.containsKey(p) && known.containsKey(q)) {
      known.putIfAbsent(sum, known.get(p) + known.get(q));
    } else if (known.containsKey(sum) && known.containsKey(p)) {
      known.put(q, known.get(sum) - known.get(p));
    } else if (known.containsKey(sum) && known.containsKey(q)) {
      known.put(p, known.get(sum) - known.get(q));
    }
  }
}
