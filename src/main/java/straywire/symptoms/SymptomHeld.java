package straywire.symptoms;

/**
 * How far a symptom is there.
 *
 * @param degree 1 when it is, 0 when not, 0.5 when a person may say either
 * @param bits lamps of which it is true when one is asked about
 */
record SymptomHeld(double degree, long bits) {
  static final double EITHER = 0.5;

  static SymptomHeld of(boolean there) {
    return new SymptomHeld(there ? 1 : 0, 0);
  }

  /** True of one lamp; several, but not all, are a matter of wording. */
  static SymptomHeld one(long bits, long all) {
    if (bits == 0 || bits == all) {
      return new SymptomHeld(0, bits);
    }
    return new SymptomHeld(Long.bitCount(bits) == 1 ? 1 : EITHER, bits);
  }

  /** True of one half; both are a matter of wording. */
  static SymptomHeld half(int halves) {
    return new SymptomHeld(halves == 1 ? 1 : halves == 2 ? EITHER : 0, 0);
  }
}
