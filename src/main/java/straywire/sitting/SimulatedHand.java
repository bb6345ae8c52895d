package straywire.sitting;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import straywire.casebook.SimulatedBench;
import straywire.casebook.Workbench;
import straywire.faults.Hypothesis;
import straywire.module.Control;
import straywire.module.Entry;
import straywire.module.Module;
import straywire.observe.Step;
import straywire.ranking.AfterRepair;
import straywire.sitting.Situation.Stage;

/**
 * Works a sitting on a simulated bench: answers the steps asked for, repairs what is named when it
 * is there, confirms and finishes. For recording cases and for trying the whole way through.
 */
public final class SimulatedHand {
  private final Workbench workbench;
  private final Module module;
  private final long seed;
  private final List<String> wrong;
  private SimulatedBench bench;

  /**
   * A bench with a fault.
   *
   * @param truth what is wrong, one of the hypotheses of the workbench or a pair of them
   * @param seed of what memories hold at power-up
   */
  public SimulatedHand(Workbench workbench, Hypothesis truth, long seed) {
    this.workbench = workbench;
    this.seed = seed;
    module = workbench.module();
    wrong = new ArrayList<>();
    if (!truth.edits().isEmpty()) {
      wrong.addAll(Workbench.singles(truth.id()));
    }
    bench = new SimulatedBench(module, truth, workbench.table(), seed);
  }

  /** The entries that answer a step, with the handling before and after it carried out. */
  public List<Entry> read(Proposed step) {
    step.before().forEach(bench::act);
    List<Entry> readings =
        step.wanted() instanceof Wanted.Round round
            ? bench.perform(new Step.MeasureRound(round.points()))
            : List.of(reading(step.wanted()));
    step.after().forEach(bench::act);
    return readings;
  }

  private Entry reading(Wanted wanted) {
    if (wanted instanceof Wanted.Lamps w) {
      return bench.look(w.words());
    }
    if (wanted instanceof Wanted.Volts w) {
      return new Entry.Measured(w.point(), bench.measure(w.point()));
    }
    if (wanted instanceof Wanted.Shows w) {
      return new Entry.Probed(w.point(), bench.probe(w.point()));
    }
    if (wanted instanceof Wanted.Noticed w) {
      return new Entry.Symptom(w.symptom(), w.place(), Entry.Answer.UNKNOWN, List.of(), true);
    }
    Step step = new Step.Exchange(wanted instanceof Wanted.Done w ? w.part() : "");
    if (wanted instanceof Wanted.Joined w) {
      step = new Step.Beep(w.from(), w.to());
    } else if (wanted instanceof Wanted.AsMeant w) {
      step = new Step.Inspect(w.subject());
    }
    return bench.perform(step).stream()
        .filter(e -> wanted.answeredBy(e, module))
        .findFirst()
        .orElseThrow();
  }

  /**
   * Takes a sitting to its finding.
   *
   * @param most steps that search, at most
   * @return steps that searched; empty when the finding was not reached
   */
  public Optional<Integer> finish(Sitting sitting, int most) {
    int searched = 0;
    while (sitting.now().stage() != Stage.CLOSED) {
      Situation now = sitting.now();
      if (now.stage() == Stage.CONFIRMED) {
        sitting.finish();
      } else if (now.stage() == Stage.REPAIRING) {
        if (!repair(sitting)) {
          return Optional.empty();
        }
      } else {
        searched += now.stage() == Stage.SEARCHING ? 1 : 0;
        if (searched > most || now.next().isEmpty()) {
          return Optional.empty();
        }
        sitting.answer(read(now.next().get()));
        if (bench.truth().edits().isEmpty()) {
          wrong.clear();
        }
      }
    }
    return Optional.of(searched);
  }

  /** Repairs what the leading suspect names, when it is wrong indeed. */
  private boolean repair(Sitting sitting) {
    List<Hypothesis> named = sitting.now().outlook().suspects().get(0).members();
    for (int i = 0; i < named.size(); i++) {
      List<String> faults = Workbench.singles(named.get(i).id());
      if (wrong.containsAll(faults)) {
        sitting.repaired(i + 1);
        wrong.removeAll(faults);
        exchangeBench(sitting, faults);
        return true;
      }
    }
    return false;
  }

  private void exchangeBench(Sitting sitting, List<String> mended) {
    List<Hypothesis> faults =
        mended.stream().map(id -> workbench.hypothesis(id).orElseThrow()).toList();
    Hypothesis left =
        wrong.isEmpty()
            ? workbench.nothingWrong()
            : workbench.hypothesis(String.join(" + ", wrong)).orElseThrow();
    bench = bench.repaired(left, seed + 1, AfterRepair.fromTheDrawer(module, faults));
    Map<String, Boolean> switches = new TreeMap<>();
    for (Control control : module.controls().values()) {
      if (control.kind() == Control.Kind.SWITCH) {
        switches.put(control.label(), sitting.now().controls().levels().get(control.label()));
      }
    }
    bench.act(new Entry.Set(switches));
  }
}
