package straywire.pages;

import java.util.LinkedHashSet;
import java.util.List;
import java.util.Locale;
import java.util.Set;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * What a person calls a part, turned into the part types it may mean: {@code 74189}, {@code
 * SN74LS189N}, {@code LS189} and {@code 189} all may mean {@code 74x189}.
 */
final class PartNumber {
  private static final String FAMILY = "(?:ALS|AS|LS|AHCT|AHC|HCT|HC|ACT|AC|FCT|F|S|L|H|C|X|LV)";

  /** Maker's letters, 74 or 54, family letters, number, letters for package and grade. */
  private static final Pattern SERIES =
      Pattern.compile("[A-Z]{0,3}(?:74|54)" + FAMILY + "?-?(\\d{2,5})[A-Z]*");

  private static final Pattern FAMILY_AND_NUMBER = Pattern.compile(FAMILY + "(\\d{2,5})[A-Z]*");

  /** Maker's letters, a number that may have a letter inside (28C64), letters of the package. */
  private static final Pattern OTHER = Pattern.compile("[A-Z]{0,4}(\\d+(?:C\\d+)?)[A-Z]*");

  private PartNumber() {}

  /** Part types that may be meant, the likeliest first; whether they exist is not looked at. */
  static List<String> types(String asked) {
    String name = asked.strip().toUpperCase(Locale.ROOT);
    Set<String> types = new LinkedHashSet<>();
    Matcher series = SERIES.matcher(name);
    if (series.matches()) {
      types.add("74x" + series.group(1));
      // A 74HC4017 is a 4017 of the HC family.
      types.add(series.group(1));
    }
    Matcher other = OTHER.matcher(name);
    if (other.matches()) {
      types.add(other.group(1));
    }
    Matcher short74 = FAMILY_AND_NUMBER.matcher(name);
    if (short74.matches()) {
      types.add("74x" + short74.group(1));
    }
    if (name.matches("\\d{2,4}")) {
      types.add("74x" + name);
    }
    return List.copyOf(types);
  }
}
