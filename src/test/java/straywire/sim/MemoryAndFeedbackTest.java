package straywire.sim;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.Map;
import org.junit.jupiter.api.Test;

/** What is remembered, clocked, traced back, or never comes to rest. */
class MemoryAndFeedbackTest {
  @Test
  void aCrossedPairOfNandsHoldsWhatItWasTold() {
    Sketch.Running on =
        new Sketch()
            .control("SET", true)
            .control("RESET", true)
            .control("S", false)
            .part("U1", "74x00", "LS")
            .wire("SET", "U1.1")
            .wire("RESET", "U1.5")
            .wire("U1.3", "U1.4")
            .wire("U1.6", "U1.2")
            .on();
    assertThat(on.at("U1.3")).as("after power-up").isEqualTo(Signal.UNKNOWN);
    on.pulse("SET");
    assertThat(on.at("U1.3")).isEqualTo(Signal.HIGH);
    assertThat(on.at("U1.6")).isEqualTo(Signal.LOW);
    on.pulse("RESET");
    assertThat(on.at("U1.3")).isEqualTo(Signal.LOW);
    on.set("S", true);
    assertThat(on.at("U1.3")).isEqualTo(Signal.LOW);
    on.powerCycle();
    assertThat(on.at("U1.3")).isEqualTo(Signal.UNKNOWN);
  }

  /** Two inverters and a NAND in a ring, which runs while RUN is high. */
  private static Sketch ring() {
    return new Sketch()
        .control("RUN", false)
        .control("S", false)
        .part("U1", "74x00", "LS")
        .part("U2", "74x04", "LS")
        .lamp("L1", "GND", 1000)
        .wire("RUN", "U1.1")
        .wire("U1.3", "U2.1")
        .wire("U2.2", "U2.3")
        .wire("U2.4", "U1.2", "L1")
        .wire("S", "U2.13");
  }

  @Test
  void aRingOfThreeInversionsDoesNotComeToRestAndDoesNotHang() {
    Sketch.Running on = ring().on();
    assertThat(on.at("U2.4")).isEqualTo(Signal.HIGH);
    on.set("RUN", true);
    assertThat(on.at("U2.4")).isEqualTo(Signal.UNSTABLE);
    assertThat(on.at("U2.2")).isEqualTo(Signal.UNSTABLE);
    assertThat(on.lamp("L1")).isEqualTo("either");
    assertThat(on.at("U2.12")).as("an inverter beside the ring").isEqualTo(Signal.HIGH);
  }

  @Test
  void aRunningRingRunsOnWhenAnotherSwitchMoves() {
    Sketch.Running on = ring().on().set("RUN", true).set("S", true).set("S", false);
    assertThat(on.at("U2.4")).isEqualTo(Signal.UNSTABLE);
    on.set("RUN", false);
    assertThat(on.at("U2.4")).isEqualTo(Signal.HIGH);
  }

  @Test
  void lanesTakenOverFromABoardWithARunningRingRunOn() {
    Sketch sketch = ring();
    Boards boards =
        new Boards(sketch.wiring(), java.util.List.of(new Variation(), new Variation()));
    BoardState state = boards.move(boards.powerUp(boards.off()), Map.of("RUN", true));
    Boards one = boards.select(new int[] {1});
    BoardState carried = boards.carry(state, new int[] {1}, one);
    assertThat(one.signals(carried, 0, sketch.point("U2.4"))[Signal.UNSTABLE.ordinal()])
        .isEqualTo(1);
  }

  private static Sketch flipFlop() {
    return new Sketch()
        .control("CLK", false)
        .control("D", true)
        .control("CLR", true)
        .part("U1", "74x74", "LS")
        .wire("CLK", "U1.1CLK", "U1.2CLK")
        .wire("CLR", "U1./1CLR", "U1./2CLR")
        .wire("VCC", "U1./1PRE", "U1./2PRE")
        .wire("D", "U1.1D")
        .wire("U1.1Q", "U1.2D");
  }

  @Test
  void aRegisterTakesItsInputOnTheRisingEdgeOnly() {
    Sketch.Running on = flipFlop().on();
    assertThat(on.at("U1.1Q")).as("after power-up").isEqualTo(Signal.UNKNOWN);
    on.pulse("CLR");
    assertThat(on.at("U1.1Q")).isEqualTo(Signal.LOW);
    on.set("CLK", true);
    assertThat(on.at("U1.1Q")).isEqualTo(Signal.HIGH);
    on.set("D", false).set("CLK", false);
    assertThat(on.at("U1.1Q")).as("on the falling edge").isEqualTo(Signal.HIGH);
    on.set("CLK", true);
    assertThat(on.at("U1.1Q")).isEqualTo(Signal.LOW);
  }

  @Test
  void aClockThatIsHighAtPowerUpIsNoEdge() {
    Sketch.Running on = flipFlop().on();
    on.set("CLK", true).powerCycle();
    assertThat(on.at("U1.1Q")).isEqualTo(Signal.UNKNOWN);
  }

  @Test
  void aChainOfRegistersShiftsOnePlaceAClock() {
    Sketch.Running on = flipFlop().on().pulse("CLR").set("CLK", true);
    assertThat(on.at("U1.1Q")).isEqualTo(Signal.HIGH);
    assertThat(on.at("U1.2Q")).as("what was in front before the edge").isEqualTo(Signal.LOW);
    on.set("D", false).pulse("CLK");
    assertThat(on.at("U1.1Q")).isEqualTo(Signal.LOW);
    assertThat(on.at("U1.2Q")).isEqualTo(Signal.HIGH);
    on.pulse("CLK");
    assertThat(on.at("U1.2Q")).isEqualTo(Signal.LOW);
  }

  @Test
  void aChainThatShiftsOnALateClockShiftsTwoPlaces() {
    // The second clock comes through two inverters: later than the data it should sample.
    Sketch.Running on =
        new Sketch()
            .control("CLK", false)
            .control("D", true)
            .control("CLR", true)
            .part("U1", "74x74", "LS")
            .part("U2", "74x04", "LS")
            .wire("CLK", "U1.1CLK", "U2.1")
            .wire("U2.2", "U2.3")
            .wire("U2.4", "U1.2CLK")
            .wire("CLR", "U1./1CLR", "U1./2CLR")
            .wire("VCC", "U1./1PRE", "U1./2PRE")
            .wire("D", "U1.1D")
            .wire("U1.1Q", "U1.2D")
            .on()
            .pulse("CLR")
            .set("CLK", true);
    assertThat(on.at("U1.2Q")).isEqualTo(Signal.HIGH);
  }

  /** A memory, its first output through an inverter and a transceiver. */
  private static Sketch memory() {
    return new Sketch()
        .control("A0", false)
        .control("A1", false)
        .control("D1", false)
        .control("WE", true)
        .control("OE", false)
        .part("U1", "74x189", "LS")
        .part("U2", "74x04", "LS")
        .part("U3", "74x245", "LS")
        .wire("GND", "U1./CS", "U1.A2", "U1.A3", "U1.D2", "U1.D3", "U1.D4")
        .wire("A0", "U1.A0")
        .wire("A1", "U1.A1")
        .wire("D1", "U1.D1")
        .wire("WE", "U1./WE")
        .wire("U1./Q1", "U2.1")
        .wire("U2.2", "U3.A1")
        .wire("U1./Q2", "U3.A2")
        .wire("VCC", "U3.DIR")
        .wire("OE", "U3./OE");
  }

  @Test
  void anUnwrittenCellIsTracedThroughInverterAndTransceiver() {
    Sketch.Running on = memory().on().set(Map.of("A0", true, "A1", true));
    assertThat(on.at("U3.B1")).isEqualTo(Signal.UNKNOWN);
    // Four cells to an address; the output complements and the inverter complements again.
    assertThat(on.shownAt("U3.B1")).containsExactly("U1 cell 12");
    assertThat(on.shownAt("U2.1")).containsExactly("U1 cell 12 inverted");
    assertThat(on.shownAt("U3.B2")).containsExactly("U1 cell 13 inverted");
  }

  @Test
  void aWrittenCellIsReadBackAndItsNeighboursStayUnknown() {
    Sketch.Running on = memory().on().set("D1", true).pulse("WE");
    assertThat(on.at("U3.B1")).isEqualTo(Signal.HIGH);
    assertThat(on.at("U3.B2")).as("a low, complemented").isEqualTo(Signal.HIGH);
    on.set("D1", false);
    assertThat(on.at("U3.B1")).as("without a write").isEqualTo(Signal.HIGH);
    on.set("A0", true);
    assertThat(on.shownAt("U3.B1")).containsExactly("U1 cell 4");
    on.set("A0", false);
    assertThat(on.at("U3.B1")).isEqualTo(Signal.HIGH);
    on.powerCycle();
    assertThat(on.shownAt("U3.B1")).containsExactly("U1 cell 0");
  }

  @Test
  void whileAWriteIsHeldTheOutputsLetGo() {
    Sketch.Running on = memory().on().set("WE", false);
    assertThat(on.at("U1./Q1")).isEqualTo(Signal.OPEN_INPUT);
    assertThat(on.at("U2.2")).isEqualTo(Signal.LOW);
  }

  @Test
  void aLevelThatMixesTwoUnknownCellsIsTracedToNone() {
    Sketch.Running on =
        new Sketch()
            .part("U1", "74x189", "LS")
            .part("U2", "74x00", "LS")
            .wire("GND", "U1./CS", "U1.A0", "U1.A1", "U1.A2", "U1.A3")
            .wire("VCC", "U1./WE")
            .wire("U1./Q1", "U2.1")
            .wire("U1./Q2", "U2.2")
            .on();
    assertThat(on.at("U2.3")).isEqualTo(Signal.UNKNOWN);
    assertThat(on.shownAt("U2.3")).isEmpty();
  }

  @Test
  void twoUnknownOutputsOnOneLineAreTracedToNone() {
    Sketch sketch = memory();
    Variation bridged = new Variation();
    Wiring wiring = sketch.wiring();
    bridged.join(wiring.leg(sketch.end("U1./Q1")), wiring.leg(sketch.end("U1./Q2")));
    Sketch.Running on = sketch.on(bridged);
    assertThat(on.at("U1./Q1")).isEqualTo(Signal.UNKNOWN);
    assertThat(on.shownAt("U1./Q1")).isEmpty();
  }

  @Test
  void anInputThatThePartDoesNotHearIsNotTracedThrough() {
    Variation odd = new Variation();
    odd.unlist("U2");
    Sketch.Running on = memory().on(odd);
    assertThat(on.at("U2.2")).isEqualTo(Signal.UNKNOWN);
    assertThat(on.shownAt("U2.2")).isEmpty();
  }
}
