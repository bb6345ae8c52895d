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
    double capacitor = nanofarads(fields.get("c"));
    if (fields.keySet().equals(Set.of("r1", "r2", "c"))) {
      return new Timing.Astable(
          label, ohms(fields.get("r1"), 1), ohms(fields.get("r2"), 1), capacitor);
    }
    if (fields.keySet().equals(Set.of("r", "c"))) {
      return new Timing.OneShot(label, ohms(fields.get("r"), 1), capacitor);
    }
    throw value.wrong("write r1, r2 and c for one that runs by itself, r and c for single pulses");
  }

  /** Whole ohms up to 10 million. */
  static int ohms(YamlValue value, int least) {
    double ohms = Quantity.ohms(value.word()).orElse(-1);
    if (ohms < least || ohms > 10_000_000 || ohms != Math.rint(ohms)) {
      throw value.wrong(
          "expected ohms such as 470, 4k7 or 1M, from " + least + " to 10M, got " + value.word());
    }
    return (int) ohms;
  }

  private static double nanofarads(YamlValue value) {
    double nanofarads = Quantity.nanofarads(value.word()).orElse(-1);
    if (nanofarads <= 0) {
      throw value.wrong("expected farads such as 100n, 4u7 or 10u, got " + value.word());
    }
    return nanofarads;
  }
}
