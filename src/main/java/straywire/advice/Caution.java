package straywire.advice;

import java.util.Comparator;

/**
 * A word on safety.
 *
 * @param urgent true when it takes the place of every other step until it is answered
 * @param entry of the log that called for it; 0 when the ranking did
 * @param look what to look over with the power off: a part, {@code supply}, or empty for what tells
 *     most
 */
public record Caution(String rule, String text, boolean urgent, int entry, String look) {
  /** One that calls for no look. */
  public Caution(String rule, String text, boolean urgent) {
    this(rule, text, urgent, 0, "");
  }

  /** Urgent ones first, then by rule. */
  public static final Comparator<Caution> ORDER =
      Comparator.comparing(Caution::urgent)
          .reversed()
          .thenComparing(Caution::rule)
          .thenComparing(Caution::entry)
          .thenComparing(Caution::text);
}
