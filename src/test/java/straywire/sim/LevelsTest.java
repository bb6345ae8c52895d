package straywire.sim;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.api.Test;
import straywire.module.Control;

/** Levels on nets: open ends, fights, released lines, pulls, lamps. */
class LevelsTest {
  private static Sketch inverter(String family) {
    return new Sketch().control("S1", false).part("U1", "74x04", family);
  }

  @Test
  void anOpenInputOfAnLsPartReadsHighAndMeasuresAsOpen() {
    Sketch.Running on = inverter("LS").on();
    assertThat(on.at("U1.1")).isEqualTo(Signal.OPEN_INPUT);
    assertThat(on.at("U1.2")).isEqualTo(Signal.LOW);
  }

  @Test
  void anOpenInputOfAnHcPartReadsAnything() {
    Sketch.Running on = inverter("HC").on();
    assertThat(on.at("U1.1")).isEqualTo(Signal.NOTHING);
    assertThat(on.at("U1.2")).isEqualTo(Signal.UNKNOWN);
  }

  @Test
  void aRowThatItsLegDoesNotMeetHasNothingOnIt() {
    Sketch sketch = inverter("LS").wire("S1", "U1.1").lamp("L1", "GND", 1000).wire("U1.2", "L1");
    Variation bent = new Variation();
    bent.remove(sketch.wiring().contact(sketch.end("U1.2")));
    Sketch.Running on = sketch.on(bent);
    assertThat(on.at("U1.2")).isEqualTo(Signal.HIGH);
    assertThat(on.at("U1.2/row")).isEqualTo(Signal.NOTHING);
    assertThat(on.lamp("L1")).isEqualTo("dark");
  }

  private static Sketch twoOutputsTied(String type, String family, String otherFamily) {
    return new Sketch()
        .control("S1", false)
        .control("S2", true)
        .part("U1", "74x04", family)
        .part("U2", type, otherFamily)
        .part("U3", "74x04", "LS")
        .wire("S1", "U1.1");
  }

  @Test
  void ofTwoLsOutputsThatFightTheLowOneWins() {
    Sketch.Running on =
        twoOutputsTied("74x04", "LS", "LS").wire("S2", "U2.1").wire("U1.2", "U2.2", "U3.1").on();
    assertThat(on.at("U3.1")).isEqualTo(Signal.FIGHT_LOW);
    assertThat(on.at("U3.2")).isEqualTo(Signal.HIGH);
    on.set("S2", false);
    assertThat(on.at("U3.1")).isEqualTo(Signal.HIGH);
  }

  @Test
  void twoHcOutputsThatFightLeaveTheLevelToNobody() {
    Sketch.Running on =
        twoOutputsTied("74x04", "HC", "HC").wire("S2", "U2.1").wire("U1.2", "U2.2", "U3.1").on();
    assertThat(on.at("U3.1")).isEqualTo(Signal.FIGHT);
    assertThat(on.at("U3.2")).isEqualTo(Signal.UNKNOWN);
  }

  private static Sketch againstATransceiver() {
    // U2 drives B from A while its output enable is low; U1 drives the same line.
    return twoOutputsTied("74x245", "LS", "LS")
        .control("S3", true)
        .wire("VCC", "U2.DIR")
        .wire("S3", "U2./OE")
        .wire("S2", "U2.A1")
        .wire("U1.2", "U2.B1", "U3.1");
  }

  @Test
  void aBusDriversLowWinsOverAnOrdinaryLsHigh() {
    Sketch.Running on = againstATransceiver().on().set("S2", false).set("S3", false);
    assertThat(on.at("U3.1")).isEqualTo(Signal.FIGHT_LOW);
  }

  @Test
  void anOrdinaryLsLowAgainstABusDriversHighIsUndecided() {
    Sketch.Running on = againstATransceiver().on().set("S1", true).set("S3", false);
    assertThat(on.at("U3.1")).isEqualTo(Signal.FIGHT);
    assertThat(on.at("U3.2")).isEqualTo(Signal.UNKNOWN);
  }

  @Test
  void anOutputShortedToGroundIsAtGround() {
    Sketch sketch = inverter("LS").wire("S1", "U1.1", "U1.13").wire("U1.2", "U1.3");
    Variation shorted = new Variation();
    Wiring wiring = sketch.wiring();
    shorted.join(wiring.leg(sketch.end("U1.2")), wiring.rail("GND"));
    Sketch.Running on = sketch.on(shorted);
    assertThat(on.at("U1.2")).isEqualTo(Signal.RAIL_LOW);
    assertThat(on.at("U1.4")).isEqualTo(Signal.HIGH);
  }

  private static Sketch bus() {
    return new Sketch()
        .control("S1", true)
        .control("OE", true)
        .part("U1", "74x245", "LS")
        .lamp("L1", "GND", 1000)
        .wire("VCC", "U1.DIR")
        .wire("S1", "U1.A1")
        .wire("OE", "U1./OE");
  }

  @Test
  void aReleasedBusShowsTheInputsThatLeanOnItAndLightsNoLamp() {
    Sketch.Running on = bus().wire("U1.B1", "L1").on();
    assertThat(on.at("U1.B1")).isEqualTo(Signal.OPEN_INPUT);
    assertThat(on.lamp("L1")).isEqualTo("dark");
    on.set("OE", false);
    assertThat(on.at("U1.B1")).isEqualTo(Signal.HIGH);
    assertThat(on.lamp("L1")).isEqualTo("lit");
  }

  @Test
  void aReleasedLineWithoutAnyInputHasNothingOnIt() {
    Sketch.Running on =
        new Sketch().control("OE", true).part("U1", "74x244", "LS").wire("OE", "U1./1G").on();
    assertThat(on.at("U1.1Y1")).isEqualTo(Signal.NOTHING);
  }

  @Test
  void anOpenCollectorIsHighByItsPullOnly() {
    Control pull = new Control("R1", Control.Kind.SWITCH, "", "GND", "VCC", 1000, true);
    Sketch.Running on =
        new Sketch()
            .control("S1", true)
            .control(pull)
            .part("U1", "74x05", "LS")
            .wire("S1", "U1.1")
            .wire("U1.2", "R1")
            .on();
    assertThat(on.at("U1.2")).isEqualTo(Signal.LOW);
    on.set("S1", false);
    assertThat(on.at("U1.2")).isEqualTo(Signal.PULLED_HIGH);
  }

  @Test
  void aSwitchIsAtTheRailWhenClosedAndAtItsPullWhenOpen() {
    Sketch.Running on = inverter("LS").wire("S1", "U1.1").on();
    assertThat(on.at("S1")).isEqualTo(Signal.RAIL_LOW);
    on.set("S1", true);
    assertThat(on.at("S1")).isEqualTo(Signal.PULLED_HIGH);
    assertThat(on.at("U1.2")).isEqualTo(Signal.LOW);
  }

  @Test
  void aSwitchThatNeverClosesStaysAtItsPull() {
    Variation dead = new Variation();
    dead.control("S1", Variation.ControlFault.NEVER_CLOSES);
    Sketch.Running on = inverter("LS").wire("S1", "U1.1").on(dead).set("S1", false);
    assertThat(on.at("S1")).isEqualTo(Signal.PULLED_HIGH);
  }

  @Test
  void aSwitchThatIsAlwaysClosedStaysAtItsRail() {
    Variation stuck = new Variation();
    stuck.control("S1", Variation.ControlFault.ALWAYS_CLOSED);
    Sketch.Running on = inverter("LS").wire("S1", "U1.1").on(stuck).set("S1", true);
    assertThat(on.at("S1")).isEqualTo(Signal.RAIL_LOW);
  }

  @Test
  void anOpenSwitchWithoutItsPullLeavesAnLsInputOpen() {
    Variation noPull = new Variation();
    noPull.control("S1", Variation.ControlFault.NO_PULL);
    Sketch.Running on = inverter("LS").wire("S1", "U1.1").on(noPull).set("S1", true);
    assertThat(on.at("U1.1")).isEqualTo(Signal.OPEN_INPUT);
    assertThat(on.at("U1.2")).isEqualTo(Signal.LOW);
  }

  @Test
  void aLampToTheSupplyLightsOnALow() {
    Sketch.Running on =
        inverter("LS").wire("S1", "U1.1").lamp("L1", "VCC", 1000).wire("U1.2", "L1").on();
    assertThat(on.lamp("L1")).isEqualTo("dark");
    on.set("S1", true);
    assertThat(on.lamp("L1")).isEqualTo("lit");
  }

  @Test
  void aLampThatNeverLightsStaysDarkOnAHigh() {
    Variation dead = new Variation();
    dead.lamp("L1", Variation.LampFault.NEVER_LIGHTS);
    Sketch.Running on =
        inverter("LS").wire("S1", "U1.1").lamp("L1", "GND", 1000).wire("U1.2", "L1").on(dead);
    assertThat(on.at("L1")).isEqualTo(Signal.HIGH);
    assertThat(on.lamp("L1")).isEqualTo("dark");
  }

  @Test
  void aBareLedHoldsALevelBelowWhatAnHcInputTakesForHigh() {
    Sketch sketch =
        inverter("LS")
            .part("U2", "74x04", "HC")
            .lamp("L1", "GND", 1000)
            .wire("S1", "U1.1")
            .wire("U1.2", "L1", "U2.1", "U1.3");
    assertThat(sketch.on().at("U2.2")).isEqualTo(Signal.LOW_CMOS);
    Variation bare = new Variation();
    bare.lamp("L1", Variation.LampFault.NO_RESISTOR);
    Sketch.Running on = sketch.on(bare);
    assertThat(on.at("U2.1")).isEqualTo(Signal.CLAMPED_HIGH);
    assertThat(on.at("U2.2")).as("the HC part misreads it").isEqualTo(Signal.HIGH_CMOS);
    assertThat(on.at("U1.4")).as("an LS part has no margin left").isEqualTo(Signal.LOW);
    assertThat(on.lamp("L1")).isEqualTo("lit");
  }

  @Test
  void withoutASaneSupplyNoLogicIsSimulated() {
    Variation reversed = new Variation();
    reversed.noLogic();
    Sketch.Running on =
        inverter("LS").wire("S1", "U1.1").lamp("L1", "GND", 1000).wire("U1.2", "L1").on(reversed);
    assertThat(on.at("U1.2")).isEqualTo(Signal.NOTHING);
    assertThat(on.lamp("L1")).isEqualTo("dark");
  }

  @Test
  void aPartThatMisbehavesInSomeWayDrivesWhoKnowsWhat() {
    Variation odd = new Variation();
    odd.unlist("U1");
    Sketch.Running on = inverter("LS").wire("S1", "U1.1").on(odd);
    assertThat(on.at("U1.2")).isEqualTo(Signal.UNKNOWN);
    assertThat(on.at("U1.1")).isEqualTo(Signal.RAIL_LOW);
  }

  @Test
  void aDeadOutputLeavesItsLineToOthers() {
    Variation dead = new Variation();
    dead.killOutput("U1", 2);
    Sketch.Running on = inverter("LS").wire("S1", "U1.1").wire("U1.2", "U1.3").on(dead);
    assertThat(on.at("U1.2")).isEqualTo(Signal.OPEN_INPUT);
    assertThat(on.at("U1.4")).isEqualTo(Signal.LOW);
  }

  @Test
  void aStuckInputLeavesTheLevelOnItsLegAlone() {
    Variation stuck = new Variation();
    stuck.holdInput("U1", 1, true);
    Sketch.Running on = inverter("LS").wire("S1", "U1.1").on(stuck);
    assertThat(on.at("U1.1")).isEqualTo(Signal.RAIL_LOW);
    assertThat(on.at("U1.2")).isEqualTo(Signal.LOW);
  }

  @Test
  void anotherPartInTheSocketDoesItsOwnFunctionInItsLaneOnly() {
    Sketch sketch =
        new Sketch()
            .control("S1", false)
            .control("S2", true)
            .part("U1", "74x00", "LS")
            .wire("S1", "U1.1")
            .wire("S2", "U1.2");
    Variation wrong = new Variation();
    wrong.replace("U1", Sketch.type("74x32"), Sketch.family("LS"));
    Boards boards = new Boards(sketch.wiring(), java.util.List.of(new Variation(), wrong));
    BoardState state = boards.move(boards.powerUp(boards.off()), java.util.Map.of("S2", false));
    long[] signals = boards.signals(state, 0, sketch.point("U1.3"));
    assertThat(signals[Signal.HIGH.ordinal()]).as("NAND of two lows").isEqualTo(0b01);
    assertThat(signals[Signal.LOW.ordinal()]).as("OR of two lows").isEqualTo(0b10);
  }

  @Test
  void continuityFollowsCopperRailsAndClosedSwitches() {
    Sketch sketch =
        inverter("LS")
            .segment("GND.right", "GND")
            .wire("S1", "U1.1", "U1.3")
            .wire("GND.right", "U1.5");
    Variation broken = new Variation();
    broken.remove(sketch.wiring().contact(sketch.end("U1.14")));
    Sketch.Running on = sketch.on(broken);
    on.set("S1", true);
    assertThat(on.joined("S1", "U1.3")).isTrue();
    assertThat(on.joined("U1.1", "U1.5")).isFalse();
    assertThat(on.joined("U1.7", "U1.5")).as("by the ground rail and its link").isTrue();
    on.set("S1", false);
    assertThat(on.joined("S1", "GND")).as("through a closed switch").isTrue();
    on.set("S1", true);
    assertThat(on.joined("S1", "GND")).as("through an open switch").isFalse();
    assertThat(on.joined("U1.14", "VCC")).as("a leg out of its row").isFalse();
    assertThat(on.joined("U1.14/row", "VCC")).isTrue();
  }
}
