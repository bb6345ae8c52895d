package straywire.electrical;

/**
 * What outputs of a family give and its inputs take, at 5 V.
 *
 * @param low what an ordinary output's low is sure to hold
 * @param busLow the same of a bus driver (240, 244, 245, 373 class)
 * @param lowCurve what an ordinary low usually is over the current it sinks
 * @param highCurve what an ordinary high usually is over the current it sources
 */
public record Currents(
    Rated low,
    Rated high,
    Rated busLow,
    Rated busHigh,
    Curve lowCurve,
    Curve highCurve,
    Input input) {

  /** The worst voltage of a data sheet at the most current it is given for. */
  public record Rated(double volts, double milliamps) {}

  /**
   * One input.
   *
   * @param lowMilliamps the most that flows out of it at a low
   * @param highMilliamps the most that flows into it at a high
   * @param usualLowMilliamps what a sound bipolar part lets out at 0 V; 0 for CMOS
   * @param openSourceVolts the voltage that current comes from; 0 for CMOS
   */
  public record Input(
      double lowMilliamps,
      double highMilliamps,
      double usualLowMilliamps,
      double openSourceVolts) {}
}
