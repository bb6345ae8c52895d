package straywire.symptoms;

import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;

/** Symptoms of words read as numbers, of one lamp out of many, and of switches. */
final class SymptomNumbers {
  private static final int LEAST_LOOKS = 4;

  private SymptomNumbers() {}

  /** Whether the word as meant is, at the judged looks, mostly one lamp of several. */
  static boolean oneOfMany(SymptomLooks looks) {
    Set<Long> chosen = new TreeSet<>();
    int single = 0;
    for (int look : looks.judged) {
      if (Long.bitCount(looks.meant(look)) == 1) {
        single++;
        chosen.add(looks.meant(look));
      }
    }
    return looks.width > 2 && chosen.size() > 2 && 2 * single >= looks.judged.length;
  }

  static SymptomHeld several(SymptomTrial trial) {
    for (int look : trial.looks.judged) {
      long shown = trial.number(look);
      if (Long.bitCount(trial.looks.meant(look)) == 1
          && shown != SymptomTrial.UNCLEAR
          && Long.bitCount(shown) > 1) {
        return SymptomHeld.of(true);
      }
    }
    return SymptomHeld.of(false);
  }

  static SymptomHeld anotherOne(SymptomTrial trial) {
    boolean another = false;
    for (int look : trial.looks.judged) {
      if (Long.bitCount(trial.looks.meant(look)) == 1) {
        long shown = trial.number(look);
        if (shown == SymptomTrial.UNCLEAR || Long.bitCount(shown) != 1) {
          return SymptomHeld.of(false);
        }
        another |= shown != trial.looks.meant(look);
      }
    }
    return SymptomHeld.of(another);
  }

  /** Lamp number n is lit for lamp number n with its bits in reverse order. */
  static SymptomHeld selectReversed(SymptomTrial trial) {
    int bits = Integer.numberOfTrailingZeros(trial.looks.width);
    boolean another = false;
    for (int look : trial.looks.judged) {
      long meant = trial.looks.meant(look);
      if (Long.bitCount(meant) == 1) {
        long number = Long.numberOfTrailingZeros(meant);
        long turned = 1L << SymptomPatterns.reversed(number, bits);
        if (trial.unlike(look, turned) != 0) {
          return SymptomHeld.of(false);
        }
        another |= turned != meant;
      }
    }
    return SymptomHeld.of(another);
  }

  static boolean powerOfTwo(int width) {
    return width > 2 && Integer.bitCount(width) == 1;
  }

  /** Whether the word, where it is not as meant, is so much too high, counted round. */
  static SymptomHeld off(SymptomTrial trial, long by) {
    int wrong = 0;
    for (int look : trial.looks.judged) {
      if (trial.unlike(look, trial.looks.expected[look] + by & trial.word()) == 0) {
        wrong++;
      } else if (trial.unlike(look, trial.looks.expected[look]) != 0) {
        return SymptomHeld.of(false);
      }
    }
    return SymptomHeld.of(3 * wrong >= trial.looks.judged.length);
  }

  /** The low half is right, the high half sometimes one off, always the same way. */
  static SymptomHeld carryWrong(SymptomTrial trial) {
    int half = trial.looks.width / 2;
    long low = SymptomRoles.ones(half);
    boolean right = false;
    boolean less = false;
    boolean more = false;
    for (int look : trial.looks.judged) {
      long meant = trial.looks.meant(look);
      long shown = trial.number(look);
      if (shown == SymptomTrial.UNCLEAR || ((shown ^ meant) & low) != 0) {
        return SymptomHeld.of(false);
      }
      long on = (shown >>> half) - (meant >>> half) & low;
      right |= on == 0;
      more |= on == 1;
      less |= on == low;
      if (on != 0 && on != 1 && on != low) {
        return SymptomHeld.of(false);
      }
    }
    return SymptomHeld.of(right && less != more);
  }

  /** Settings of the controls at the judged looks. */
  static int settings(SymptomLooks looks) {
    Set<String> settings = new TreeSet<>();
    for (int look : looks.judged) {
      settings.add(looks.looks.get(look).controls().toString());
    }
    return settings.size();
  }

  static SymptomHeld oneSettingWrong(SymptomTrial trial) {
    Map<String, Boolean> rightThere = new TreeMap<>();
    for (int look : trial.looks.judged) {
      boolean right = trial.unlike(look, trial.looks.expected[look]) == 0;
      rightThere.merge(trial.looks.looks.get(look).controls().toString(), right, (a, b) -> a || b);
    }
    long wrong = rightThere.values().stream().filter(right -> !right).count();
    return SymptomHeld.of(wrong == 1 && rightThere.size() >= LEAST_LOOKS);
  }

  static SymptomHeld frozen(SymptomTrial trial) {
    boolean mixed = false;
    for (int look : trial.looks.judged) {
      long shown = trial.number(look);
      mixed |= shown > 0 && shown != trial.word();
    }
    return SymptomHeld.of(mixed && trial.constant() == trial.word());
  }

  /** One switch changes nothing where it should; another does. */
  static SymptomHeld switchIgnored(SymptomTrial trial) {
    Map<String, Boolean> acts = new TreeMap<>();
    for (SymptomLooks.OneSwitch one : trial.looks.switches) {
      boolean changed = (trial.changed(one.pair()) & trial.word()) != 0;
      acts.merge(one.control(), changed, (a, b) -> a || b);
    }
    return SymptomHeld.of(acts.containsValue(false) && acts.containsValue(true));
  }

  /** Whether several switches are tried one at a time. */
  static boolean severalSwitches(SymptomLooks looks) {
    return looks.switches.stream().map(SymptomLooks.OneSwitch::control).distinct().count() > 1;
  }

  static boolean enough(SymptomLooks looks) {
    return looks.judged.length >= LEAST_LOOKS;
  }
}
