package straywire.electrical;

/** The oscillator and divider of a 4060. */
public final class Oscillator4060 {
  /** Rt and Ct for which the formula holds (Philips 74HC/HCT4060, December 1990). */
  private static final double LEAST_OHMS = 10e3;

  private static final double MOST_OHMS = 1e6;
  private static final double LEAST_NANOFARADS = 0.05;

  private Oscillator4060() {}

  /** Hertz of a crystal of usual make. */
  public static Range crystal(double hertz) {
    return Range.around(hertz, Tolerance.of("crystal"));
  }

  /**
   * Hertz with a resistor and a capacitor: {@code 1 / (2.5 Rt Ct)} for HC and HCT (Philips
   * 74HC/HCT4060 data sheet, December 1990, "typical formula"), {@code 1 / (2.3 Rt Ct)} for 4000B
   * (HEF4060B data sheet, as quoted by others; not read in the original). The range allows for
   * resistor and capacitor; no maker states that of the chip.
   *
   * @param family 4000B, or any other for HC
   */
  public static Range resistorAndCapacitor(String family, double ohms, double nanofarads) {
    String row = family.equals("4000B") ? family : "HC";
    double factor = ElectricalTable.shipped().number("oscillator-4060", row);
    double percent = Tolerance.resistor() + Tolerance.capacitor(nanofarads);
    return Range.around(factor * ohms * nanofarads * 1e-9, percent).under(1);
  }

  /** Whether the formula is good for these values; beyond them it is only a guide. */
  public static boolean formulaHolds(double ohms, double nanofarads) {
    return ohms > LEAST_OHMS && ohms < MOST_OHMS && nanofarads > LEAST_NANOFARADS;
  }
}
