package straywire.bench;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import straywire.bench.Situation.Stage;
import straywire.casebook.SimulatedBench;
import straywire.casebook.Workbench;
import straywire.diagnosis.Step;
import straywire.faults.Hypothesis;
import straywire.module.Control;
import straywire.module.Entry;
import straywire.module.Module;

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

  /** The entry that answers a step, with the handling before and after it carried out. */
  public Entry read(Proposed step) {
    step.before().forEach(bench::act);
    Entry reading = reading(step.wanted());
    step.after().forEach(bench::act);
    return reading;
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
    if (wanted instanceof Wanted.Done w) {
      return new Entry.Exchanged(w.part());
    }
    if (wanted instanceof Wanted.Noticed w) {
      return new Entry.Symptom(w.symptom(), w.place(), Entry.Answer.UNKNOWN, List.of());
    }
    Step step =
        wanted instanceof Wanted.Joined w
            ? new Step.Beep(w.from(), w.to())
            : new Step.Inspect(((Wanted.AsMeant) wanted).subject());
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
        exchangeBench(sitting);
        return true;
      }
    }
    return false;
  }

  private void exchangeBench(Sitting sitting) {
    Hypothesis left =
        wrong.isEmpty()
            ? workbench.nothingWrong()
            : workbench.hypothesis(String.join(" + ", wrong)).orElseThrow();
    bench = new SimulatedBench(module, left, workbench.table(), seed + 1);
    Map<String, Boolean> switches = new TreeMap<>();
    for (Control control : module.controls().values()) {
      if (control.kind() == Control.Kind.SWITCH) {
        switches.put(control.label(), sitting.now().controls().levels().get(control.label()));
      }
    }
    bench.act(new Entry.Set(switches));
  }
}
