package straywire.symptoms;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.stream.IntStream;

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

  /** One press between that changes what the module as meant shows, and nothing else. */
  final List<Pair> steps = new ArrayList<>();

  /** Those of the steps that take the word, read as a number, one up or one down. */
  final List<Pair> counts = new ArrayList<>();

  /** Looks before, during and after one slow press, at which the module as meant is certain. */
  final List<Slow> slow = new ArrayList<>();

  /** Two looks at which one switch differs and nothing was pressed in the whole exercise. */
  final List<OneSwitch> switches = new ArrayList<>();

  /** Before, during and after a press. */
  record Slow(int before, int down, int after) {}

  /** Two looks between which one switch differs. */
  record OneSwitch(String control, Pair pair) {}

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
      if (!looks.get(i).plain()) {
        continue;
      }
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
    stepByStep();
    switchBySwitch();
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

  /** Looks with no button down, in order. */
  private int[] plain() {
    return IntStream.range(0, looks.size()).filter(i -> looks.get(i).plain()).toArray();
  }

  private void pair() {
    int[] plain = plain();
    for (int k = 1; k < plain.length; k++) {
      int i = plain[k];
      int h = plain[k - 1];
      SymptomLook now = looks.get(i);
      SymptomLook last = looks.get(h);
      boolean oneStretch = now.powerUp() == last.powerUp();
      if (oneStretch && now.place() == last.place() && now.driven() && last.driven()) {
        if (now.presses() == last.presses() + 1 && changes(h, i)) {
          writes.add(new Pair(h, i));
        }
      }
      if (oneStretch && now.presses() == last.presses()) {
        if (now.controls().equals(last.controls()) && now.entry() == last.entry() + 1) {
          still.add(new Pair(h, i));
        }
        if (now.place() == last.place() && last.driven() && !now.driven()) {
          gate.add(new Pair(h, i));
        }
      }
      for (int m = k - 1; m >= 0; m--) {
        int j = plain[m];
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

  private void stepByStep() {
    int[] plain = plain();
    for (int k = 1; k < plain.length; k++) {
      int before = plain[k - 1];
      int after = plain[k];
      boolean sure = !isFresh(before) && !isFresh(after) && looks.get(after).driven();
      if (!sure || !looks.get(after).step() || meant(before) == meant(after)) {
        continue;
      }
      steps.add(new Pair(before, after));
      long on = meant(after) - meant(before);
      if (on == 1 || on == -1) {
        counts.add(new Pair(before, after));
      }
      if (after == before + 2 && !isFresh(before + 1)) {
        slow.add(new Slow(before, before + 1, after));
      }
    }
  }

  /** What the module as meant shows of the word at a look. */
  long meant(int look) {
    return expected[look] & SymptomRoles.ones(width);
  }

  private void switchBySwitch() {
    if (looks.stream().anyMatch(look -> look.pressed() || look.presses() > 0)) {
      return;
    }
    for (int i = 0; i < judged.length; i++) {
      for (int j = 0; j < i; j++) {
        Map<String, Boolean> a = looks.get(judged[j]).controls();
        Map<String, Boolean> b = looks.get(judged[i]).controls();
        List<String> moved =
            a.keySet().stream().filter(c -> !a.get(c).equals(b.get(c))).limit(2).toList();
        if (moved.size() == 1 && meant(judged[j]) != meant(judged[i])) {
          switches.add(new OneSwitch(moved.get(0), new Pair(judged[j], judged[i])));
        }
      }
    }
  }

  /** Whether some switches say, bit for bit, what the word can be set to. */
  boolean presets() {
    return looks.stream().allMatch(look -> look.preset() != SymptomLook.NO_PRESET)
        && steps.stream().anyMatch(p -> looks.get(p.after()).preset() != meant(p.after()));
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
