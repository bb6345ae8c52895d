package straywire.advice;

import java.util.Comparator;

/**
 * A word on safety.
 *
 * @param urgent true when it comes before everything else
 */
public record Caution(String rule, String text, boolean urgent) {
  /** Urgent ones first, then by rule. */
  public static final Comparator<Caution> ORDER =
      Comparator.comparing(Caution::urgent)
          .reversed()
          .thenComparing(Caution::rule)
          .thenComparing(Caution::text);
}
