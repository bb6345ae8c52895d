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
}
