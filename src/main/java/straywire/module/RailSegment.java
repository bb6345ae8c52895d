package straywire.module;

/**
 * A stretch of supply or ground rail.
 *
 * @param label such as {@code VCC} or {@code GND.right}
 * @param supply true for +5 V, false for ground
 * @param linkedTo the segment it is fed from by a link; empty for the segment where power enters
 */
public record RailSegment(String label, boolean supply, String linkedTo) {}
