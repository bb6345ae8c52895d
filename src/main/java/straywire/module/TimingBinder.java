package straywire.module;

import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.SortedMap;
import straywire.format.Nearest;
import straywire.format.Quantity;
import straywire.format.YamlValue;

/** Reads what sets the times of timers and oscillators. */
final class TimingBinder {
  private static final String TIMER = "555";
  private static final String OSCILLATOR = "4060";

  private final SortedMap<String, Fitted> parts;

  TimingBinder(SortedMap<String, Fitted> parts) {
    this.parts = parts;
  }

  Timing timing(String label, YamlValue value) {
    Fitted fitted = parts.get(label);
    if (fitted == null) {
      throw value.wrong("no part is labelled " + label + Nearest.hint(label, parts.keySet()));
    }
    return switch (fitted.part().type()) {
      case TIMER -> timer(label, value);
      case OSCILLATOR -> oscillator(label, value);
      default ->
          throw value.wrong(
              label
                  + " is a "
                  + fitted.part().type()
                  + "; times are worked out for a 555 or a 4060");
    };
  }

  private static Timing timer(String label, YamlValue value) {
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

  private static Timing oscillator(String label, YamlValue value) {
    Map<String, YamlValue> fields = value.fields(List.of(), List.of("crystal", "r", "c"));
    if (fields.keySet().equals(Set.of("crystal"))) {
      return new Timing.Crystal(label, Quantity.hertz(fields.get("crystal")));
    }
    if (fields.keySet().equals(Set.of("r", "c"))) {
      return new Timing.RcOscillator(
          label, Quantity.ohms(fields.get("r"), 1), Quantity.nanofarads(fields.get("c")));
    }
    throw value.wrong("write crystal, or r and c");
  }
}
