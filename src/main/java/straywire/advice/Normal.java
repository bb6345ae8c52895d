package straywire.advice;

/**
 * Something that looks wrong and is how the parts are meant to work.
 *
 * @param entry number of the log entry it explains
 */
public record Normal(String rule, int entry, String text) {}
