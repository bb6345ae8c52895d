package straywire.observe;

import java.util.Locale;

/** A row of {@code tables/ranking.yaml}, where its meaning and status stand. */
public enum RankingNumber {
  LOOK_FINDS(Unit.PROBABILITY),
  LOOK_IMAGINES(Unit.PROBABILITY),
  BEEP_IS_RIGHT(Unit.PROBABILITY),
  CURE_WORKS(Unit.PROBABILITY),
  CURED_BY_CHANCE(Unit.PROBABILITY),
  NEVER_RULED_OUT(Unit.SHARE),
  WORDS_ALIKE(Unit.SHARE),
  WAKES_ALIKE(Unit.SHARE),
  BIT_KNOWN(Unit.PROBABILITY),
  ROUND_TELLS(Unit.SHARE),
  MISTAKEN_REPORT(Unit.PROBABILITY),
  SOUND_COMPLAINT(Unit.SHARE),
  SLIP(Unit.PROBABILITY),
  BEYOND_DOUBT(Unit.PROBABILITY),
  LIKELY_SOUND(Unit.PROBABILITY),
  LITTLE_TO_LEARN(Unit.BITS),
  LEAST_BITS(Unit.BITS),
  LEAST_GROUND(Unit.NATS);

  /** What a number counts; a probability or share lies between 0 and 1. */
  public enum Unit {
    PROBABILITY,
    SHARE,
    BITS,
    NATS;

    /** As it stands in the table. */
    public String word() {
      return name().toLowerCase(Locale.ROOT);
    }

    boolean belowOne() {
      return this == PROBABILITY || this == SHARE;
    }
  }

  private final Unit unit;

  RankingNumber(Unit unit) {
    this.unit = unit;
  }

  public Unit unit() {
    return unit;
  }

  /** Name of the row, such as {@code look-finds}. */
  public String row() {
    return name().toLowerCase(Locale.ROOT).replace('_', '-');
  }
}
