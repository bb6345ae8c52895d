package straywire.advice;

/**
 * Something may be dying: only looks with the power off are asked for, until it is on again.
 *
 * @param entry that told of it
 */
public record PowerOffFirst(String rule, int entry) {}
