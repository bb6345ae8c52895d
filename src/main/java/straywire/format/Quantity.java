package straywire.format;

import java.util.Map;
import java.util.OptionalDouble;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * Values of resistors, capacitors and crystals as printed on them: {@code 470}, {@code 10k}, {@code
 * 4k7}, {@code 2.2M}, {@code 100n}, {@code 4u7}. The letter may stand for the decimal point.
 */
public final class Quantity {
  private static final Pattern VALUE = Pattern.compile("(\\d{1,9})(?:\\.(\\d+))?([a-zA-Z]?)(\\d*)");

  private static final Map<String, Double> OHMS = Map.of("", 1.0, "R", 1.0, "k", 1e3, "M", 1e6);
  private static final Map<String, Double> NANOFARADS =
      Map.of("p", 1e-3, "n", 1.0, "u", 1e3, "m", 1e6);

  private static final Map<String, Double> HERTZ = Map.of("", 1.0, "k", 1e3, "M", 1e6);

  private Quantity() {}

  /** Ohms; empty for what is no such value. */
  public static OptionalDouble ohms(String text) {
    return value(text, OHMS);
  }

  /** Nanofarads; empty for what is no such value, or has no unit. */
  public static OptionalDouble nanofarads(String text) {
    return value(text, NANOFARADS);
  }

  /** Whole ohms, from {@code least} to 10 million. */
  public static int ohms(YamlValue value, int least) {
    double ohms = ohms(value.word()).orElse(-1);
    if (ohms < least || ohms > 10_000_000 || ohms != Math.rint(ohms)) {
      throw value.wrong(
          "expected ohms such as 470, 4k7 or 1M, from " + least + " to 10M, got " + value.word());
    }
    return (int) ohms;
  }

  /** Nanofarads, above 0; the unit must be there. */
  public static double nanofarads(YamlValue value) {
    return positive(value, NANOFARADS, "farads such as 100n, 4u7 or 10u");
  }

  /** Hertz, above 0. */
  public static double hertz(YamlValue value) {
    return positive(value, HERTZ, "hertz such as 32768, 32.768k or 4M");
  }

  private static double positive(YamlValue value, Map<String, Double> units, String expected) {
    double number = value(value.word(), units).orElse(-1);
    if (number <= 0) {
      throw value.wrong("expected " + expected + ", got " + value.word());
    }
    return number;
  }

  private static OptionalDouble value(String text, Map<String, Double> units) {
    Matcher value = VALUE.matcher(text);
    if (!value.matches() || !units.containsKey(value.group(3))) {
      return OptionalDouble.empty();
    }
    boolean point = value.group(2) != null;
    boolean letterForPoint = !value.group(4).isEmpty();
    if (letterForPoint && (point || value.group(3).isEmpty())) {
      return OptionalDouble.empty();
    }
    String behind = letterForPoint ? value.group(4) : point ? value.group(2) : "0";
    double number = Double.parseDouble(value.group(1) + "." + behind);
    return OptionalDouble.of(number * units.get(value.group(3)));
  }
}
