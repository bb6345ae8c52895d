package straywire.diagnosis;

/**
 * What one module as built shows at each look, all bits settled. Pictures have the word's last lamp
 * as bit 0; lamps of other words, where they were seen, follow above the word.
 */
final class SymptomTrial {
  final SymptomLooks looks;

  /** Lamps that are lit. */
  final long[] lit;

  /** Lamps that are neither lit nor dark. */
  final long[] odd;

  /** Lamps that change while one looks. */
  final long[] restless;

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

  /** Bits in which two looks are not the same. */
  long changed(SymptomLooks.Pair pair) {
    int i = pair.before();
    int j = pair.after();
    return (lit[i] ^ lit[j]) | (odd[i] ^ odd[j]) | restless[i] | restless[j];
  }

  /** Bits of the word that do not clearly show {@code picture}. */
  long unlike(int look, long picture) {
    return ((lit[look] ^ picture) | odd[look] | restless[look]) & word();
  }

  /** Bits that differ from what the module as meant shows, at some judged look. */
  long wrong() {
    long wrong = 0;
    for (int look : looks.judged) {
      wrong |= unlike(look, looks.expected[look]);
    }
    return wrong;
  }

  /** Bits that are clearly the opposite at every judged look. */
  long complemented() {
    long opposite = word();
    for (int look : looks.judged) {
      opposite &= ~unlike(look, ~looks.expected[look]);
    }
    return opposite;
  }

  /** Bits clearly dark at every look. */
  long dark() {
    long dark = word();
    for (int i = 0; i < lit.length; i++) {
      dark &= ~unlike(i, 0);
    }
    return dark;
  }

  /** Bits clearly lit at every look at driven lines. */
  long bright() {
    long bright = word();
    for (int i = 0; i < lit.length; i++) {
      if (looks.looks.get(i).driven()) {
        bright &= ~unlike(i, -1);
      }
    }
    return bright;
  }

  /** Bits that are the same at every look at driven lines. */
  long constant() {
    long same = word();
    int first = -1;
    for (int i = 0; i < lit.length; i++) {
      if (looks.looks.get(i).driven()) {
        first = first < 0 ? i : first;
        same &= ~changed(new SymptomLooks.Pair(first, i));
      }
    }
    return same;
  }
}
