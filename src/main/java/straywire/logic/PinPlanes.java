package straywire.logic;

/**
 * The pins of one part in 64 lanes at once: lane i, bit i of every word, is the part as built under
 * hypothesis i.
 *
 * <p>A level is a pair of planes: {@code can1} has the lanes in which the pin may be high, {@code
 * can0} those in which it may be low; both bits set means unknown. What a part drives has a third
 * plane, {@code off}, for lanes in which it may have let go of the pin. Arrays are indexed by pin
 * number, from 1; index 0 is unused.
 */
public final class PinPlanes {
  /** What the part sees at its pins now (never empty: each lane is in at least one plane). */
  public final long[] can1;

  public final long[] can0;

  /** Lanes in which nothing may drive the pin: what is unknown there may change of itself. */
  public final long[] open;

  /** What the part saw one unit of delay earlier: data that a clock edge samples. */
  public final long[] was1;

  public final long[] was0;

  /** What the part drives. Pins that never drive stay {@code off} in all lanes. */
  public final long[] drive1;

  public final long[] drive0;
  public final long[] off;

  public PinPlanes(int pinCount) {
    can1 = new long[pinCount + 1];
    can0 = new long[pinCount + 1];
    open = new long[pinCount + 1];
    was1 = new long[pinCount + 1];
    was0 = new long[pinCount + 1];
    drive1 = new long[pinCount + 1];
    drive0 = new long[pinCount + 1];
    off = new long[pinCount + 1];
    java.util.Arrays.fill(off, -1L);
  }
}
