package straywire.electrical;

/** What to allow for, percent. */
final class Tolerance {
  private Tolerance() {}

  static double resistor() {
    return of("resistor");
  }

  /** Film below 1 uF, electrolytic from there up. */
  static double capacitor(double nanofarads) {
    return of(nanofarads >= of("electrolytic-from-nf") ? "electrolytic" : "film");
  }

  static double of(String what) {
    return ElectricalTable.shipped().number("tolerance", what);
  }
}
