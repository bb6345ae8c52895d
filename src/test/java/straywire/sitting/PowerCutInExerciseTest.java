package straywire.sitting;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import straywire.advice.RuleBase;
import straywire.casebook.Workbench;
import straywire.module.BenchLog;
import straywire.module.Entry;
import straywire.module.EntryWords;
import straywire.module.Module;
import straywire.module.ModuleFile;
import straywire.parts.ShippedParts;
import straywire.sitting.Situation.Stage;

/** The exercise of the tune store cuts the power itself, to show that its words stay. */
class PowerCutInExerciseTest {
  private static final Module MODULE =
      ModuleFile.readShipped(Path.of("cases", "tune-store", "module.yaml"), new ShippedParts());

  private static final Workbench WORKBENCH = new Workbench(MODULE, RuleBase.shipped());

  private static Sitting worked(String fault) {
    Sitting sitting = Sitting.unrecorded(WORKBENCH);
    SimulatedHand hand = new SimulatedHand(WORKBENCH, WORKBENCH.hypothesis(fault).orElseThrow(), 1);
    assertThat(hand.finish(sitting, 20)).isPresent();
    return sitting;
  }

  private static long cuts(Sitting sitting) {
    return sitting.log().standing().stream()
        .map(BenchLog.Line::entry)
        .filter(e -> e.equals(new Entry.Power(false)))
        .count();
  }

  private static List<String> faults(Sitting sitting) {
    List<BenchLog.Line> lines = sitting.log().standing();
    return ((Entry.Finding) lines.get(lines.size() - 1).entry()).faults();
  }

  @Test
  void theExercisesOwnPowerCutTakesItOnToTheNextLook() {
    Sitting sitting = worked("nothing-wrong");
    assertThat(faults(sitting)).isEmpty();
    assertThat(cuts(sitting)).isEqualTo(1);
  }

  @Test
  void afterAPowerCutThatIsNotItsOwnTheExerciseBeginsAnew() {
    Sitting sitting = Sitting.unrecorded(WORKBENCH);
    SimulatedHand hand = new SimulatedHand(WORKBENCH, WORKBENCH.nothingWrong(), 1);
    Proposed first = sitting.now().next().orElseThrow();
    sitting.answer(hand.read(first));
    sitting.answer(hand.read(sitting.now().next().orElseThrow()));
    sitting.enter(new EntryWords(MODULE).parse("power off"));
    assertThat(sitting.now().next().orElseThrow().wanted()).isEqualTo(first.wanted());
    assertThat(sitting.now().next().orElseThrow().before()).contains(new Entry.Power(true));
    assertThat(sitting.now().stage()).isEqualTo(Stage.EXERCISING);
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "wrong-part U1 6116 HCT",
        "jumper-missing write-U1.21",
        "inverter-bypassed U3.1-U3.2",
        "wrong-part U2 74x540 HCT"
      })
  void aFaultIsFoundRepairedAndConfirmed(String fault) {
    assertThat(faults(worked(fault))).containsExactly(fault);
  }
}
