package straywire.symptoms;

import java.util.List;
import java.util.stream.IntStream;

/** Symptoms of words that a button takes on, press by press: counters and shift registers. */
final class SymptomSteps {
  /** Counting presses below which nothing can be said of counting. */
  static final int LEAST = 3;

  /** Shares of the presses from which a person calls it the rule, or may say either. */
  private static final double MOSTLY = 0.66;

  private static final double OFTEN = 0.33;

  /** More than so many at one press is no longer called counting on. */
  private static final long MOST_AT_ONCE = 4;

  private SymptomSteps() {}

  static SymptomHeld never(SymptomTrial trial) {
    return SymptomHeld.of(trial.changedOver(trial.looks.steps) == 0);
  }

  /** How far a press that should take the word on by one takes it, the way it should go. */
  private static long on(SymptomTrial trial, SymptomLooks.Pair pair) {
    long before = trial.number(pair.before());
    long after = trial.number(pair.after());
    boolean up = trial.looks.meant(pair.after()) > trial.looks.meant(pair.before());
    if (before == SymptomTrial.UNCLEAR || after == SymptomTrial.UNCLEAR) {
      return 0;
    }
    return (up ? after - before : before - after) & trial.word();
  }

  static SymptomHeld severalAtOnce(SymptomTrial trial) {
    double share = share(trial, 2, MOST_AT_ONCE);
    return new SymptomHeld(share >= MOSTLY ? 1 : share >= OFTEN ? SymptomHeld.EITHER : 0, 0);
  }

  private static double share(SymptomTrial trial, long least, long most) {
    long such =
        trial.looks.counts.stream()
            .filter(pair -> on(trial, pair) >= least && on(trial, pair) <= most)
            .count();
    return (double) such / trial.looks.counts.size();
  }

  static SymptomHeld leavesOut(SymptomTrial trial) {
    double several = share(trial, 2, trial.word() / 2);
    return SymptomHeld.of(several > 0 && several < MOSTLY);
  }

  static SymptomHeld startsOverEarly(SymptomTrial trial) {
    boolean early = false;
    for (SymptomLooks.Pair pair : trial.looks.counts) {
      long after = trial.number(pair.after());
      long before = trial.number(pair.before());
      boolean up = trial.looks.meant(pair.after()) > trial.looks.meant(pair.before());
      early |= up && after == 0 && before > 1;
    }
    return SymptomHeld.of(early && share(trial, 1, 1) >= OFTEN);
  }

  static SymptomHeld backwards(SymptomTrial trial) {
    double back = share(trial, trial.word(), trial.word());
    return SymptomHeld.of(trial.looks.width > 1 && back >= MOSTLY);
  }

  static SymptomHeld onlyOneEnd(SymptomTrial trial) {
    long changed = trial.changedOver(trial.looks.steps);
    return SymptomHeld.of(changed == 1 || changed == 1L << (trial.looks.width - 1));
  }

  static SymptomHeld stopsHalfWay(SymptomTrial trial) {
    long dead = trial.wrong() & trial.constant();
    boolean end =
        dead != 0
            && dead != trial.word()
            && (contiguous(dead) && ((dead & 1) != 0 || dead >>> (trial.looks.width - 1) != 0));
    boolean restAsMeant = (trial.wrong() & ~trial.constant()) == 0;
    return SymptomHeld.of(end && restAsMeant && Long.bitCount(trial.word() & ~dead) > 1);
  }

  private static boolean contiguous(long bits) {
    long run = bits >>> Long.numberOfTrailingZeros(bits);
    return (run & (run + 1)) == 0;
  }

  /** Every press gives what the press before should have given. */
  static SymptomHeld oneBehind(SymptomTrial trial) {
    for (SymptomLooks.Pair pair : trial.looks.steps) {
      if (trial.unlike(pair.after(), trial.looks.expected[pair.before()]) != 0) {
        return SymptomHeld.of(false);
      }
    }
    return SymptomHeld.of(true);
  }

  static SymptomHeld loadsAlways(SymptomTrial trial) {
    for (SymptomLooks.Pair pair : trial.looks.steps) {
      long preset = trial.looks.looks.get(pair.after()).preset();
      if (trial.unlike(pair.after(), preset) != 0) {
        return SymptomHeld.of(false);
      }
    }
    return SymptomHeld.of(true);
  }

  static SymptomHeld neverClears(SymptomTrial trial) {
    boolean stood = false;
    for (SymptomLooks.Pair pair : clears(trial.looks)) {
      if (trial.number(pair.after()) == 0) {
        return SymptomHeld.of(false);
      }
      stood |= (trial.changed(pair) & trial.word()) == 0;
    }
    return SymptomHeld.of(stood);
  }

  /** Looks between which the module as meant goes to all dark, though not by one press on. */
  static List<SymptomLooks.Pair> clears(SymptomLooks looks) {
    return IntStream.range(1, looks.judged.length)
        .filter(i -> looks.judged[i] == looks.judged[i - 1] + 1)
        .filter(i -> looks.meant(looks.judged[i - 1]) != 0 && looks.meant(looks.judged[i]) == 0)
        .mapToObj(i -> new SymptomLooks.Pair(looks.judged[i - 1], looks.judged[i]))
        .filter(pair -> !looks.counts.contains(pair))
        .toList();
  }

  /** Where it should change on one half of a slow press it changes on the other. */
  static SymptomHeld otherEdge(SymptomTrial trial) {
    boolean any = false;
    for (SymptomLooks.Slow slow : oneSided(trial.looks)) {
      long going = trial.changed(slow.before(), slow.down()) & trial.word();
      long coming = trial.changed(slow.down(), slow.after()) & trial.word();
      boolean meantGoing = trial.looks.meant(slow.down()) == trial.looks.meant(slow.after());
      if (meantGoing ? going != 0 : coming != 0) {
        return SymptomHeld.of(false);
      }
      any |= meantGoing ? coming != 0 : going != 0;
    }
    return SymptomHeld.of(any);
  }

  /** Slow presses of which one half only should change the word. */
  static List<SymptomLooks.Slow> oneSided(SymptomLooks looks) {
    return looks.slow.stream()
        .filter(
            s ->
                (looks.meant(s.before()) == looks.meant(s.down()))
                    != (looks.meant(s.down()) == looks.meant(s.after())))
        .toList();
  }
}
