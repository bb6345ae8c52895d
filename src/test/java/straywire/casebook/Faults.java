package straywire.casebook;

/** Faults of the demo module whose ids are long. */
final class Faults {
  static final String NONE = "nothing-wrong";
  static final String FOUR_BYPASSED = "inverter-bypassed U3.1-U3.2 U3.3-U3.4 U3.5-U3.6 U3.9-U3.8";
  static final String REVERSED_IN =
      "order-reversed D7-U1.12 D6-U1.10 D5-U1.6 D4-U1.4 at U1.12 U1.10 U1.6 U1.4";
  static final String REVERSED_OUT =
      "order-reversed U1.11-U3.9 U1.9-U3.5 U1.7-U3.3 U1.5-U3.1 at U3.9 U3.5 U3.3 U3.1";
  static final String REVERSED_BOTH =
      "order-reversed D7-U1.12 D6-U1.10 U1.11-U3.9 U1.9-U3.5 U1.7-U3.3 U1.5-U3.1 D5-U1.6 D4-U1.4"
          + " at U1.12 U1.10 U3.9 U3.5 U3.3 U3.1 U1.6 U1.4";
  static final String ADDRESSES_SWAPPED = "ends-swapped U1.1-U2.1 U2.1 with U1.15-U2.15 U2.15";
  static final String FOUR_OPEN = "jumper-missing U1.11-U3.9 U1.9-U3.5 U1.7-U3.3 U1.5-U3.1";

  private Faults() {}
}
