package straywire.module;

import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.SortedMap;

/** Reads what sets the times of timers. */
final class TimingBinder {
  private static final String TIMER = "555";

  private final SortedMap<String, Fitted> parts;

  TimingBinder(SortedMap<String, Fitted> parts) {
    this.parts = parts;
  }

  Timing timing(String label, YamlValue value) {
    Fitted fitted = parts.get(label);
    if (fitted == null) {
      throw value.wrong("no part is labelled " + label + Nearest.hint(label, parts.keySet()));
    }
    if (!fitted.part().type().equals(TIMER)) {
      throw value.wrong(
          label + " is a " + fitted.part().type() + "; times are worked out for a 555 only");
    }
    Map<String, YamlValue> fields = value.fields(List.of("c"), List.of("r1", "r2", "r"));
    double capacitor = Quantity.nanofarads(fields.get("c"));
    if (fields.keySet().equals(Set.of("r1", "r2", "c"))) {
      return new Timing.Astable(
          label, Quantity.ohms(fields.get("r1"), 1), Quantity.ohms(fields.get("r2"), 1), capacitor);
    }
    if (fields.keySet().equals(Set.of("r", "c"))) {
      return new Timing.OneShot(label, Quantity.ohms(fields.get("r"), 1), capacitor);
    }
    throw value.wrong("write r1, r2 and c for one that runs by itself, r and c for single pulses");
  }
}
