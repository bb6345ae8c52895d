package straywire.module;

/** What sets the times of a timer, beside its wiring: for working them out on paper. */
public sealed interface Timing {
  /** Label of the timer. */
  String part();

  /**
   * A 555 that runs by itself: R1 from the supply to DISCH, R2 from there to the capacitor.
   *
   * @param r1Ohms from 1
   * @param r2Ohms from 1
   * @param nanofarads above 0
   */
  record Astable(String part, double r1Ohms, double r2Ohms, double nanofarads) implements Timing {}

  /**
   * A 555 that gives one pulse each time it is triggered.
   *
   * @param ohms from 1
   * @param nanofarads above 0
   */
  record OneShot(String part, double ohms, double nanofarads) implements Timing {}

  /**
   * A 4060 whose oscillator is held by a crystal.
   *
   * @param hertz of the crystal, above 0
   */
  record Crystal(String part, double hertz) implements Timing {}

  /**
   * A 4060 whose oscillator is set by a resistor and a capacitor.
   *
   * @param ohms the resistor Rt from 1, at RTC
   * @param nanofarads the capacitor Ct, above 0, at CTC
   */
  record RcOscillator(String part, double ohms, double nanofarads) implements Timing {}
}
