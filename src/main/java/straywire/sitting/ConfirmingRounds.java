package straywire.sitting;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;
import straywire.casebook.Workbench;
import straywire.faults.Hypothesis;
import straywire.module.Entry;
import straywire.module.Module;
import straywire.sim.Boards;
import straywire.sim.Lanes;
import straywire.sim.Wiring;
import straywire.sitting.Exercise.Round;

/**
 * The looks of the by-hand exercise that are worth taking after a repair: the fewest, picked one by
 * one, that show nearly all that the whole exercise would show, what was repaired above all.
 */
final class ConfirmingRounds {
  /** How much more what was repaired counts than all other faults together. */
  private static final double REPAIRED_COUNTS = 3;

  /** A look that would catch less than this share of all faults, by prior, is left out. */
  private static final double LEAST_SHARE = 0.004;

  private final Module module;
  private final List<Round> rounds;
  private final double[] weights;

  /** Chance that hypothesis {@code h} passes the look of round {@code r}, at {@code [r][h]}. */
  private final double[][] passes;

  private ConfirmingRounds(Workbench workbench, Wiring wiring, Set<String> repaired) {
    module = workbench.module();
    rounds = Exercise.of(module).rounds();
    List<Hypothesis> all = workbench.hypotheses();
    weights = new double[all.size()];
    for (int h = 0; h < weights.length; h++) {
      Hypothesis hypothesis = all.get(h);
      weights[h] =
          repaired.contains(hypothesis.id())
              ? REPAIRED_COUNTS
              : hypothesis.edits().isEmpty() ? 0 : hypothesis.prior();
    }
    BoardReplay boards = new BoardReplay(wiring, all, Map.of());
    passes = new double[rounds.size()][];
    for (int r = 0; r < passes.length; r++) {
      rounds.get(r).handling().forEach(boards::act);
      passes[r] = passes(boards, rounds.get(r).look().lamps(module), all.size());
    }
  }

  /**
   * The exercise cut down to what confirms a repair.
   *
   * @param repaired ids of the single faults that were repaired
   */
  static Exercise of(Workbench workbench, Wiring wiring, Set<String> repaired) {
    ConfirmingRounds confirming = new ConfirmingRounds(workbench, wiring, repaired);
    List<Integer> picked = confirming.picked();
    return new Exercise(
        workbench.module(), confirming.merged(picked, confirming.needless(wiring, picked)));
  }

  /** What the first hypothesis, nothing wrong, is sure to show and others may not. */
  private static double[] passes(BoardReplay boards, List<String> lamps, int hypotheses) {
    double[] passes = new double[hypotheses];
    Arrays.fill(passes, 1);
    for (String lamp : lamps) {
      Boards.Glow healthy = boards.glow(0, lamp);
      boolean lit = Lanes.has(healthy.lit(), 0);
      if (!lit && !Lanes.has(healthy.dark(), 0)) {
        continue;
      }
      for (int h = 0; h < hypotheses; h++) {
        Boards.Glow glow = boards.glow(Lanes.group(h), lamp);
        long same = lit ? glow.lit() : glow.dark();
        long other = lit ? glow.dark() : glow.lit();
        int bit = h % Lanes.COUNT;
        passes[h] *= Lanes.has(same, bit) ? 1 : Lanes.has(other, bit) ? 0 : 0.5;
      }
    }
    return passes;
  }

  private List<Integer> picked() {
    double[] left = weights.clone();
    double least = LEAST_SHARE * Arrays.stream(weights).filter(w -> w < REPAIRED_COUNTS).sum();
    List<Integer> picked = new ArrayList<>();
    while (picked.size() < rounds.size()) {
      int best = 0;
      double most = 0;
      for (int r = 0; r < passes.length; r++) {
        double caught = 0;
        for (int h = 0; h < left.length; h++) {
          caught += left[h] * (1 - passes[r][h]);
        }
        if (caught > most) {
          most = caught;
          best = r;
        }
      }
      if (most < least) {
        break;
      }
      picked.add(best);
      for (int h = 0; h < left.length; h++) {
        left[h] *= passes[best][h];
      }
    }
    picked.sort(Integer::compare);
    return picked;
  }

  /** Rounds that only move switches for a look that is left out, and change no picked look. */
  private Set<Integer> needless(Wiring wiring, List<Integer> picked) {
    Set<Integer> needless = new TreeSet<>();
    List<String> asItIs = shown(wiring, picked, needless);
    for (int r = 0; r < rounds.size(); r++) {
      boolean only = rounds.get(r).handling().stream().allMatch(e -> e instanceof Entry.Set);
      if (only && !picked.contains(r)) {
        needless.add(r);
        if (!shown(wiring, picked, needless).equals(asItIs)) {
          needless.remove(r);
        }
      }
    }
    return needless;
  }

  /** What the picked looks show of a module with nothing wrong. */
  private List<String> shown(Wiring wiring, List<Integer> picked, Set<Integer> needless) {
    BoardReplay board = BoardReplay.healthy(wiring);
    List<String> shown = new ArrayList<>();
    for (int r = 0; r < rounds.size(); r++) {
      if (!needless.contains(r)) {
        rounds.get(r).handling().forEach(board::act);
      }
      if (picked.contains(r)) {
        shown.add(board.marks(0, rounds.get(r).look().lamps(module)));
      }
    }
    return shown;
  }

  /** Rounds that end in a picked look, with the handling of those left out before it. */
  private List<Round> merged(List<Integer> picked, Set<Integer> needless) {
    List<Round> merged = new ArrayList<>();
    List<Entry> handling = new ArrayList<>();
    for (int r = 0; r < rounds.size(); r++) {
      if (!needless.contains(r)) {
        handling.addAll(rounds.get(r).handling());
      }
      if (picked.contains(r)) {
        merged.add(new Round(handling, rounds.get(r).look()));
        handling = new ArrayList<>();
      }
    }
    return merged;
  }
}
