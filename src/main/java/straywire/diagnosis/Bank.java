package straywire.diagnosis;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import straywire.faults.Hypothesis;
import straywire.faults.VariationOf;
import straywire.faults.Visibility;
import straywire.module.Entry;
import straywire.module.Module;
import straywire.sim.BoardState;
import straywire.sim.Boards;
import straywire.sim.Lanes;
import straywire.sim.Variation;
import straywire.sim.Wiring;

/**
 * Hypotheses simulated together, lane by lane, along the bench log. Keeps the moment after each
 * entry, so that taking the last entry back is dropping a moment.
 */
final class Bank {
  /** How often a careful look finds a fault that shows, and finds one where there is none. */
  private static final double LOOK_FINDS = 0.96;

  private static final double LOOK_IMAGINES = 0.01;

  /** How often a continuity check is right. */
  private static final double BEEP_IS_RIGHT = 0.99;

  final List<Hypothesis> hypotheses;
  final Boards boards;

  private final Module module;
  private final EntryLikelihood likelihood;
  private final List<Moment> moments = new ArrayList<>();

  /**
   * After one entry.
   *
   * @param logs what the entry said: log likelihood by lane; empty when it was an action
   */
  private record Moment(BoardState state, CellBeliefs beliefs, List<Double> logs, double[] total) {}

  Bank(Module module, Wiring wiring, List<Hypothesis> hypotheses, ReadingTable table) {
    this.module = module;
    this.hypotheses = List.copyOf(hypotheses);
    VariationOf compiler = new VariationOf(wiring);
    List<Variation> variations = this.hypotheses.stream().map(compiler::compile).toList();
    boards = new Boards(wiring, variations);
    likelihood = new EntryLikelihood(boards, table);
    moments.add(
        new Moment(
            boards.off(),
            new CellBeliefs(module, boards.lanes()),
            List.of(),
            new double[boards.lanes()]));
  }

  private Moment last() {
    return moments.get(moments.size() - 1);
  }

  BoardState state() {
    return last().state();
  }

  CellBeliefs beliefs() {
    return last().beliefs();
  }

  /** Log likelihood of the whole log in one lane. */
  double logLikelihood(int lane) {
    return last().total()[lane];
  }

  /** What the entry at {@code index}, 0 for the first, said in one lane; 0 for an action. */
  double logLikelihoodOf(int index, int lane) {
    List<Double> logs = moments.get(index + 1).logs();
    return logs.isEmpty() ? 0 : logs.get(lane);
  }

  /** Entries taken in. */
  int size() {
    return moments.size() - 1;
  }

  /** Takes the last entries back until {@code size} are left. */
  void cutTo(int size) {
    while (size() > size) {
      moments.remove(moments.size() - 1);
    }
  }

  /** Takes in the next entry. */
  void accept(Entry entry, double[] weights) {
    Moment before = last();
    BoardState state = act(entry, before.state());
    CellBeliefs beliefs = before.beliefs();
    double[] logs = weights.clone();
    boolean spoke = false;
    for (double weight : weights) {
      spoke |= weight != 0;
    }
    if (state.powered() && !before.state().powered()) {
      beliefs = beliefs.afterPowerCycle();
    }
    if (entry instanceof Entry.Seen
        || entry instanceof Entry.Measured
        || entry instanceof Entry.Probed) {
      beliefs = beliefs.next();
      read(entry, state, beliefs, logs);
      spoke = true;
    } else if (entry instanceof Entry.Inspected e) {
      inspected(e, logs);
      spoke = true;
    } else if (entry instanceof Entry.Continuity e) {
      continuity(e, logs);
      spoke = true;
    }
    double[] total = before.total();
    List<Double> said = List.of();
    if (spoke) {
      total = total.clone();
      List<Double> boxed = new ArrayList<>(logs.length);
      for (int lane = 0; lane < logs.length; lane++) {
        total[lane] += logs[lane];
        boxed.add(logs[lane]);
      }
      said = boxed;
    }
    moments.add(new Moment(state, beliefs, said, total));
  }

  private BoardState act(Entry entry, BoardState state) {
    if (entry instanceof Entry.Power e) {
      return e.on() ? boards.powerUp(state) : boards.powerDown(state);
    }
    if (entry instanceof Entry.Set e) {
      return boards.move(state, e.levels());
    }
    if (entry instanceof Entry.Press e) {
      return boards.press(state, e.button());
    }
    if (entry instanceof Entry.Hold e) {
      return boards.move(state, Map.of(e.button(), !rest(e.button())));
    }
    if (entry instanceof Entry.Release e) {
      return boards.move(state, Map.of(e.button(), rest(e.button())));
    }
    return state;
  }

  private boolean rest(String button) {
    return module.controls().get(button).restLevel();
  }

  private void read(Entry entry, BoardState state, CellBeliefs beliefs, double[] logs) {
    if (entry instanceof Entry.Seen e) {
      likelihood.lamps(state, e.lamps(), beliefs, logs);
    } else if (entry instanceof Entry.Measured e) {
      likelihood.meter(state, e.point(), e.volts(), beliefs, logs);
    } else if (entry instanceof Entry.Probed e) {
      likelihood.probe(state, e.point(), e.shows(), beliefs, logs);
    }
  }

  private void inspected(Entry.Inspected entry, double[] logs) {
    for (int lane = 0; lane < logs.length; lane++) {
      double wrong =
          Visibility.shows(module, hypotheses.get(lane), entry.subject())
              ? LOOK_FINDS
              : LOOK_IMAGINES;
      logs[lane] += Math.log(entry.asMeant() ? 1 - wrong : wrong);
    }
  }

  private void continuity(Entry.Continuity entry, double[] logs) {
    for (int g = 0; g < boards.groups(); g++) {
      long joined = boards.joined(g, entry.from(), entry.to());
      for (long left = boards.used(g); left != 0; left &= left - 1) {
        int bit = Long.numberOfTrailingZeros(left);
        boolean agrees = Lanes.has(joined, bit) == entry.joined();
        logs[g * Lanes.COUNT + bit] += Math.log(agrees ? BEEP_IS_RIGHT : 1 - BEEP_IS_RIGHT);
      }
    }
  }
}
