package straywire.sim;

/**
 * Words of 64 lanes: lane i, bit i of every word, is the module as built under variation i. Idle
 * lanes are zero in every result.
 */
public final class Lanes {
  public static final int COUNT = Long.SIZE;

  private Lanes() {}

  /** Groups needed for {@code lanes} lanes. */
  public static int groups(int lanes) {
    return (lanes + COUNT - 1) >>> 6;
  }

  public static int group(int lane) {
    return lane >>> 6;
  }

  public static long bit(int lane) {
    return 1L << lane;
  }

  /** The first {@code count} lanes, 0 to 64. */
  static long first(int count) {
    return count == 0 ? 0 : -1L >>> (COUNT - count);
  }

  public static boolean has(long word, int lane) {
    return (word >>> lane & 1) != 0;
  }
}
