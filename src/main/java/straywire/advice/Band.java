package straywire.advice;

/**
 * What a meter reading looks like on a 5 V board, black lead on the ground rail. Edges in volts
 * from the makers' limits (Fairchild DM74LS00: low 0.4 to 0.5 at most, high 2.7 at least, supply
 * 4.75 to 5.25) and published measurements of open LS inputs (1.1 to 1.7, HP Bench Briefs 1Q1996).
 */
public enum Band {
  /** Below -0.1: the leads, or the supply, are the wrong way round. */
  REVERSED(-0.1),
  /** A driven low. */
  LOW(0.5),
  /** Too high for a good low: a fight that the low side wins, or a part without ground. */
  RAISED_LOW(1.1),
  /** Where an open TTL input settles. */
  OPEN(1.7),
  /** Two outputs that fight, a bare LED, or the average of a running clock. */
  BETWEEN(2.4),
  /** A high below what the makers promise, or one under load. */
  WEAK_HIGH(2.7),
  /** A TTL high: 3.4 loaded, up to 4.3 unloaded. */
  HIGH(4.5),
  /** Pulled up, tied, or driven by CMOS. */
  NEAR_SUPPLY(5.25),
  /** More than TTL parts are rated for. */
  OVER(Double.POSITIVE_INFINITY);

  private final double upTo;

  Band(double upTo) {
    this.upTo = upTo;
  }

  /** The band that {@code volts} lies in; an edge belongs to the lower band. */
  public static Band of(double volts) {
    for (Band band : values()) {
      if (volts <= band.upTo) {
        return band;
      }
    }
    throw new IllegalArgumentException("A reading is a number of volts, got " + volts);
  }
}
