package straywire.steps;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import org.junit.jupiter.api.Test;
import straywire.faults.FaultExpansion;
import straywire.faults.Hypothesis;
import straywire.faults.Mechanism;
import straywire.faults.PriorsFile;
import straywire.faults.Suggestion;
import straywire.module.ControlState;
import straywire.module.End;
import straywire.module.Entry;
import straywire.module.Module;
import straywire.module.ModuleFile;
import straywire.module.Point;
import straywire.observe.Instruments;
import straywire.observe.Step;
import straywire.parts.ShippedParts;
import straywire.ranking.Bank;
import straywire.sim.BoardState;

class StepMenuTest {
  private static final Map<String, Boolean> AT_REST =
      ControlState.atStart(DiagnosisBench.MODULE).levels();

  private static final List<Hypothesis> LIVE =
      List.of(
          DiagnosisBench.sound(0.5),
          DiagnosisBench.missing("A1-U1.15", 0.3),
          DiagnosisBench.leg("U1.13", 0.2));

  private static final Instruments ALL = new Instruments(true, true, true, true);

  private static StepMenu menu(Instruments instruments) {
    return new StepMenu(DiagnosisBench.MODULE, instruments);
  }

  private static BoardState state(Entry... entries) {
    Bank bank = DiagnosisBench.bank(DiagnosisBench.sound(1));
    for (Entry entry : entries) {
      bank.accept(entry, new double[1]);
    }
    return bank.state();
  }

  private static List<BoardState> states() {
    return List.of(
        state(DiagnosisBench.POWER_ON),
        state(DiagnosisBench.POWER_ON, DiagnosisBench.ADDRESS_FIVE));
  }

  @Test
  void noSettingIsOfferedTwice() {
    for (BoardState state : states()) {
      assertThat(menu(ALL).work(state, LIVE)).doesNotHaveDuplicates().hasSizeGreaterThan(50);
    }
  }

  @Test
  void everySettingMovesOnlyWhatIsNotThereYet() {
    for (BoardState state : states()) {
      for (Step.Work step : menu(ALL).work(state, LIVE)) {
        step.set()
            .forEach(
                (control, level) ->
                    assertThat(state.controls()).doesNotContainEntry(control, level));
      }
    }
  }

  @Test
  void lookingAgainWithoutDoingAnythingIsNoStep() {
    for (BoardState state : states()) {
      assertThat(menu(ALL).work(state, LIVE))
          .noneMatch(step -> step.set().isEmpty() && step.press().isEmpty());
    }
  }

  @Test
  void everyAddressAndTheButtonAreOnTheMenu() {
    List<Step.Work> work = menu(ALL).work(state(DiagnosisBench.POWER_ON), LIVE);
    List<String> words = List.of("memory", "bus");
    for (int address = 1; address < 16; address++) {
      Map<String, Boolean> set = new java.util.TreeMap<>();
      for (int bit = 0; bit < 4; bit++) {
        if ((address >>> bit & 1) != 0) {
          set.put("A" + bit, true);
        }
      }
      assertThat(work)
          .contains(
              new Step.Work(set, Optional.empty(), words),
              new Step.Work(set, Optional.of("write"), words));
    }
    assertThat(work).contains(new Step.Work(Map.of(), Optional.of("write"), words));
  }

  @Test
  void settingsNeedNoInstrument() {
    BoardState on = state(DiagnosisBench.POWER_ON);
    assertThat(menu(Instruments.LAMPS_ONLY).work(on, LIVE)).isEqualTo(menu(ALL).work(on, LIVE));
  }

  @Test
  void withLampsOnlyNothingIsTouchedLookedOverOrExchanged() {
    StepMenu menu = menu(Instruments.LAMPS_ONLY);
    assertThat(menu.points(LIVE)).isEmpty();
    assertThat(menu.rounds()).isEmpty();
    assertThat(menu.subjects(LIVE)).isEmpty();
    assertThat(menu.beeps(LIVE, AT_REST)).isEmpty();
    assertThat(menu.parts(LIVE)).isEmpty();
  }

  @Test
  void eachInstrumentBringsItsOwnSteps() {
    StepMenu eyes = menu(new Instruments(true, false, false, false));
    assertThat(eyes.subjects(LIVE)).contains("jumper A1-U1.15", "leg U1.13");
    assertThat(eyes.beeps(LIVE, AT_REST)).isEmpty();

    StepMenu meter = menu(new Instruments(false, true, false, false));
    assertThat(meter.beeps(LIVE, AT_REST)).isNotEmpty().doesNotHaveDuplicates();
    assertThat(meter.rounds()).hasSize(2);
    assertThat(meter.points(LIVE)).isNotEmpty().doesNotHaveDuplicates().isSorted();
    assertThat(meter.subjects(LIVE)).isEmpty();

    StepMenu probe = menu(new Instruments(false, false, true, false));
    assertThat(probe.points(LIVE)).isEqualTo(meter.points(LIVE));
    assertThat(probe.beeps(LIVE, AT_REST)).isEmpty();
    assertThat(probe.rounds()).isEmpty();

    StepMenu spares = menu(new Instruments(false, false, false, true));
    assertThat(spares.parts(LIVE)).containsExactly("U1");
    assertThat(spares.points(LIVE)).isEmpty();
  }

  @Test
  void aSwitchThatWouldJoinTheTwoAnywayIsOpenedBeforeABeep() {
    Point row = new Point(End.pin("U1", 15), false);
    Point ground = new Point(new End(End.Kind.RAIL, "GND", 0), false);
    List<Hypothesis> shorted =
        List.of(
            FaultExpansion.expand(
                DiagnosisBench.MODULE,
                new Suggestion("T-01", Mechanism.SHORTED_LOW, List.of("U1.15"), 1, "why"),
                PriorsFile.shipped()));
    Map<String, Boolean> controls = new TreeMap<>(AT_REST);
    controls.put("A1", false);
    assertThat(menu(ALL).beeps(shorted, controls))
        .contains(new Step.Beep(row, ground, Map.of("A1", true)));
    controls.put("A1", true);
    assertThat(menu(ALL).beeps(shorted, controls)).contains(new Step.Beep(row, ground));
  }

  @Test
  void aSwitchBetweenLinesIsMovedAwayBeforeABeepFromOneOfThemToTheOther() {
    Module module =
        ModuleFile.parse(
            "m.yaml",
            """
            format: straywire-module/1
            name: sketch
            title: sketch
            rails: {VCC: {level: supply}, GND: {level: ground}}
            parts: {U1: {type: 74x04, family: LS}}
            controls:
              side: {kind: switch, low-throw: left, high-throw: right}
            nets:
              VCC: [VCC, U1.14]
              GND: [GND, U1.7]
              LEFT: [U1.2, left]
              RIGHT: [U1.4, right]
              D: [side, U1.5]
            """,
            new ShippedParts());
    StepMenu menu = new StepMenu(module, ALL);
    Point left = new Point(End.pin("U1", 2), false);
    Point common = new Point(End.pin("U1", 5), false);
    Point right = new Point(End.pin("U1", 4), false);
    List<Hypothesis> bridged =
        List.of(
            bridged(module, "U1.2", "U1.5"),
            bridged(module, "U1.4", "U1.5"),
            bridged(module, "U1.2", "U1.4"));
    assertThat(menu.beeps(bridged, Map.of("side", false)))
        .contains(
            new Step.Beep(left, common, Map.of("side", true)),
            new Step.Beep(right, common),
            new Step.Beep(left, right));
    assertThat(menu.beeps(bridged, Map.of("side", true)))
        .contains(
            new Step.Beep(left, common),
            new Step.Beep(right, common, Map.of("side", false)),
            new Step.Beep(left, right));
  }

  private static Hypothesis bridged(Module module, String a, String b) {
    return FaultExpansion.expand(
        module,
        new Suggestion("T-01", Mechanism.BRIDGED, List.of(a, b), 1, "why"),
        PriorsFile.shipped());
  }

  @Test
  void aLegAndItsRowAreBothPointsAndBeepedAgainstEachOther() {
    Point leg = new Point(End.pin("U1", 13), true);
    Point row = new Point(End.pin("U1", 13), false);
    List<Hypothesis> bent = List.of(DiagnosisBench.leg("U1.13", 1));
    assertThat(menu(ALL).points(bent)).contains(leg, row);
    assertThat(menu(ALL).beeps(bent, AT_REST)).contains(new Step.Beep(leg, row));
  }

  @Test
  void nothingWrongAloneGivesNothingToTouch() {
    List<Hypothesis> sound = List.of(DiagnosisBench.sound(1));
    assertThat(menu(ALL).points(sound)).isEmpty();
    assertThat(menu(ALL).subjects(sound)).isEmpty();
    assertThat(menu(ALL).parts(sound)).isEmpty();
  }

  @Test
  void aButtonMayBeHeldWhileTouching() {
    List<Point> points = menu(ALL).points(LIVE);
    assertThat(menu(ALL).holds(points))
        .containsOnlyKeys(Optional.empty(), Optional.of("write"))
        .containsEntry(Optional.empty(), points);
  }
}
