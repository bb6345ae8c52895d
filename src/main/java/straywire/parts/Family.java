package straywire.parts;

/**
 * The electrical habits of a logic family at 5 V.
 *
 * <p>Drive strengths are ranks, compared only with each other: of two outputs that fight, the
 * higher rank decides; equal ranks leave the level unknown. A low of a TTL family outranks a high
 * of its own kind, since the low side sinks far more than the high side sources.
 *
 * @param lowRank rank of an ordinary output's low, 1 to 6
 * @param highRank rank of an ordinary output's high
 * @param busLowRank rank of a bus driver's low
 * @param busHighRank rank of a bus driver's high
 * @param openReadsHigh true when an input that nothing drives reads high (TTL); false: unknown
 * @param feedsThroughInputs true when an unpowered part lives on current from a high input (CMOS)
 * @param inputLowMax highest voltage sure to read low, volts
 * @param inputHighMin lowest voltage sure to read high, volts
 */
public record Family(
    String name,
    int lowRank,
    int highRank,
    int busLowRank,
    int busHighRank,
    boolean openReadsHigh,
    boolean feedsThroughInputs,
    double inputLowMax,
    double inputHighMin,
    Band low,
    Band high,
    Band open) {

  /** A range of voltages, volts, with the usual reading inside it. */
  public record Band(double least, double usual, double most) {
    public boolean holds(double volts) {
      return volts >= least && volts <= most;
    }
  }
}
