package straywire.pages;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.SortedMap;
import java.util.TreeMap;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import straywire.parts.Part;
import straywire.parts.PartGroup;
import straywire.parts.PartLibrary;

/** Part types as a person orders them: the 74 series first, then by number. */
final class PartOrder {
  private static final Pattern SERIES = Pattern.compile("74x(\\d+)(.*)");
  private static final Pattern NUMBER = Pattern.compile("(\\d{1,9})(.*)");

  static final Comparator<String> BY_NUMBER =
      Comparator.comparingInt(PartOrder::series)
          .thenComparingInt(PartOrder::number)
          .thenComparing(Comparator.naturalOrder());

  private PartOrder() {}

  /** Parts by their group, in the order of the groups; groups without parts are left out. */
  static SortedMap<PartGroup, List<Part>> grouped(PartLibrary library, List<Part> parts) {
    SortedMap<PartGroup, List<Part>> grouped = new TreeMap<>();
    for (Part part : parts) {
      PartGroup group = library.notes(part.type()).orElseThrow().group();
      grouped.computeIfAbsent(group, g -> new ArrayList<>()).add(part);
    }
    return grouped;
  }

  private static int series(String type) {
    if (SERIES.matcher(type).matches()) {
      return 0;
    }
    return NUMBER.matcher(type).matches() ? 1 : 2;
  }

  /** The number in a type's name; 0 where there is none. */
  static int number(String type) {
    for (Pattern pattern : new Pattern[] {SERIES, NUMBER}) {
      Matcher matcher = pattern.matcher(type);
      if (matcher.matches() && matcher.group(1).length() <= 9) {
        return Integer.parseInt(matcher.group(1));
      }
    }
    return 0;
  }
}
