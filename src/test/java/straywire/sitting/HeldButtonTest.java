package straywire.sitting;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import straywire.advice.RuleBase;
import straywire.casebook.Workbench;
import straywire.module.ModuleFile;
import straywire.parts.ShippedParts;

/** A button that is held when the fault is named is let go for the repair, as hands do. */
class HeldButtonTest {
  private static final Workbench WORKBENCH =
      new Workbench(
          ModuleFile.read(Path.of("cases", "pedal-stepper", "module.yaml"), new ShippedParts()),
          RuleBase.shipped());

  @ParameterizedTest
  @ValueSource(
      strings = {"jumper-missing R2.2-R1", "jumper-missing pedal-R2.1", "jumper-missing U2.14-PED"})
  void theConfirmingRoundStartsWithItUp(String fault) {
    Sitting sitting = Sitting.unrecorded(WORKBENCH);
    SimulatedHand hand = new SimulatedHand(WORKBENCH, WORKBENCH.hypothesis(fault).orElseThrow(), 1);

    assertThat(hand.finish(sitting, 10)).isPresent();
    assertThat(sitting.now().controls().held()).isEmpty();
  }
}
