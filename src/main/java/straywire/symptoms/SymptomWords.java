package straywire.symptoms;

/** Symptoms of what became of a word: halves, order and single bits. */
final class SymptomWords {
  private SymptomWords() {}

  static SymptomHeld halfDead(SymptomTrial trial) {
    long constant = trial.constant();
    long wrong = trial.wrong();
    int dead = 0;
    for (long half : trial.halves()) {
      if ((constant & half) == half && (wrong & trial.word() & ~half) == 0) {
        dead++;
      }
    }
    return SymptomHeld.of(dead == 1);
  }

  static SymptomHeld complementedHalf(SymptomTrial trial) {
    long opposite = trial.complemented();
    for (long half : trial.halves()) {
      if (opposite == half) {
        return SymptomHeld.of(true);
      }
    }
    return SymptomHeld.of(false);
  }

  static SymptomHeld complementedOne(SymptomTrial trial) {
    long opposite = trial.complemented();
    if (complementedHalf(trial).degree() > 0) {
      return new SymptomHeld(0, opposite);
    }
    return SymptomHeld.one(opposite, trial.word());
  }

  static SymptomHeld reversedAll(SymptomTrial trial) {
    return SymptomHeld.of(
        trial.wrong() != 0
            && always(trial, trial.word(), m -> SymptomPatterns.reversed(m, trial.looks.width)));
  }

  static SymptomHeld reversedHalf(SymptomTrial trial) {
    int reversed = 0;
    long wrong = trial.wrong();
    for (long half : trial.halves()) {
      if ((wrong & half) != 0 && always(trial, half, meant -> halvesReversed(trial, meant))) {
        reversed++;
      }
    }
    return SymptomHeld.half(reversed);
  }

  private static long halvesReversed(SymptomTrial trial, long meant) {
    int half = trial.looks.width / 2;
    long low = SymptomRoles.ones(half);
    return SymptomPatterns.reversed(meant >>> half & low, half) << half
        | SymptomPatterns.reversed(meant & low, half);
  }

  static SymptomHeld twoSwapped(SymptomTrial trial) {
    long wrong = trial.wrong();
    if (Long.bitCount(wrong) != 2) {
      return SymptomHeld.of(false);
    }
    boolean swapped = always(trial, trial.word(), meant -> swapped(meant, wrong));
    return new SymptomHeld(swapped ? 1 : 0, swapped ? wrong : 0);
  }

  private static long swapped(long meant, long two) {
    boolean differ = Long.bitCount(meant & two) == 1;
    return differ ? meant ^ two : meant;
  }

  static SymptomHeld twoEqual(SymptomTrial trial) {
    long lively = trial.word() & ~trial.constant();
    long paired = 0;
    int pairs = 0;
    for (long left = lively; left != 0; left &= left - 1) {
      int bit = Long.numberOfTrailingZeros(left);
      long alike = lively & -2L << bit;
      for (int i = 0; i < trial.lit.length && alike != 0; i++) {
        if (!trial.looks.looks.get(i).plain()) {
          continue;
        }
        long litHere = -(trial.lit[i] >>> bit & 1);
        long oddHere = -(trial.odd[i] >>> bit & 1);
        alike &= ~(trial.lit[i] ^ litHere) & ~(trial.odd[i] ^ oddHere) & ~trial.restless[i];
      }
      if (alike != 0) {
        pairs += Long.bitCount(alike);
        paired |= alike | 1L << bit;
      }
    }
    return new SymptomHeld(pairs == 0 ? 0 : pairs == 1 ? 1 : SymptomHeld.EITHER, paired);
  }

  /** What becomes of a picture. */
  private interface Turn {
    long of(long meant);
  }

  private static boolean always(SymptomTrial trial, long bits, Turn turn) {
    for (int look : trial.looks.judged) {
      if ((trial.unlike(look, turn.of(trial.looks.expected[look])) & bits) != 0) {
        return false;
      }
    }
    return true;
  }
}
