package straywire.electrical;

/**
 * Times of a 555. The capacitor swings between a third and two thirds of the supply, so that the
 * supply falls out. Ranges allow for the chip (2.25 % as an astable, 3 % as a one-shot, Fairchild
 * LM555), 5 % of the resistors, and 10 % of a film or 20 % of an electrolytic capacitor.
 */
public final class Timer555 {
  private static final double LN2 = Math.log(2);
  private static final double ONE_SHOT = 1.1;

  private Timer555() {}

  /**
   * An astable.
   *
   * @param highMillis {@code ln 2 (R1 + R2) C}
   * @param lowMillis {@code ln 2 R2 C}
   * @param hertz {@code 1 / (ln 2 (R1 + 2 R2) C)}, often given as 1.44 / ...
   * @param dutyHigh {@code (R1 + R2) / (R1 + 2 R2)}, 0.5 to 1
   */
  public record Astable(Range highMillis, Range lowMillis, Range hertz, double dutyHigh) {}

  /**
   * The usual astable: R1 from the supply to DISCH, R2 from DISCH to the capacitor.
   *
   * @param nanofarads capacitor from TRIG and THRES to ground
   */
  public static Astable astable(double r1Ohms, double r2Ohms, double nanofarads) {
    double high = LN2 * (r1Ohms + r2Ohms) * nanofarads * 1e-6;
    double low = LN2 * r2Ohms * nanofarads * 1e-6;
    double percent =
        Tolerance.of("astable") + Tolerance.resistor() + Tolerance.capacitor(nanofarads);
    Range period = Range.around(high + low, percent);
    return new Astable(
        Range.around(high, percent),
        Range.around(low, percent),
        period.under(1000),
        (r1Ohms + r2Ohms) / (r1Ohms + 2 * r2Ohms));
  }

  /** Pulse width of a one-shot, milliseconds: {@code 1.1 R C}. */
  public static Range oneShotMillis(double ohms, double nanofarads) {
    double percent =
        Tolerance.of("one-shot") + Tolerance.resistor() + Tolerance.capacitor(nanofarads);
    return Range.around(ONE_SHOT * ohms * nanofarads * 1e-6, percent);
  }
}
