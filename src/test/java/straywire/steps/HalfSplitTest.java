package straywire.steps;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import straywire.advice.RuleBase;
import straywire.faults.FaultExpansion;
import straywire.faults.Hypothesis;
import straywire.faults.PriorsFile;
import straywire.faults.VariationOf;
import straywire.module.End;
import straywire.module.Entry;
import straywire.module.Module;
import straywire.module.ModuleFile;
import straywire.module.Point;
import straywire.observe.Instruments;
import straywire.observe.ReadingTable;
import straywire.observe.Step;
import straywire.observe.StepSeconds;
import straywire.parts.ShippedParts;
import straywire.ranking.Diagnosis;
import straywire.sim.BoardState;
import straywire.sim.Boards;
import straywire.sim.Signal;
import straywire.sim.Wiring;

class HalfSplitTest {
  private static final Module MODULE =
      ModuleFile.read(Path.of("cases/beat-memory/module.yaml"), new ShippedParts());

  /** A few faults will do: every one costs a board of its own below. */
  private static final List<Hypothesis> HYPOTHESES =
      FaultExpansion.expandAll(MODULE, RuleBase.shipped().propose(MODULE), PriorsFile.shipped())
          .subList(0, 90);

  private static final ReadingTable TABLE = ReadingTable.shipped();

  private static List<StepChoice.Worth<Step>> menu(Diagnosis diagnosis, Instruments instruments) {
    return new Outlooks(StepSeconds.shipped(), Questions.none(MODULE))
        .survey(diagnosis, instruments)
        .steps();
  }

  private static Diagnosis powered() {
    Diagnosis diagnosis = new Diagnosis(MODULE, HYPOTHESES, TABLE);
    diagnosis.accept(new Entry.Power(true), h -> 0);
    return diagnosis;
  }

  @Test
  void touchesThePointThatIsAsLikelyToReadAsMeantAsNot() {
    Diagnosis diagnosis = powered();
    List<StepChoice.Worth<Step>> menu = menu(diagnosis, Instruments.USUAL);

    Step picked = HalfSplit.pick(diagnosis, menu);

    assertThat(picked).isInstanceOf(Step.Measure.class);
    double best =
        menu.stream()
            .map(StepChoice.Worth::step)
            .filter(s -> s instanceof Step.Measure m && m.holding().isEmpty())
            .mapToDouble(s -> unevenness(((Step.Measure) s).point()))
            .min()
            .orElseThrow();
    assertThat(unevenness(((Step.Measure) picked).point())).isCloseTo(best, within(1e-12));
  }

  /** One board at a time, every fault as likely as its prior says. */
  private static double unevenness(Point point) {
    double sum = 0;
    double asMeant = 0;
    int band = TABLE.band(TABLE.usualVolts(signal(HYPOTHESES.get(0), point)));
    for (Hypothesis hypothesis : HYPOTHESES) {
      sum += hypothesis.prior();
      asMeant += hypothesis.prior() * TABLE.meter(signal(hypothesis, point), band);
    }
    return Math.abs(asMeant / sum - 0.5);
  }

  private static Signal signal(Hypothesis hypothesis, Point point) {
    Wiring wiring = new Wiring(MODULE);
    Boards board = new Boards(wiring, List.of(new VariationOf(wiring).compile(hypothesis)));
    BoardState state = board.powerUp(board.off());
    long[] lanes = board.signals(state, 0, point);
    for (Signal signal : Signal.values()) {
      if (lanes[signal.ordinal()] != 0) {
        return signal;
      }
    }
    throw new IllegalStateException("No signal at " + point);
  }

  @Test
  void withoutAMeterTakesTheStepWithTheMostBits() {
    Diagnosis diagnosis = powered();
    List<StepChoice.Worth<Step>> menu = menu(diagnosis, Instruments.LAMPS_ONLY);

    Step picked = HalfSplit.pick(diagnosis, menu);

    double most = menu.stream().mapToDouble(StepChoice.Worth::bits).max().orElseThrow();
    assertThat(menu).anyMatch(w -> w.step().equals(picked) && w.bits() == most);
  }

  @Test
  void aHeldButtonIsNoHalfSplit() {
    Step held = new Step.Measure(new Point(End.pin("U1", 3), true), Optional.of("WRITE"));
    Step work = new Step.Work(Map.of(), Optional.empty(), List.of());

    assertThat(
            HalfSplit.pick(
                powered(),
                List.of(new StepChoice.Worth<>(work, 1, 1), new StepChoice.Worth<>(held, 0.5, 1))))
        .isEqualTo(work);
  }
}
