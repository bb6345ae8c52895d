package straywire.steps;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import java.util.List;
import java.util.Set;
import java.util.TreeSet;
import org.junit.jupiter.api.Test;
import straywire.faults.Edit;
import straywire.faults.Hypothesis;
import straywire.faults.LegEdit;
import straywire.faults.Mechanism;
import straywire.faults.SupplyEdit;
import straywire.faults.WireEdit;
import straywire.module.End;
import straywire.module.Jumper;
import straywire.module.Module;
import straywire.module.ModuleFile;
import straywire.observe.Instruments;
import straywire.observe.Step;
import straywire.parts.ShippedParts;
import straywire.sim.BoardState;
import straywire.sim.Boards;
import straywire.sim.Variation;
import straywire.sim.Wiring;

/** Seven modules on one supply: what is done at one of them says nothing of the others. */
class IslandsTest {
  private static final Module MACHINE =
      ModuleFile.read(
          Path.of("src/test/resources/figures/made-up-machine.yaml"), new ShippedParts());

  private static final Islands ISLANDS = new Islands(MACHINE);

  private static Hypothesis fault(Edit edit) {
    return new Hypothesis(
        "fault", Mechanism.JUMPER_MISSING, List.of(edit), 1, "", "", "a fault", "mend it");
  }

  private static Hypothesis missing(String from, String to) {
    return fault(new WireEdit.JumperRemoved(jumper(from, to)));
  }

  private static Jumper jumper(String from, String to) {
    return MACHINE.jumpers().stream()
        .filter(j -> j.from().toString().equals(from) && j.to().toString().equals(to))
        .findFirst()
        .orElseThrow();
  }

  private static List<Step.Work> work(Hypothesis... live) {
    Boards boards = new Boards(new Wiring(MACHINE), List.of(new Variation()));
    BoardState on = boards.powerUp(boards.off());
    return new StepMenu(MACHINE, Instruments.USUAL).work(on, List.of(live));
  }

  private static Set<String> moved(List<Step.Work> steps) {
    Set<String> moved = new TreeSet<>();
    steps.forEach(step -> moved.addAll(step.set().keySet()));
    steps.forEach(step -> step.press().ifPresent(moved::add));
    return moved;
  }

  @Test
  void railsJoinNothing() {
    assertThat(ISLANDS.of("U1")).isEqualTo(ISLANDS.of("a-R7")).isEqualTo(ISLANDS.of("a-drive"));
    assertThat(ISLANDS.of("U1")).isNotEqualTo(ISLANDS.of("U6"));
  }

  @Test
  void onlyTheModuleInQuestionIsWorked() {
    assertThat(moved(work(missing("a-A0", "U1.1"))))
        .isNotEmpty()
        .allMatch(control -> control.startsWith("a-"));
    assertThat(moved(work(missing("VCC", "U6.20"))))
        .isNotEmpty()
        .allMatch(control -> control.startsWith("b-"));
  }

  @Test
  void twoModulesThatTouchAreBothInQuestion() {
    Set<String> moved = moved(work(fault(new LegEdit.LegsInOneRow(pin(5, 20), pin(6, 20)))));
    assertThat(moved).anyMatch(c -> c.startsWith("a-")).anyMatch(c -> c.startsWith("b-"));
    assertThat(moved).noneMatch(c -> c.startsWith("e-"));
  }

  @Test
  void whatChangesRailsAloneIsLookedForEverywhere() {
    assertThat(moved(work(fault(new SupplyEdit.RailsJoined()))))
        .anyMatch(c -> c.startsWith("a-"))
        .anyMatch(c -> c.startsWith("g-"));
  }

  @Test
  void noButtonIsPressedAfterControlsOfAnotherModule() {
    assertThat(work(fault(new SupplyEdit.RailsJoined())))
        .filteredOn(step -> step.press().isPresent() && step.set().size() == 1)
        .isNotEmpty()
        .allMatch(
            step ->
                step.set().keySet().iterator().next().charAt(0)
                    == step.press().orElseThrow().charAt(0));
  }

  private static End pin(int part, int number) {
    return End.pin("U" + part, number);
  }
}
