package straywire.module;

import java.util.Collections;
import java.util.List;
import java.util.SortedMap;
import java.util.TreeMap;
import java.util.stream.Stream;

/**
 * Parts without logic that stand beside controls and lamps.
 *
 * @param resistors to a rail, by label
 * @param series resistors between two lines, by label
 * @param timings in the order of the file
 */
public record Passives(
    SortedMap<String, Resistor> resistors,
    SortedMap<String, SeriesResistor> series,
    List<Timing> timings) {
  public static final Passives NONE = new Passives(new TreeMap<>(), new TreeMap<>(), List.of());

  public Passives {
    resistors = Collections.unmodifiableSortedMap(new TreeMap<>(resistors));
    series = Collections.unmodifiableSortedMap(new TreeMap<>(series));
    timings = List.copyOf(timings);
  }

  /** Every place at which a resistor takes a wire. */
  public List<End> ends() {
    return Stream.concat(
            resistors.values().stream().map(Resistor::end),
            series.values().stream().flatMap(s -> s.ends().stream()))
        .toList();
  }
}
