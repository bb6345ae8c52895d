package straywire.advice;

/** How to go about it. */
public record Hint(String rule, String text) {}
