package straywire.observe;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Map;
import java.util.NavigableMap;
import java.util.TreeMap;
import straywire.module.Module;

/**
 * What has been read so far of bits that nobody wrote: for each lane and bit, the log likelihood of
 * all readings of it if the bit is 1, and if it is 0. Nothing binds: a misread bit stays possible
 * both ways. Bits of one word start out alike more often than chance, and a bit often wakes up the
 * same at the next power-up, always where it is kept without power.
 */
public final class CellBeliefs {
  private static final double LOG_HALF = Math.log(0.5);

  /** Room for the bits of one part in the numbering of {@link #lanes}; no part has as many. */
  private static final int BITS_OF_PART = 1 << 20;

  /** Share of words that come up all zeros or all ones beyond chance. */
  private final double uniform;

  /** How much of what is known of a bit is still true after a power cycle. */
  private final double wakesAlike;

  /** Number at which the bits of each part start. */
  private final Map<String, Integer> firstCell;

  /**
   * For each lane the words read so far, by the number of their first bit: two numbers a bit, log
   * likelihood if 1, if 0. Arrays are never changed. Only words that were read take room: a memory
   * has thousands, and a wrong part in a lane can have more bits than the part meant.
   */
  private final List<NavigableMap<Integer, float[]>> lanes;

  /** Lanes whose map this object owns, so that a copy is made at most once. */
  private final boolean[] owned;

  public CellBeliefs(Module module, int laneCount, RankingNumbers numbers) {
    uniform = numbers.of(RankingNumber.WORDS_ALIKE);
    wakesAlike = numbers.of(RankingNumber.WAKES_ALIKE);
    firstCell = new TreeMap<>();
    for (String label : module.parts().keySet()) {
      firstCell.put(label, firstCell.size() * BITS_OF_PART);
    }
    lanes = new ArrayList<>(Collections.nCopies(laneCount, Collections.emptyNavigableMap()));
    owned = new boolean[laneCount];
  }

  private CellBeliefs(CellBeliefs other) {
    uniform = other.uniform;
    wakesAlike = other.wakesAlike;
    firstCell = other.firstCell;
    lanes = new ArrayList<>(other.lanes);
    owned = new boolean[lanes.size()];
  }

  /** A copy to be changed; this one must not be changed any more. */
  public CellBeliefs next() {
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
  public double read(int lane, String label, int word, double[] ifOne, double[] ifZero) {
    own(lane);
    int at = firstCell.get(label) + word;
    float[] earlier = lanes.get(lane).getOrDefault(at, new float[2 * ifOne.length]);
    float[] beliefs = earlier.clone();
    for (int bit = 0; bit < ifOne.length; bit++) {
      beliefs[2 * bit] += (float) ifOne[bit];
      beliefs[2 * bit + 1] += (float) ifZero[bit];
    }
    lanes.get(lane).put(at, beliefs);
    return joint(beliefs) - joint(earlier);
  }

  /** Log likelihood of all readings of one word: its bits independent, or all alike. */
  private double joint(float[] beliefs) {
    double apart = Math.log(1 - uniform);
    double ones = Math.log(uniform / 2);
    double zeros = ones;
    for (int bit = 0; bit < beliefs.length / 2; bit++) {
      float one = beliefs[2 * bit];
      float zero = beliefs[2 * bit + 1];
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
  public double probabilityOfOne(int lane, String label, int cell) {
    if (!knows(label)) {
      return 0.5;
    }
    int number = firstCell.get(label) + cell;
    Map.Entry<Integer, float[]> word = lanes.get(lane).floorEntry(number);
    if (word == null || word.getValue().length <= 2 * (number - word.getKey())) {
      return 0.5;
    }
    return probabilityOfOne(word.getValue(), number - word.getKey());
  }

  private static double probabilityOfOne(float[] beliefs, int bit) {
    return 1 / (1 + Math.exp((double) beliefs[2 * bit + 1] - beliefs[2 * bit]));
  }

  /** Says whether a bit that was read may be another one by now. */
  public interface Moved {
    boolean bit(int lane, String label, int cell);
  }

  /** Without what was read of bits that may be other ones by now; this one when there are none. */
  public CellBeliefs without(Moved moved) {
    CellBeliefs next = this;
    List<String> labels = List.copyOf(firstCell.keySet());
    for (int lane = 0; lane < lanes.size(); lane++) {
      for (int at : lanes.get(lane).keySet()) {
        String label = labels.get(at / BITS_OF_PART);
        if (moved.bit(lane, label, at % BITS_OF_PART)) {
          next = next == this ? new CellBeliefs(this) : next;
          next.own(lane);
          next.lanes.get(lane).remove(at);
        }
      }
    }
    return next;
  }

  private void own(int lane) {
    if (!owned[lane]) {
      lanes.set(lane, new TreeMap<>(lanes.get(lane)));
      owned[lane] = true;
    }
  }

  /** Says whether a bit holds its value without power. */
  public interface Kept {
    boolean bit(int lane, String label, int cell);
  }

  /**
   * After a power cycle: what was known is true again in part, or for certain where the bit was
   * kept.
   */
  public CellBeliefs afterPowerCycle(Kept kept) {
    CellBeliefs next = new CellBeliefs(this);
    List<String> labels = List.copyOf(firstCell.keySet());
    for (int lane = 0; lane < lanes.size(); lane++) {
      int here = lane;
      NavigableMap<Integer, float[]> words = new TreeMap<>(lanes.get(lane));
      words.replaceAll(
          (at, beliefs) ->
              kept.bit(here, labels.get(at / BITS_OF_PART), at % BITS_OF_PART)
                  ? beliefs
                  : shrunk(beliefs));
      next.lanes.set(lane, words);
      next.owned[lane] = true;
    }
    return next;
  }

  private float[] shrunk(float[] beliefs) {
    float[] shrunk = new float[beliefs.length];
    for (int bit = 0; bit < beliefs.length / 2; bit++) {
      double again = 0.5 + (probabilityOfOne(beliefs, bit) - 0.5) * wakesAlike;
      shrunk[2 * bit] = (float) Math.log(2 * again);
      shrunk[2 * bit + 1] = (float) Math.log(2 * (1 - again));
    }
    return shrunk;
  }

  public boolean knows(String label) {
    return firstCell.containsKey(label);
  }
}
