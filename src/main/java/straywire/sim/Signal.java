package straywire.sim;

/** What is electrically the matter at a point once the module has settled. */
public enum Signal {
  /** Wired straight to ground: a rail, or a closed switch. */
  RAIL_LOW,
  RAIL_HIGH,
  /** Held low by a bipolar output, some 0.2 V. */
  LOW,
  /** Held low by a CMOS output, near ground. */
  LOW_CMOS,
  /** Held high by a bipolar output, some 3.4 V. */
  HIGH,
  /** Held high by a CMOS output, near the supply. */
  HIGH_CMOS,
  /** Low by an output of a part that finds its ground through an input. */
  RAISED_LOW,
  /** High by an output that a bare LED holds down. */
  CLAMPED_HIGH,
  /** Two outputs fight and the low side wins. */
  FIGHT_LOW,
  /** Two outputs fight, level in between. */
  FIGHT,
  PULLED_LOW,
  PULLED_HIGH,
  /** Nothing drives, an input of a bipolar part leans it up to about 1.4 V. */
  OPEN_INPUT,
  /** Nothing at all is there. */
  NOTHING,
  /** The supply or ground leg of a part that misses it: somewhere between the rails. */
  STARVED,
  /** Driven, but which way is not known. */
  UNKNOWN,
  /** Does not come to rest. */
  UNSTABLE;

  static final int COUNT = values().length;

  /** Lanes by signal as they look to a lamp between the point and the supply rail. */
  static long[] upsideDown(long[] lanes) {
    long[] turned = new long[COUNT];
    for (Signal signal : values()) {
      turned[signal.opposite().ordinal()] |= lanes[signal.ordinal()];
    }
    return turned;
  }

  private Signal opposite() {
    return switch (this) {
      case RAIL_LOW -> RAIL_HIGH;
      case RAIL_HIGH -> RAIL_LOW;
      case LOW, RAISED_LOW, FIGHT_LOW -> HIGH;
      case LOW_CMOS -> HIGH_CMOS;
      case HIGH, CLAMPED_HIGH -> LOW;
      case HIGH_CMOS -> LOW_CMOS;
      case PULLED_LOW -> PULLED_HIGH;
      case PULLED_HIGH -> PULLED_LOW;
      case FIGHT, OPEN_INPUT, NOTHING, STARVED, UNKNOWN, UNSTABLE -> this;
    };
  }
}
