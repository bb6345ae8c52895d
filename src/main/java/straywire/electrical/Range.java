package straywire.electrical;

/** A value with what a real part may make of it; all three in the unit of the value. */
public record Range(double least, double usual, double most) {
  public Range {
    if (least > usual || usual > most) {
      throw new IllegalArgumentException(
          "least, usual and most must rise: " + least + ", " + usual + ", " + most);
    }
  }

  /** {@code usual} give or take {@code percent}, 0 to 100. */
  static Range around(double usual, double percent) {
    return new Range(usual * (1 - percent / 100), usual, usual * (1 + percent / 100));
  }

  /** {@code dividend} over each value of this range, all above 0. */
  Range under(double dividend) {
    return new Range(dividend / most, dividend / usual, dividend / least);
  }
}
