package straywire.diagnosis;

import java.util.Map;
import java.util.TreeMap;
import straywire.module.Fitted;
import straywire.module.Module;

/**
 * What has been read so far of bits that nobody wrote: for each lane and bit, the log likelihood of
 * all readings of it if the bit is 1, and if it is 0. Nothing binds: a misread bit stays possible
 * both ways. Bits of one word start out alike more often than chance, and a bit often wakes up the
 * same at the next power-up.
 */
final class CellBeliefs {
  /** Share of words that come up all zeros or all ones beyond chance; engineering estimate. */
  static final double UNIFORM = 0.15;

  /** How much of what is known of a bit is still true after a power cycle; engineering estimate. */
  static final double WAKES_ALIKE = 0.6;

  private static final double LOG_HALF = Math.log(0.5);

  private final Map<String, Integer> firstCell;
  private final int cells;

  /**
   * For each lane, two numbers a bit: log likelihood if 1, if 0; no array while nothing is read.
   */
  private final float[][] lanes;

  /** Lanes whose array this object owns, so that a copy is made at most once. */
  private final boolean[] owned;

  CellBeliefs(Module module, int laneCount) {
    firstCell = new TreeMap<>();
    int next = 0;
    for (Fitted fitted : module.parts().values()) {
      firstCell.put(fitted.label(), next);
      next += fitted.part().logic().cellCount();
    }
    cells = next;
    lanes = new float[laneCount][];
    owned = new boolean[laneCount];
  }

  private CellBeliefs(CellBeliefs other) {
    firstCell = other.firstCell;
    cells = other.cells;
    lanes = other.lanes.clone();
    owned = new boolean[lanes.length];
  }

  /** A copy to be changed; this one must not be changed any more. */
  CellBeliefs next() {
    return new CellBeliefs(this);
  }

  /**
   * Takes in one reading of a word.
   *
   * @param label part the bits belong to
   * @param word first bit of the word, and its length in bits
   * @param ifOne for each bit of the word, log likelihood of the reading if the bit is 1; 0 for
   *     bits not read
   * @param ifZero the same if the bit is 0
   * @return log likelihood of the reading given all earlier ones
   */
  double read(int lane, String label, int word, double[] ifOne, double[] ifZero) {
    float[] beliefs = lanes[lane];
    if (beliefs == null) {
      beliefs = new float[2 * cells];
      lanes[lane] = beliefs;
      owned[lane] = true;
    } else if (!owned[lane]) {
      beliefs = beliefs.clone();
      lanes[lane] = beliefs;
      owned[lane] = true;
    }
    int at = 2 * (firstCell.get(label) + word);
    double before = joint(beliefs, at, ifOne.length);
    for (int bit = 0; bit < ifOne.length; bit++) {
      beliefs[at + 2 * bit] += (float) ifOne[bit];
      beliefs[at + 2 * bit + 1] += (float) ifZero[bit];
    }
    return joint(beliefs, at, ifOne.length) - before;
  }

  /** Log likelihood of all readings of one word: its bits independent, or all alike. */
  private static double joint(float[] beliefs, int at, int bits) {
    double apart = Math.log(1 - UNIFORM);
    double ones = Math.log(UNIFORM / 2);
    double zeros = ones;
    for (int bit = 0; bit < bits; bit++) {
      float one = beliefs[at + 2 * bit];
      float zero = beliefs[at + 2 * bit + 1];
      apart += LOG_HALF + logSum(one, zero);
      ones += one;
      zeros += zero;
    }
    return logSum(apart, logSum(ones, zeros));
  }

  static double logSum(double a, double b) {
    double most = Math.max(a, b);
    return most + Math.log1p(Math.exp(Math.min(a, b) - most));
  }

  /** Probability that a bit is 1 given its own readings, 0 to 1. */
  double probabilityOfOne(int lane, String label, int cell) {
    float[] beliefs = lanes[lane];
    Integer first = firstCell.get(label);
    if (beliefs == null || first == null) {
      return 0.5;
    }
    int at = 2 * (first + cell);
    return at + 1 < beliefs.length
        ? 1 / (1 + Math.exp((double) beliefs[at + 1] - beliefs[at]))
        : 0.5;
  }

  /** After a power cycle: what was known is true again with {@link #WAKES_ALIKE}. */
  CellBeliefs afterPowerCycle() {
    CellBeliefs next = new CellBeliefs(this);
    for (int lane = 0; lane < lanes.length; lane++) {
      if (lanes[lane] == null) {
        continue;
      }
      float[] shrunk = new float[2 * cells];
      for (int cell = 0; cell < cells; cell++) {
        double one = 1 / (1 + Math.exp((double) lanes[lane][2 * cell + 1] - lanes[lane][2 * cell]));
        double again = 0.5 + (one - 0.5) * WAKES_ALIKE;
        shrunk[2 * cell] = (float) Math.log(2 * again);
        shrunk[2 * cell + 1] = (float) Math.log(2 * (1 - again));
      }
      next.lanes[lane] = shrunk;
      next.owned[lane] = true;
    }
    return next;
  }

  boolean knows(String label) {
    return firstCell.containsKey(label);
  }
}
