package straywire.electrical;

/** A capacitor charged or emptied through a resistor, at 5 V. */
public final class Rc {
  private Rc() {}

  /**
   * Milliseconds from empty to {@code volts}, 0 up to 5: {@code R C ln(V / (V - v))}.
   *
   * @param nanofarads the capacitor
   */
  public static double millisToRise(double ohms, double nanofarads, double volts) {
    return millis(ohms, nanofarads, Branch.SUPPLY_VOLTS / (Branch.SUPPLY_VOLTS - volts));
  }

  /** Milliseconds from full to {@code volts}, above 0 to 5: {@code R C ln(V / v)}. */
  public static double millisToFall(double ohms, double nanofarads, double volts) {
    return millis(ohms, nanofarads, Branch.SUPPLY_VOLTS / volts);
  }

  private static double millis(double ohms, double nanofarads, double ratio) {
    return ohms * nanofarads * 1e-6 * Math.log(ratio);
  }

  /**
   * Milliseconds that a Schmitt input sees a low after power-on, or after a contact to ground has
   * opened, while the capacitor charges through its pull-up. Least and most: its thresholds, 5 % of
   * the resistor, and the tolerance of the capacitor.
   */
  public static Range lowMillis(double ohms, double nanofarads, Thresholds input) {
    double percent = Tolerance.resistor() + Tolerance.capacitor(nanofarads);
    return new Range(
        millisToRise(ohms, nanofarads, input.up().least()) * (1 - percent / 100),
        millisToRise(ohms, nanofarads, input.up().usual()),
        millisToRise(ohms, nanofarads, input.up().most()) * (1 + percent / 100));
  }

  /** The same for a contact to the supply against a pull-down: milliseconds of high left. */
  public static Range highMillis(double ohms, double nanofarads, Thresholds input) {
    double percent = Tolerance.resistor() + Tolerance.capacitor(nanofarads);
    return new Range(
        millisToFall(ohms, nanofarads, input.down().most()) * (1 - percent / 100),
        millisToFall(ohms, nanofarads, input.down().usual()),
        millisToFall(ohms, nanofarads, input.down().least()) * (1 + percent / 100));
  }
}
