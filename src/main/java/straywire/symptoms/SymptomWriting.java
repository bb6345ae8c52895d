package straywire.symptoms;

/** Symptoms of power-up, of where words are kept, and of lines that are driven and released. */
final class SymptomWriting {
  private SymptomWriting() {}

  static SymptomHeld random(SymptomTrial trial) {
    boolean mixed = false;
    boolean differ = false;
    int[] fresh = trial.looks.fresh;
    for (int look : fresh) {
      long lit = trial.lit[look] & trial.word();
      mixed |= lit != 0 && lit != trial.word();
      differ |= trial.unlike(look, trial.lit[fresh[0]]) != 0;
    }
    return SymptomHeld.of(mixed && differ);
  }

  static SymptomHeld wakesOtherwise(SymptomTrial trial) {
    for (SymptomLooks.Pair pair : trial.looks.powerUps) {
      if ((trial.changed(pair) & trial.word()) == 0) {
        return SymptomHeld.of(false);
      }
    }
    return SymptomHeld.of(true);
  }

  static SymptomHeld untouched(SymptomTrial trial) {
    for (int look = 0; look < trial.restless.length; look++) {
      if (trial.looks.looks.get(look).plain() && (trial.restless[look] & trial.word()) != 0) {
        return SymptomHeld.of(true);
      }
    }
    return SymptomHeld.of(trial.changedOver(trial.looks.still) != 0);
  }

  static SymptomHeld neverChanges(SymptomTrial trial) {
    long changed = trial.changedOver(trial.looks.writes);
    if (changed == 0) {
      return SymptomHeld.of(true);
    }
    for (long half : trial.halves()) {
      if ((changed & half) == 0) {
        return new SymptomHeld(SymptomHeld.EITHER, 0);
      }
    }
    return SymptomHeld.of(false);
  }

  static SymptomHeld elsewhere(SymptomTrial trial) {
    for (int[] round : trial.looks.rounds) {
      if (!strayed(trial, round)) {
        return SymptomHeld.of(false);
      }
    }
    return SymptomHeld.of(true);
  }

  /** Some word is not where it was written, but at a place meant to hold another. */
  private static boolean strayed(SymptomTrial trial, int[] round) {
    for (int a : round) {
      long meant = trial.looks.expected[a];
      if (trial.unlike(a, meant) != 0) {
        for (int b : round) {
          if (b != a && trial.looks.expected[b] != meant && trial.unlike(b, meant) == 0) {
            return true;
          }
        }
      }
    }
    return false;
  }

  static SymptomHeld share(SymptomTrial trial) {
    if (share(trial, trial.word())) {
      return SymptomHeld.of(true);
    }
    for (long half : trial.halves()) {
      if (share(trial, half)) {
        return new SymptomHeld(SymptomHeld.EITHER, 0);
      }
    }
    return SymptomHeld.of(false);
  }

  /** Some address bit makes no difference in any round, in these bits of the word. */
  private static boolean share(SymptomTrial trial, long bits) {
    for (int bit = 0; bit < trial.looks.addressBits; bit++) {
      int tried = 0;
      int shared = 0;
      for (int[] round : trial.looks.rounds) {
        for (int a : round) {
          for (int b : round) {
            if (apart(trial, a, b) == 1L << bit
                && ((trial.looks.expected[a] ^ trial.looks.expected[b]) & bits) != 0) {
              tried++;
              boolean same = (trial.changed(a, b) & bits) == 0;
              shared += same && overwritten(trial, a, b, bits) ? 1 : 0;
            }
          }
        }
      }
      if (tried > 0 && shared == tried) {
        return true;
      }
    }
    return false;
  }

  private static long apart(SymptomTrial trial, int a, int b) {
    return a < b ? trial.looks.looks.get(a).place() ^ trial.looks.looks.get(b).place() : 0;
  }

  /** What one of two places showed right after it was written is no longer there. */
  private static boolean overwritten(SymptomTrial trial, int a, int b, long bits) {
    for (int look : trial.looks.judged) {
      for (int now : new int[] {a, b}) {
        boolean written =
            look < now
                && trial.looks.looks.get(look).place() == trial.looks.looks.get(now).place()
                && trial.looks.expected[look] == trial.looks.expected[now];
        if (written && (trial.changed(look, now) & bits) != 0) {
          return true;
        }
      }
    }
    return false;
  }

  /** Whether lamps show the same driven and released, at every place. */
  private static boolean deaf(SymptomTrial trial) {
    return trial.changedOver(trial.looks.gate) == 0;
  }

  /** Whether released lines look released, at every place. */
  private static boolean letGo(SymptomTrial trial) {
    for (SymptomLooks.Pair pair : trial.looks.gate) {
      if (trial.unlike(pair.after(), trial.looks.expected[pair.after()]) != 0) {
        return false;
      }
    }
    return true;
  }

  static SymptomHeld neverDrives(SymptomTrial trial) {
    return SymptomHeld.of(deaf(trial) && letGo(trial));
  }

  static SymptomHeld neverReleases(SymptomTrial trial) {
    return SymptomHeld.of(deaf(trial) && !letGo(trial));
  }

  static SymptomHeld fights(SymptomTrial trial) {
    for (SymptomLooks.Pair pair : trial.looks.gate) {
      int driven = pair.before();
      int released = pair.after();
      long uneasy = trial.odd[released] | trial.restless[released];
      long strained = (trial.odd[driven] | trial.restless[driven]) & ~uneasy;
      long moved = (trial.lit[driven] ^ trial.lit[released]) & ~trial.word() & ~uneasy;
      long meant =
          (trial.looks.expected[driven] ^ trial.looks.expected[released])
              | ~(trial.looks.certain[driven] & trial.looks.certain[released]);
      if (strained != 0 || (moved & ~meant) != 0) {
        return SymptomHeld.of(true);
      }
    }
    return SymptomHeld.of(false);
  }
}
