package straywire.review;

import java.util.Comparator;
import java.util.regex.Pattern;

/**
 * Something that can be seen wrong on paper.
 *
 * @param rule id of the rule that tells it
 * @param place a pin, net, control, lamp, rail, part, or a list of parts such as {@code U1 and U2}
 * @param reason what is so
 * @param consequence what comes of it at the bench
 * @param cure what to do
 */
public record Finding(
    String rule, Severity severity, String place, String reason, String consequence, String cure) {
  private static final Pattern NUMBER = Pattern.compile("\\d+");

  /** The worst first, then by rule and place, U2 before U10. */
  static final Comparator<Finding> ORDER =
      Comparator.comparing(Finding::severity)
          .thenComparing(Finding::rule)
          .thenComparing(f -> padded(f.place()))
          .thenComparing(Finding::reason);

  private static String padded(String place) {
    return NUMBER
        .matcher(place)
        .replaceAll(m -> "0".repeat(Math.max(0, 8 - m.group().length())) + m.group());
  }
}
