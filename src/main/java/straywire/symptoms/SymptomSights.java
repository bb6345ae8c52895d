package straywire.symptoms;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.stream.IntStream;
import straywire.logic.PartLogic;
import straywire.module.End;
import straywire.module.Entry;
import straywire.module.LampState;
import straywire.module.Module;
import straywire.module.Point;
import straywire.module.Word;
import straywire.sim.BoardState;
import straywire.sim.Boards;
import straywire.sim.Lanes;
import straywire.sim.Signal;

/**
 * What every lane shows at every look of an exercise, taken down lane-parallel: pictures of lit
 * lamps, and beside them each lamp that is not plainly lit or dark with what it hangs on.
 */
final class SymptomSights {
  /**
   * Codes of what a lamp hangs on: a signal; from here on the first lamp joined to it, where
   * nothing else is known; then twice the number of a remembered bit, plus 1 when inverted.
   */
  private static final int UNTRACED = Signal.values().length;

  private static final int FIRST_BIT = UNTRACED + Long.SIZE;

  private final Boards boards;
  private final SymptomDraws draws;

  /** Lamps of the pictures; index i is bit i. */
  private final List<String> lamps;

  private final List<SymptomLook> looks = new ArrayList<>();
  private final List<long[]> lit = new ArrayList<>();

  /** By lane, what is open: look, lamp and code packed into one number each. */
  private final long[][] open;

  private final int[] opens;

  /** Whether the module as meant remembers, and nothing but what is kept without power. */
  private final boolean allKept;

  private SymptomSights(Boards boards, SymptomDraws draws, List<String> lamps) {
    this.boards = boards;
    this.draws = draws;
    this.lamps = lamps;
    open = new long[boards.lanes()][];
    Arrays.fill(open, new long[0]);
    opens = new int[boards.lanes()];
    allKept =
        boards.wiring().module().parts().values().stream().anyMatch(f -> f.part().logic().keeps())
            && boards.wiring().module().parts().values().stream()
                .map(fitted -> fitted.part().logic())
                .allMatch(SymptomSights::keepsAll);
  }

  private static boolean keepsAll(PartLogic logic) {
    return IntStream.range(0, logic.cellCount()).allMatch(logic::keeps);
  }

  /** Works the boards along the entries and takes down every look. */
  static SymptomSights of(
      SymptomRoles roles, List<Entry> entries, Boards boards, SymptomDraws draws) {
    SymptomSights sights = new SymptomSights(boards, draws, lamps(boards, roles));
    new SymptomWalk(roles, boards).along(entries, (look, entry, state) -> sights.take(look, state));
    return sights;
  }

  /** The word, last lamp first, and above it, where lines are driven and released, all others. */
  private static List<String> lamps(Boards boards, SymptomRoles roles) {
    List<String> lamps = new ArrayList<>(roles.lamps().members());
    java.util.Collections.reverse(lamps);
    Module module = boards.wiring().module();
    if (roles.gate().isPresent()) {
      for (Word word : module.lampWords()) {
        for (String lamp : word.members()) {
          if (!lamps.contains(lamp) && lamps.size() < Long.SIZE) {
            lamps.add(lamp);
          }
        }
      }
    }
    return lamps;
  }

  private void take(SymptomLook look, BoardState state) {
    int number = looks.size();
    looks.add(look);
    long[] pictures = new long[boards.lanes()];
    lit.add(pictures);
    for (int g = 0; g < boards.groups(); g++) {
      int first = g * Lanes.COUNT;
      for (int lamp = 0; lamp < lamps.size(); lamp++) {
        Boards.Glow glow = boards.glow(state, g, lamps.get(lamp));
        for (long left = glow.lit(); left != 0; left &= left - 1) {
          pictures[first + Long.numberOfTrailingZeros(left)] |= 1L << lamp;
        }
        long either = boards.used(g) & ~glow.lit() & ~glow.dark();
        if (either != 0) {
          settleLater(state, g, either, number, lamp);
        }
      }
    }
  }

  /** Notes what lamps hang on that may be lit or dark. */
  private void settleLater(BoardState state, int group, long either, int look, int lamp) {
    long[] signals = boards.lampSignals(state, group, lamps.get(lamp));
    for (Signal signal : Signal.values()) {
      long lanes = signals[signal.ordinal()] & either;
      if (lanes != 0 && signal == Signal.UNKNOWN) {
        follow(state, group, lanes, look, lamp);
      } else if (lanes != 0) {
        note(group * Lanes.COUNT, lanes, look, lamp, signal.ordinal());
      }
    }
  }

  private void follow(BoardState state, int group, long unknown, int look, int lamp) {
    String label = lamps.get(lamp);
    boolean upsideDown = !boards.wiring().module().lamps().get(label).lightsOnHigh();
    int first = group * Lanes.COUNT;
    long[] rest = {unknown};
    boards.trace(
        state,
        group,
        point(label),
        unknown,
        (part, type, cell, inverted, lanes) -> {
          long these = lanes & rest[0];
          rest[0] &= ~these;
          int word = type.logic().wordStart(cell);
          int length = type.logic().wordLength(cell);
          int bit = draws.number(part, word, length, cell, type.logic().keeps(cell));
          note(first, these, look, lamp, FIRST_BIT + 2 * bit + (inverted ^ upsideDown ? 1 : 0));
        });
    for (int other = 0; other < lamp && rest[0] != 0; other++) {
      long joined = rest[0] & boards.wired(state, group, point(lamps.get(other)), point(label));
      note(first, joined, look, lamp, UNTRACED + other);
      rest[0] &= ~joined;
    }
    note(first, rest[0], look, lamp, UNTRACED + lamp);
  }

  private static Point point(String lamp) {
    return new Point(new End(End.Kind.LAMP, lamp, 0), false);
  }

  private void note(int first, long lanes, int look, int lamp, int code) {
    long packed = (long) look << 40 | (long) lamp << 32 | code;
    for (long left = lanes; left != 0; left &= left - 1) {
      int lane = first + Long.numberOfTrailingZeros(left);
      if (opens[lane] == open[lane].length) {
        open[lane] = Arrays.copyOf(open[lane], Math.max(16, 2 * opens[lane]));
      }
      open[lane][opens[lane]++] = packed;
    }
  }

  private static boolean untraced(int code) {
    return code >= UNTRACED && code < FIRST_BIT;
  }

  /** What one lane, that of the module as meant, makes of the looks. */
  SymptomLooks meant(SymptomRoles roles, int lane) {
    long[] expected = new long[looks.size()];
    long[] certain = new long[looks.size()];
    for (int i = 0; i < expected.length; i++) {
      expected[i] = lit.get(i)[lane];
      certain[i] = SymptomRoles.ones(lamps.size());
    }
    for (int i = 0; i < opens[lane]; i++) {
      certain[(int) (open[lane][i] >>> 40)] &= ~(1L << (int) (open[lane][i] >>> 32 & 0xff));
    }
    int addressBits = roles.store().map(s -> s.address().size()).orElse(0);
    return new SymptomLooks(
        looks, roles.width(), addressBits, roles.store().isPresent(), expected, certain);
  }

  /** Whether all draws of a lane are the same. */
  boolean settled(int lane) {
    return opens[lane] == 0;
  }

  /** Whether a lamp of a lane is unknown for another reason than bits that nobody wrote. */
  boolean erratic(SymptomLooks meant, int lane) {
    for (int i = 0; i < opens[lane]; i++) {
      long packed = open[lane][i];
      long certain = meant.certain[(int) (packed >>> 40)];
      if (untraced((int) packed) && (certain >>> (int) (packed >>> 32 & 0xff) & 1) != 0) {
        return true;
      }
    }
    return false;
  }

  /** One lane in one draw; {@code trial} is written over. */
  void fill(SymptomTrial trial, int lane, int draw) {
    for (int i = 0; i < looks.size(); i++) {
      trial.lit[i] = lit.get(i)[lane];
      trial.odd[i] = 0;
      trial.restless[i] = 0;
    }
    for (int i = 0; i < opens[lane]; i++) {
      long packed = open[lane][i];
      settle(trial, (int) (packed >>> 40), (int) (packed >>> 32 & 0xff), (int) packed, draw);
    }
    trial.sum();
  }

  private void settle(SymptomTrial trial, int look, int lamp, int code, int draw) {
    long bit = 1L << lamp;
    if (code >= FIRST_BIT) {
      int number = (code - FIRST_BIT) / 2;
      boolean inverted = (code - FIRST_BIT) % 2 != 0;
      if (draws.value(number, looks.get(look).powerUp(), draw) ^ inverted) {
        trial.lit[look] |= bit;
      }
    } else if (untraced(code)) {
      untraced(trial, look, lamp, code - UNTRACED, draw);
    } else {
      LampState shown = draws.shown(Signal.values()[code], draw);
      if (shown == LampState.LIT) {
        trial.lit[look] |= bit;
      } else if (shown == LampState.DIM) {
        trial.odd[look] |= bit;
      } else if (shown == LampState.FLICKERING) {
        trial.restless[look] |= bit;
      }
    }
  }

  /** Unwritten bits that meet keep still at their place; what else is unknown may do anything. */
  private void untraced(SymptomTrial trial, int look, int lamp, int joined, int draw) {
    long bit = 1L << lamp;
    boolean unwritten = (trial.looks.certain[look] & bit) == 0;
    boolean still = unwritten || draws.sitsStill(draw);
    int powerUp = allKept ? 1 : looks.get(look).powerUp();
    long kept = unwritten ? looks.get(look).place() << 8 | powerUp : 0;
    if (draws.anything(joined, still ? -kept : look + 1, draw)) {
      trial.lit[look] |= bit;
    }
    if (!still) {
      trial.restless[look] |= bit;
    }
  }
}
