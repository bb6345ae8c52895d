package straywire.ranking;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import straywire.faults.Hypothesis;
import straywire.faults.VariationOf;
import straywire.faults.Visibility;
import straywire.module.Entry;
import straywire.module.Module;
import straywire.observe.CellBeliefs;
import straywire.observe.RankingNumbers;
import straywire.observe.ReadingTable;
import straywire.observe.Tally;
import straywire.sim.BoardState;
import straywire.sim.Boards;
import straywire.sim.Lanes;
import straywire.sim.StateChange;
import straywire.sim.Variation;
import straywire.sim.Wiring;
import straywire.symptoms.SymptomScores;

/**
 * Hypotheses simulated together, lane by lane, along the bench log. Keeps the moment after each
 * entry, so that taking the last entry back is dropping a moment.
 */
public final class Bank {
  final List<Hypothesis> hypotheses;
  public final Boards boards;

  private static final double[] NOTHING_SAID = {};

  private final Module module;
  private final RankingNumbers numbers;
  private final EntryLikelihood likelihood;
  private final Visibility visibility;
  private final List<Moment> moments = new ArrayList<>();
  private BoardState state;

  /**
   * After one entry.
   *
   * @param change what it changed on the boards
   * @param said log likelihood of the entry by lane; empty when it was an action
   * @param mass likelihood of the entry by prior: summed over the lanes, prior times likelihood
   * @param total log likelihood of the log so far
   * @param slips readings so far that the lane's hypothesis calls a slip
   */
  private record Moment(
      StateChange change,
      CellBeliefs beliefs,
      double[] said,
      double mass,
      double[] total,
      int[] slips) {}

  public Bank(Module module, Wiring wiring, List<Hypothesis> hypotheses, ReadingTable table) {
    this.module = module;
    this.hypotheses = List.copyOf(hypotheses);
    numbers = table.numbers();
    VariationOf compiler = new VariationOf(wiring);
    List<Variation> variations = this.hypotheses.stream().map(compiler::compile).toList();
    boards = new Boards(wiring, variations);
    likelihood = new EntryLikelihood(boards, table);
    visibility = new Visibility(module);
    state = boards.off();
    moments.add(
        new Moment(
            StateChange.NONE,
            new CellBeliefs(module, boards.lanes(), numbers),
            NOTHING_SAID,
            0,
            new double[boards.lanes()],
            new int[boards.lanes()]));
  }

  private Moment last() {
    return moments.get(moments.size() - 1);
  }

  public BoardState state() {
    return state;
  }

  CellBeliefs beliefs() {
    return last().beliefs();
  }

  /** Log likelihood of the whole log in one lane. */
  public double logLikelihood(int lane) {
    return last().total()[lane];
  }

  public int slips(int lane) {
    return last().slips()[lane];
  }

  /** What the entry at {@code index}, 0 for the first, said in one lane; 0 for an action. */
  public double logLikelihoodOf(int index, int lane) {
    double[] said = moments.get(index + 1).said();
    return said.length == 0 ? 0 : said[lane];
  }

  /**
   * Prior times likelihood of the entry at {@code index}, over all lanes; 0 when it did not speak.
   */
  double massOf(int index) {
    return moments.get(index + 1).mass();
  }

  /** False when the entry at {@code index} was an action and nothing else was said of it. */
  boolean spoke(int index) {
    return moments.get(index + 1).said().length > 0;
  }

  /** Entries taken in. */
  public int size() {
    return moments.size() - 1;
  }

  /** Takes the last entries back until {@code size} are left. */
  void cutTo(int size) {
    while (size() > size) {
      state = last().change().undo(state);
      moments.remove(moments.size() - 1);
    }
  }

  /**
   * The same hypotheses at the start of a new log, power off, switches where they are. What is kept
   * without power was taken in under what was wrong before, which no lane of the new log knows, or
   * came with a part from the drawer: nothing is known of it.
   */
  Bank restarted() {
    return new Bank(this, boards.mended(state));
  }

  private Bank(Bank other, BoardState state) {
    module = other.module;
    hypotheses = other.hypotheses;
    numbers = other.numbers;
    boards = other.boards;
    likelihood = other.likelihood;
    visibility = other.visibility;
    this.state = state;
    moments.add(
        new Moment(
            StateChange.NONE,
            new CellBeliefs(module, boards.lanes(), numbers),
            NOTHING_SAID,
            0,
            new double[boards.lanes()],
            new int[boards.lanes()]));
  }

  /**
   * Takes in the next entry.
   *
   * @param weights log likelihood of the entry by lane from elsewhere: symptoms and rules
   */
  public void accept(Entry entry, double[] weights) {
    Moment before = last();
    boolean forgets = SymptomScores.leavesMemoryUnknown(entry);
    BoardState was = state;
    BoardState is = forgets ? boards.forget(was) : boards.after(was, entry);
    state = is;
    CellBeliefs beliefs =
        forgets ? new CellBeliefs(module, boards.lanes(), numbers) : before.beliefs();
    Tally tally = new Tally(weights, numbers);
    boolean spoke = Arrays.stream(weights).anyMatch(w -> w != 0);
    if (is.powered() && !was.powered()) {
      beliefs = beliefs.afterPowerCycle(boards::keeps);
    }
    if (is != was) {
      beliefs = beliefs.without((lane, part, cell) -> boards.moved(is, lane, part, cell));
    }
    if (entry instanceof Entry.Seen
        || entry instanceof Entry.Measured
        || entry instanceof Entry.Probed) {
      beliefs = beliefs.next();
      read(entry, is, beliefs, tally);
      spoke = true;
    } else if (entry instanceof Entry.Inspected e) {
      inspected(e, tally);
      spoke = true;
    } else if (entry instanceof Entry.Continuity e && !is.powered()) {
      // With the power on a beep says nothing.
      continuity(e, is, tally);
      spoke = true;
    }
    StateChange change = StateChange.between(was, is);
    moments.add(
        spoke
            ? new Moment(
                change,
                beliefs,
                tally.logs,
                mass(tally.logs),
                sum(before.total(), tally.logs),
                sum(before.slips(), tally.slips))
            : new Moment(change, beliefs, NOTHING_SAID, 0, before.total(), before.slips()));
  }

  private double mass(double[] said) {
    double mass = 0;
    for (int lane = 0; lane < said.length; lane++) {
      mass += hypotheses.get(lane).prior() * Math.exp(said[lane]);
    }
    return mass;
  }

  private static double[] sum(double[] a, double[] b) {
    double[] sum = new double[a.length];
    for (int i = 0; i < a.length; i++) {
      sum[i] = a[i] + b[i];
    }
    return sum;
  }

  private static int[] sum(int[] a, int[] b) {
    int[] sum = new int[a.length];
    for (int i = 0; i < a.length; i++) {
      sum[i] = a[i] + b[i];
    }
    return sum;
  }

  private void read(Entry entry, BoardState state, CellBeliefs beliefs, Tally tally) {
    if (entry instanceof Entry.Seen e) {
      likelihood.lamps(state, e.lamps(), beliefs, tally);
    } else if (entry instanceof Entry.Measured e) {
      likelihood.meter(state, e.point(), e.volts(), beliefs, tally);
    } else if (entry instanceof Entry.Probed e) {
      likelihood.probe(state, e.point(), e.shows(), beliefs, tally);
    }
  }

  private void inspected(Entry.Inspected entry, Tally tally) {
    for (int lane = 0; lane < tally.logs.length; lane++) {
      double wrong = numbers.looksWrong(visibility.shows(hypotheses.get(lane), entry.subject()));
      tally.add(lane, Math.log(entry.asMeant() ? 1 - wrong : wrong));
    }
  }

  private void continuity(Entry.Continuity entry, BoardState state, Tally tally) {
    for (int g = 0; g < boards.groups(); g++) {
      long joined = boards.joined(g, entry.from(), entry.to(), state.controls());
      for (long left = boards.used(g); left != 0; left &= left - 1) {
        int bit = Long.numberOfTrailingZeros(left);
        double beeps = numbers.beeps(Lanes.has(joined, bit));
        tally.add(g * Lanes.COUNT + bit, Math.log(entry.joined() ? beeps : 1 - beeps));
      }
    }
  }
}
