package straywire.diagnosis;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;

/**
 * The looks of an exercise, or of a stretch of the log, with what the module as meant shows at each
 * and which of them belong together.
 */
final class SymptomLooks {
  /** Looking back at fewer places between two presses is not a round. */
  private static final int PLACES_OF_A_ROUND = 3;

  /** Two looks, by number. */
  record Pair(int before, int after) {}

  final List<SymptomLook> looks;

  /** Lamps of the word, 1 to 64; the last one is bit 0 of a picture. */
  final int width;

  /** Address switches. */
  final int addressBits;

  /** Whether a button takes words in and the lamps show them afterwards. */
  final boolean keeps;

  /** Pictures that the module as meant shows, and the bits of them that are certain. */
  final long[] expected;

  final long[] certain;

  /** Looks at driven lines at which all of the picture as meant is certain. */
  final int[] judged;

  /** Looks at which the module as meant may show anything. */
  final int[] fresh;

  /** One press between, at one place. */
  final List<Pair> writes = new ArrayList<>();

  /** No press between, at one place. */
  final List<Pair> idle = new ArrayList<>();

  /** Nothing at all between. */
  final List<Pair> still = new ArrayList<>();

  /** Power off and on between, at one place, both fresh, the second the first after power-up. */
  final List<Pair> powerUps = new ArrayList<>();

  /** Lines driven, then let go. */
  final List<Pair> gate = new ArrayList<>();

  /** Readings of several places with no press between. */
  final List<int[]> rounds = new ArrayList<>();

  /**
   * @param expected picture of the module as meant at each look
   * @param certain bits of it that are certain
   */
  SymptomLooks(
      List<SymptomLook> looks,
      int width,
      int addressBits,
      boolean keeps,
      long[] expected,
      long[] certain) {
    this.looks = List.copyOf(looks);
    this.width = width;
    this.addressBits = addressBits;
    this.keeps = keeps;
    this.expected = expected.clone();
    this.certain = certain.clone();
    List<Integer> sure = new ArrayList<>();
    List<Integer> open = new ArrayList<>();
    for (int i = 0; i < looks.size(); i++) {
      if ((~certain[i] & SymptomRoles.ones(width)) != 0) {
        open.add(i);
      } else if (looks.get(i).driven()) {
        sure.add(i);
      }
    }
    judged = sure.stream().mapToInt(Integer::intValue).toArray();
    fresh = open.stream().mapToInt(Integer::intValue).toArray();
    pair();
    gather();
  }

  /** Whether some judged picture meant is another one when turned round. */
  boolean hasDirection() {
    for (int look : judged) {
      if (expected[look] != SymptomPatterns.reversed(expected[look], width)) {
        return true;
      }
    }
    return false;
  }

  /** Whether the word has two halves of two lamps or more. */
  boolean hasHalves() {
    return width >= 4 && width % 2 == 0;
  }

  private void pair() {
    for (int i = 1; i < looks.size(); i++) {
      SymptomLook now = looks.get(i);
      SymptomLook last = looks.get(i - 1);
      boolean oneStretch = now.powerUp() == last.powerUp();
      if (oneStretch && now.place() == last.place() && now.driven() && last.driven()) {
        if (now.presses() == last.presses() + 1 && changes(i - 1, i)) {
          writes.add(new Pair(i - 1, i));
        }
      }
      if (oneStretch && now.presses() == last.presses()) {
        if (now.controls().equals(last.controls()) && now.entry() == last.entry() + 1) {
          still.add(new Pair(i - 1, i));
        }
        if (now.place() == last.place() && last.driven() && !now.driven()) {
          gate.add(new Pair(i - 1, i));
        }
      }
      for (int j = i - 1; j >= 0; j--) {
        SymptomLook then = looks.get(j);
        if (then.place() == now.place() && then.driven() && now.driven()) {
          if (then.powerUp() == now.powerUp() && then.presses() == now.presses()) {
            idle.add(new Pair(j, i));
          } else if (!oneStretch && isFresh(i) && isFresh(j)) {
            powerUps.add(new Pair(j, i));
          }
          break;
        }
      }
    }
  }

  private boolean isFresh(int look) {
    return (~certain[look] & SymptomRoles.ones(width)) != 0;
  }

  /** Whether the module as meant shows, or may show, another picture. */
  private boolean changes(int before, int after) {
    return !isFresh(after) && (isFresh(before) || expected[before] != expected[after]);
  }

  /** The last judged reading of each place between two presses, where there are several. */
  private void gather() {
    Map<Integer, Map<Long, Integer>> byPress = new TreeMap<>();
    for (int look : judged) {
      SymptomLook at = looks.get(look);
      int stretch = at.powerUp() * looks.size() + at.presses();
      byPress.computeIfAbsent(stretch, s -> new TreeMap<>()).put(at.place(), look);
    }
    for (Map<Long, Integer> round : byPress.values()) {
      if (round.size() >= PLACES_OF_A_ROUND) {
        rounds.add(round.values().stream().mapToInt(Integer::intValue).toArray());
      }
    }
  }

  int size() {
    return looks.size();
  }
}
