package straywire.symptoms;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.SplittableRandom;
import straywire.module.LampState;
import straywire.observe.RankingNumber;
import straywire.observe.ReadingTable;
import straywire.sim.Signal;

/**
 * Seeded draws of what the simulation leaves open. In one draw a bit that nobody wrote has one
 * value until the power goes, words come up uniform more often than chance, and a word often wakes
 * up the same, always where it is kept without power; lamps whose signal an eye may call one thing
 * or another look one way throughout. Equal for every hypothesis.
 */
final class SymptomDraws {
  /** Draws a symptom is scored over. */
  static final int COUNT = 16;

  /** How often what is unknown for no known reason sits still; engineering estimate. */
  private static final double SITS_STILL = 0.5;

  private static final List<LampState> LOOKS =
      List.of(LampState.DARK, LampState.LIT, LampState.DIM, LampState.FLICKERING);

  private final ReadingTable table;
  private final long seed;
  private final Map<Bit, Integer> numbers = new HashMap<>();
  private final List<Bit> bits = new ArrayList<>();

  /** Value of each numbered bit: bit d of the word for one power-up is draw d. */
  private final List<Map<Integer, Long>> values = new ArrayList<>();

  /** A remembered bit, by part and the word of its memory it belongs to. */
  private record Bit(String part, int word, int length, int cell, boolean kept) {}

  SymptomDraws(ReadingTable table, long seed) {
    this.table = table;
    this.seed = seed;
  }

  /** The number under which {@link #value} knows a remembered bit. */
  int number(String part, int word, int length, int cell, boolean kept) {
    return numbers.computeIfAbsent(
        new Bit(part, word, length, cell, kept),
        bit -> {
          bits.add(bit);
          return bits.size() - 1;
        });
  }

  /** Value of a remembered bit that nobody wrote, after power-up number {@code powerUp}. */
  boolean value(int number, int powerUp, int draw) {
    while (values.size() <= powerUp) {
      values.add(new HashMap<>());
    }
    long all = values.get(powerUp).computeIfAbsent(number, n -> valuesOf(bits.get(n), powerUp));
    return (all >>> draw & 1) != 0;
  }

  private long valuesOf(Bit bit, int powerUp) {
    long all = 0;
    for (int draw = 0; draw < COUNT; draw++) {
      all |= (wakes(bit, powerUp, draw) ? 1L : 0L) << draw;
    }
    return all;
  }

  private boolean wakes(Bit bit, int powerUp, int draw) {
    int up = bit.kept() ? 1 : powerUp;
    SplittableRandom random = random(draw, bit.part().hashCode(), bit.word(), up);
    while (up > 1 && random.nextDouble() < table.numbers().of(RankingNumber.WAKES_ALIKE)) {
      up--;
      random = random(draw, bit.part().hashCode(), bit.word(), up);
    }
    boolean uniform = random.nextDouble() < table.numbers().of(RankingNumber.WORDS_ALIKE);
    boolean first = random.nextBoolean();
    return uniform
        ? first
        : random(draw, bit.part().hashCode(), bit.word(), up, bit.cell()).nextBoolean();
  }

  /** What an eye calls lamps whose signal may look one way or another. */
  LampState shown(Signal signal, int draw) {
    double chance = random(draw, signal.ordinal()).nextDouble();
    for (LampState state : LOOKS) {
      chance -= table.lamp(signal, state);
      if (chance < 0) {
        return state;
      }
    }
    return LampState.DARK;
  }

  /** Whether lamps that are unknown for no known reason show one thing throughout. */
  boolean sitsStill(int draw) {
    return random(draw, -1).nextDouble() < SITS_STILL;
  }

  /** A lamp that is not one remembered bit, the same as long as {@code moment} is. */
  boolean anything(int lamp, long moment, int draw) {
    return random(draw, lamp, moment, -2).nextBoolean();
  }

  /** A stream for one question; mixing as in SplittableRandom's own, multiplier of Knuth's MMIX. */
  private SplittableRandom random(long... question) {
    long mixed = seed;
    for (long part : question) {
      mixed = (mixed ^ part) * 6364136223846793005L + 1442695040888963407L;
      mixed ^= mixed >>> 29;
    }
    return new SplittableRandom(mixed);
  }
}
