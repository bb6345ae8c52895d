package straywire.advice;

/**
 * A word on safety.
 *
 * @param urgent true when it comes before everything else
 */
public record Caution(String rule, String text, boolean urgent) {}
