package straywire.symptoms;

import java.util.List;

/**
 * What one module as built shows at each look, all bits settled. Pictures have the word's last lamp
 * as bit 0; lamps of other words, where they were seen, follow above the word.
 */
final class SymptomTrial {
  /** What no word of fewer than 64 lamps reads as. */
  static final long UNCLEAR = -1;

  final SymptomLooks looks;

  /** Lamps that are lit. */
  final long[] lit;

  /** Lamps that are neither lit nor dark. */
  final long[] odd;

  /** Lamps that change while one looks. */
  final long[] restless;

  private long wrong;
  private long complemented;
  private long dark;
  private long bright;
  private long constant;

  SymptomTrial(SymptomLooks looks) {
    this.looks = looks;
    lit = new long[looks.size()];
    odd = new long[looks.size()];
    restless = new long[looks.size()];
  }

  long word() {
    return SymptomRoles.ones(looks.width);
  }

  /** The high, and the low, half of the word; none when it has no two halves of two lamps. */
  long[] halves() {
    int half = looks.width / 2;
    long low = SymptomRoles.ones(half);
    return looks.hasHalves() ? new long[] {low << half, low} : new long[0];
  }

  /** Works out the sums over all looks; needed again whenever pictures change. */
  void sum() {
    wrong = 0;
    complemented = word();
    for (int look : looks.judged) {
      wrong |= unlike(look, looks.expected[look]);
      complemented &= ~unlike(look, ~looks.expected[look]);
    }
    dark = word();
    bright = word();
    constant = word();
    int first = -1;
    for (int i = 0; i < lit.length; i++) {
      if (!looks.looks.get(i).plain()) {
        continue;
      }
      dark &= ~unlike(i, 0);
      if (looks.looks.get(i).driven()) {
        first = first < 0 ? i : first;
        bright &= ~unlike(i, -1);
        constant &= ~changed(first, i);
      }
    }
  }

  /** Bits in which two looks are not the same, or that are restless. */
  long changed(int i, int j) {
    return (lit[i] ^ lit[j]) | (odd[i] ^ odd[j]) | restless[i] | restless[j];
  }

  long changed(SymptomLooks.Pair pair) {
    return changed(pair.before(), pair.after());
  }

  /** Bits of the word that change over one of these pairs. */
  long changedOver(List<SymptomLooks.Pair> pairs) {
    long changed = 0;
    for (SymptomLooks.Pair pair : pairs) {
      changed |= changed(pair);
    }
    return changed & word();
  }

  /** The word at a look when each of its lamps is plainly lit or dark; -1 when not. */
  long number(int look) {
    return ((odd[look] | restless[look]) & word()) == 0 ? lit[look] & word() : UNCLEAR;
  }

  /** Bits of the word that do not clearly show {@code picture}. */
  long unlike(int look, long picture) {
    return ((lit[look] ^ picture) | odd[look] | restless[look]) & word();
  }

  /** Bits that differ from what the module as meant shows, at some judged look. */
  long wrong() {
    return wrong;
  }

  /** Bits that are clearly the opposite at every judged look. */
  long complemented() {
    return complemented;
  }

  /** Bits clearly dark at every look. */
  long dark() {
    return dark;
  }

  /** Bits clearly lit at every look at driven lines. */
  long bright() {
    return bright;
  }

  /** Bits that are the same at every look at driven lines. */
  long constant() {
    return constant;
  }
}
