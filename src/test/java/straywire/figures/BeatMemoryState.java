package straywire.figures;

import java.nio.file.Path;
import org.openjdk.jmh.annotations.Scope;
import org.openjdk.jmh.annotations.State;
import straywire.advice.RuleBase;
import straywire.casebook.Workbench;
import straywire.faults.VariationOf;
import straywire.module.BenchLog;
import straywire.module.Module;
import straywire.module.ModuleFile;
import straywire.observe.Instruments;
import straywire.parts.ShippedParts;
import straywire.ranking.Diagnosis;
import straywire.sim.BoardState;
import straywire.sim.Boards;
import straywire.sim.Wiring;

/** What the benchmarks work on: the beat memory, all its hypotheses, one log cut short. */
@State(Scope.Benchmark)
public class BeatMemoryState {
  final Module module =
      ModuleFile.readShipped(Path.of("cases/beat-memory/module.yaml"), new ShippedParts());
  final RuleBase rules = RuleBase.shipped();
  final Workbench workbench = new Workbench(module, rules);
  final Boards boards;
  final String control = module.controls().keySet().iterator().next();
  BoardState state;

  /** Stands after the by-hand exercise has shown the first thing that differs. */
  final Diagnosis opened = workbench.diagnosis();

  public BeatMemoryState() {
    Wiring wiring = new Wiring(module);
    VariationOf compiler = new VariationOf(wiring);
    boards = new Boards(wiring, workbench.hypotheses().stream().map(compiler::compile).toList());
    state = boards.powerUp(boards.off());
    Trial.Result result =
        new Trial(module, workbench.hypotheses(), Instruments.USUAL)
            .run(workbench.hypothesis("jumper-missing U1.3-U2.3").orElseThrow(), 1);
    for (BenchLog.Line line : result.log().standing().subList(0, result.opening())) {
      opened.accept(line.entry(), h -> 0);
    }
  }
}
