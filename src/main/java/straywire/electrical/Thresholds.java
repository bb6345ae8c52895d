package straywire.electrical;

/**
 * The two voltages of a Schmitt input.
 *
 * @param up where it takes a rising voltage for high, volts
 * @param down where it takes a falling voltage for low, volts
 */
public record Thresholds(Range up, Range down) {}
