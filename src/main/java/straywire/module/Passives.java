package straywire.module;

import java.util.Collections;
import java.util.List;
import java.util.SortedMap;
import java.util.TreeMap;

/**
 * Parts without logic that stand beside controls and lamps.
 *
 * @param resistors to a rail, by label
 * @param timings in the order of the file
 */
public record Passives(SortedMap<String, Resistor> resistors, List<Timing> timings) {
  public static final Passives NONE = new Passives(new TreeMap<>(), List.of());

  public Passives {
    resistors = Collections.unmodifiableSortedMap(new TreeMap<>(resistors));
    timings = List.copyOf(timings);
  }
}
