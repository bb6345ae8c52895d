package straywire.sim;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;
import straywire.module.ChangeOver;
import straywire.module.Control;

/**
 * Switches and buttons with two contacts. That a latch of two gates behind a change-over hides its
 * bounce is the published remedy: EE Journal, "Ultimate Guide to Switch Debounce (Part 5)".
 */
class ChangeOverTest {
  private static final Control STEP =
      new Control(
          "step",
          Control.Kind.BUTTON,
          "",
          "GND",
          "VCC",
          1000,
          true,
          Optional.of(new ChangeOver.OtherThrow("step-up")));

  private static final Control SIDE =
      new Control(
          "side",
          Control.Kind.SWITCH,
          "",
          "GND",
          "",
          0,
          false,
          Optional.of(new ChangeOver.OtherRail("VCC")));

  private static final Control PICK = between("pick", Control.Kind.SWITCH, "a-down", "a-up");

  private static Control between(String label, Control.Kind kind, String low, String high) {
    ChangeOver lines = new ChangeOver.BetweenLines(low, high);
    return new Control(label, kind, "", "", "", 0, false, Optional.of(lines));
  }

  /** The two throws into a latch of two gates, the latch into a counter. */
  private static Sketch latched() {
    return counter()
        .part("U2", "74x00", "LS")
        .wire("step", "U2.1")
        .wire("step-up", "U2.5")
        .wire("U2.3", "U2.4", "U1.CLK")
        .wire("U2.6", "U2.2");
  }

  /** The first throw straight into a counter. */
  private static Sketch unlatched() {
    return counter().wire("step", "U1.CLK");
  }

  private static Sketch counter() {
    return new Sketch()
        .control(STEP)
        .control(new Control("clear", Control.Kind.BUTTON, "", "GND", "VCC", 1000, true))
        .part("U1", "74x161", "LS")
        .wire("clear", "U1./CLR")
        .wire("VCC", "U1.ENP", "U1.ENT", "U1./LOAD");
  }

  private static Variation with(Variation.ControlFault fault, String... contacts) {
    Variation variation = new Variation();
    for (String contact : contacts) {
      variation.control(contact, fault);
    }
    return variation;
  }

  private static int count(Sketch.Running on) {
    return on.number("U1.QD", "U1.QC", "U1.QB", "U1.QA");
  }

  @ParameterizedTest
  @EnumSource(names = {"CLOSES_TWICE", "CLOSES_THREE_TIMES", "CLOSES_FOUR_TIMES"})
  void aLatchHidesTheBounceOfEitherThrow(Variation.ControlFault fault) {
    Sketch.Running on = latched().on(with(fault, "step", "step-up")).pulse("clear");
    on.pulse("step");
    assertThat(count(on)).isEqualTo(1);
    on.pulse("step").pulse("step");
    assertThat(count(on)).isEqualTo(3);
  }

  @Test
  void withoutTheLatchEveryClosingCounts() {
    Sketch.Running on =
        unlatched().on(with(Variation.ControlFault.CLOSES_THREE_TIMES, "step")).pulse("clear");
    on.pulse("step");
    assertThat(count(on)).isEqualTo(3);
  }

  @Test
  void theLatchHoldsWhileTheContactIsOnItsWay() {
    Variation dead = with(Variation.ControlFault.NEVER_CLOSES, "step");
    Sketch.Running on = latched().on(dead).pulse("clear");
    assertThat(on.at("U2.3")).isEqualTo(Signal.LOW);
    on.pulse("step");
    assertThat(count(on)).as("it never reaches the first throw").isZero();
  }

  @Test
  void aLatchThatHoldsWhateverItHoldsGivesNoEdge() {
    Sketch.Running on =
        latched().on(with(Variation.ControlFault.NEVER_CLOSES, "step", "step-up")).pulse("clear");
    assertThat(on.at("U2.3")).as("nobody knows which way it woke up").isEqualTo(Signal.UNKNOWN);
    on.pulse("step").pulse("step");
    assertThat(on.at("U1.QA")).as("but it does not move").isEqualTo(Signal.LOW);
  }

  @Test
  void aClockThatHangsOpenAtACmosPartMayMoveOfItself() {
    Sketch.Running on =
        new Sketch()
            .control("clear", true)
            .part("U1", "74x161", "HC")
            .wire("clear", "U1./CLR")
            .wire("VCC", "U1.ENP", "U1.ENT", "U1./LOAD")
            .on()
            .pulse("clear");
    assertThat(on.at("U1.QA")).isEqualTo(Signal.UNKNOWN);
  }

  @Test
  void throwsWiredTheWrongWayRoundCountWhenTheButtonIsLetGo() {
    Sketch.Running on =
        latched().on(with(Variation.ControlFault.EXCHANGED, "step", "step-up")).pulse("clear");
    on.set("step", false);
    assertThat(count(on)).isZero();
    on.set("step", true);
    assertThat(count(on)).isEqualTo(1);
  }

  @Test
  void aChangeOverBetweenTheRailsNeedsNoResistor() {
    Sketch.Running on =
        new Sketch().control(SIDE).part("U1", "74x04", "LS").wire("side", "U1.1").on();
    assertThat(on.at("U1.2")).isEqualTo(Signal.HIGH);
    on.set("side", true);
    assertThat(on.at("side")).isEqualTo(Signal.RAIL_HIGH);
    assertThat(on.at("U1.2")).isEqualTo(Signal.LOW);
    on.set("side", false);
    assertThat(on.at("U1.2")).isEqualTo(Signal.HIGH);
  }

  @Test
  void onItsWayBetweenTheRailsTheLineIsOpen() {
    assertThat(flipFlopAfterTheSwitchFell("LS")).as("open reads high").isEqualTo(Signal.LOW);
    assertThat(flipFlopAfterTheSwitchFell("HC"))
        .as("open reads either way")
        .isEqualTo(Signal.UNKNOWN);
  }

  /** A flip-flop cleared while its clock is high; then the switch that clocks it goes low. */
  private static Signal flipFlopAfterTheSwitchFell(String family) {
    return new Sketch()
        .control(SIDE)
        .control(STEP)
        .part("U3", "74x74", family)
        .wire("side", "U3.1CLK")
        .wire("VCC", "U3.1D", "U3./1PRE")
        .wire("step", "U3./1CLR")
        .on()
        .set("side", true)
        .pulse("step")
        .set("side", false)
        .at("U3.1Q");
  }

  @Test
  void aContactThatNeverOpensMeetsTheOtherAndTheSupplyCollapses() {
    Sketch.Running on =
        new Sketch()
            .control(SIDE)
            .part("U1", "74x04", "HC")
            .wire("side", "U1.1")
            .on(with(Variation.ControlFault.ALWAYS_CLOSED, "side"));
    on.set("side", true);
    assertThat(on.at("U1.2")).isEqualTo(Signal.NOTHING);
  }

  /** A switch that passes on the one or the other of two inverted levels. */
  private static Sketch selector() {
    return new Sketch()
        .control(PICK)
        .control("A", false)
        .control("B", true)
        .part("U1", "74x04", "LS")
        .wire("A", "U1.1")
        .wire("B", "U1.3")
        .wire("U1.2", "a-down")
        .wire("U1.4", "a-up")
        .wire("pick", "U1.5");
  }

  @Test
  void aSwitchBetweenLinesPassesOnTheOneOrTheOther() {
    Sketch.Running on = selector().on();
    assertThat(on.at("U1.6")).as("the inverse of A").isEqualTo(Signal.LOW);
    on.set("pick", true);
    assertThat(on.at("U1.6")).as("the inverse of B").isEqualTo(Signal.HIGH);
    on.set("B", false);
    assertThat(on.at("U1.6")).isEqualTo(Signal.LOW);
    on.set("A", true).set("pick", false);
    assertThat(on.at("U1.6")).isEqualTo(Signal.HIGH);
    assertThat(on.joined("pick", "a-down")).isTrue();
    assertThat(on.joined("pick", "a-up")).isFalse();
  }

  @Test
  void aThrowThatNeverClosesLeavesTheCommonOpen() {
    Sketch.Running on = selector().on(with(Variation.ControlFault.NEVER_CLOSES, "a-down"));
    assertThat(on.at("pick")).isEqualTo(Signal.OPEN_INPUT);
    assertThat(on.set("pick", true).at("pick")).isEqualTo(Signal.LOW);
  }

  @Test
  void exchangedThrowsPassOnTheOtherLine() {
    Sketch.Running on = selector().on(with(Variation.ControlFault.EXCHANGED, "a-down", "a-up"));
    assertThat(on.at("U1.6")).as("the inverse of B").isEqualTo(Signal.HIGH);
  }

  @Test
  void aThrowThatNeverOpensJoinsTheTwoLinesAndTheirOutputsFight() {
    Sketch.Running on = selector().on(with(Variation.ControlFault.ALWAYS_CLOSED, "a-down"));
    assertThat(on.set("pick", true).at("pick")).isEqualTo(Signal.FIGHT_LOW);
  }

  @Test
  void theCommonMayBeOnARailAndTheThrowsMayBePulledByResistors() {
    Sketch.Running on =
        new Sketch()
            .control(between("down", Control.Kind.BUTTON, "a-up", "a-down"))
            .resistor("R1", "VCC", 1000)
            .resistor("R2", "VCC", 1000)
            .part("U2", "74x00", "HC")
            .wire("GND", "down")
            .wire("a-down", "R1", "U2.1")
            .wire("a-up", "R2", "U2.5")
            .wire("U2.3", "U2.4")
            .wire("U2.6", "U2.2")
            .on();
    assertThat(on.at("U2.3")).isEqualTo(Signal.LOW_CMOS);
    assertThat(on.at("U2.1")).isEqualTo(Signal.PULLED_HIGH);
    assertThat(on.at("U2.5")).isEqualTo(Signal.RAIL_LOW);
    on.set("down", true);
    assertThat(on.at("U2.3")).isEqualTo(Signal.HIGH_CMOS);
  }

  @ParameterizedTest
  @EnumSource(names = {"CLOSES_TWICE", "CLOSES_THREE_TIMES", "CLOSES_FOUR_TIMES"})
  void aBounceOnAThrowToGroundCountsAtAnOpenInputThatReadsHigh(Variation.ControlFault fault) {
    Sketch.Running on =
        counter()
            .control(between("tick", Control.Kind.SWITCH, "a-down", "a-up"))
            .wire("GND", "a-down")
            .wire("VCC.b", "a-up")
            .segment("VCC.b", "VCC")
            .wire("tick", "U1.CLK")
            .on(with(fault, "a-down"));
    on.set("tick", true).pulse("clear");
    assertThat(count(on)).isZero();
    on.set("tick", false);
    assertThat(count(on))
        .as("open on its way it is high already; then one edge for each further opening")
        .isEqualTo(fault.closings() - 1);
    on.set("tick", true);
    assertThat(count(on)).isEqualTo(fault.closings());
  }

  @Test
  void aLineThatIsPassedOnKeepsItsClockStillWhileTheSwitchMovesBetweenLikeLevels() {
    Sketch.Running on =
        counter()
            .control(PICK)
            .control("A", true)
            .control("B", true)
            .wire("A", "a-down")
            .wire("B", "a-up")
            .wire("pick", "U1.CLK")
            .on()
            .pulse("clear");
    on.set("pick", true).set("pick", false);
    assertThat(count(on)).isZero();
    on.pulse("A");
    assertThat(count(on)).isEqualTo(1);
    on.pulse("B");
    assertThat(count(on)).as("the other line").isEqualTo(1);
  }

  @Test
  void aContactAtRestFollowsItsRailWhenASwitchTakesTheGroundAway() {
    Sketch sketch =
        new Sketch()
            .control(PICK)
            .control(new Control("S", Control.Kind.SWITCH, "", "GND.b", "VCC", 1000, false))
            .segment("GND.b", "GND")
            .part("U1", "74x04", "LS")
            .wire("GND", "pick")
            .wire("GND.b", "a-down")
            .wire("S", "U1.1");
    Variation unlinked = new Variation();
    unlinked.remove(sketch.wiring().link("GND.b"));
    Sketch.Running on = sketch.on(unlinked);
    assertThat(on.at("U1.2")).isEqualTo(Signal.HIGH);
    assertThat(on.set("pick", true).at("U1.2")).as("its rail hangs open").isEqualTo(Signal.LOW);
    assertThat(on.set("pick", false).at("U1.2")).isEqualTo(Signal.HIGH);
  }
}
