package straywire.figures;

import java.util.List;
import java.util.Map;
import straywire.faults.Hypothesis;
import straywire.faults.VariationOf;
import straywire.module.Control;
import straywire.module.Module;
import straywire.sim.BoardState;
import straywire.sim.Boards;
import straywire.sim.Wiring;

/** How fast a module is simulated under all its hypotheses at once. */
public final class SimulationSpeed {
  private final Boards boards;
  private final List<Control> controls;

  public SimulationSpeed(Module module, List<Hypothesis> hypotheses) {
    Wiring wiring = new Wiring(module);
    VariationOf compiler = new VariationOf(wiring);
    boards = new Boards(wiring, hypotheses.stream().map(compiler::compile).toList());
    controls = List.copyOf(module.controls().values());
  }

  /**
   * Moves one control after the other, all lanes settling after each.
   *
   * @param moves how many times, at least 1
   * @return lanes times moves per second of processor time
   */
  public double lanesTimesMoves(int moves) {
    BoardState state = boards.powerUp(boards.off());
    double start = CpuClock.seconds();
    for (int move = 0; move < moves; move++) {
      String label = controls.get(move % controls.size()).label();
      state = boards.move(state, Map.of(label, !state.controls().get(label)));
    }
    return (double) boards.lanes() * moves / Math.max(1e-9, CpuClock.seconds() - start);
  }
}
