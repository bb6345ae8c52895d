package straywire.sim;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.api.Test;

/** Parts that miss supply or ground. */
class SupplyTest {
  private static Sketch fed(String supply, String ground, String family) {
    return new Sketch()
        .control("S1", false)
        .control("S2", true)
        .fedFrom(supply, ground, "U1", "74x04", family)
        .wire("S1", "U1.1")
        .wire("S2", "U1.3");
  }

  @Test
  void aPartWithoutGroundWorksOnRaisedLowsWhileAnyInputIsLow() {
    Sketch.Running on = fed("VCC", "", "LS").on();
    assertThat(on.at("U1.2")).isEqualTo(Signal.HIGH);
    assertThat(on.at("U1.4")).isEqualTo(Signal.RAISED_LOW);
    assertThat(on.at("U1.7")).isEqualTo(Signal.STARVED);
  }

  @Test
  void aPartWithoutGroundAndWithoutALowInputHoldsItsOutputsHigh() {
    Sketch.Running on = fed("VCC", "", "LS").on().set("S1", true);
    assertThat(on.at("U1.2")).isEqualTo(Signal.HIGH);
    assertThat(on.at("U1.4")).isEqualTo(Signal.HIGH);
  }

  @Test
  void aPartWithoutGroundWhoseOnlyLowIsUnknownIsUnknown() {
    Sketch.Running on =
        new Sketch()
            .control("S1", true)
            .part("U1", "74x189", "LS")
            .fedFrom("VCC", "", "U2", "74x04", "LS")
            .wire("GND", "U1./CS", "U1.1", "U1.13", "U1.14", "U1.15")
            .wire("S1", "U1./WE", "U2.3")
            .wire("U1./Q1", "U2.1")
            .on();
    assertThat(on.at("U2.1")).isEqualTo(Signal.UNKNOWN);
    assertThat(on.at("U2.4")).as("low if fed, else high").isEqualTo(Signal.UNKNOWN);
  }

  @Test
  void anLsPartWithoutSupplyLetsGo() {
    Sketch.Running on = fed("", "GND", "LS").on();
    assertThat(on.at("U1.2")).isEqualTo(Signal.NOTHING);
    assertThat(on.at("U1.4")).isEqualTo(Signal.NOTHING);
    assertThat(on.at("U1.14")).isEqualTo(Signal.STARVED);
    assertThat(on.at("U1.5")).as("an input no longer leans").isEqualTo(Signal.NOTHING);
  }

  @Test
  void anHcPartWithoutSupplyIsFedThroughAHighInput() {
    Sketch.Running on = fed("", "GND", "HC").on();
    assertThat(on.at("U1.4")).isEqualTo(Signal.LOW_CMOS);
    assertThat(on.at("U1.2")).isEqualTo(Signal.HIGH_CMOS);
    on.set("S2", false);
    assertThat(on.at("U1.2")).as("no high input is left").isEqualTo(Signal.NOTHING);
  }

  @Test
  void aPartOnARailSegmentThatIsNotLinkedHasNoGround() {
    Sketch sketch =
        new Sketch()
            .control("S1", false)
            .control("S2", true)
            .segment("GND.right", "GND")
            .fedFrom("VCC", "GND.right", "U1", "74x04", "LS")
            .wire("S1", "U1.1")
            .wire("S2", "U1.3");
    assertThat(sketch.on().at("U1.4")).isEqualTo(Signal.LOW);
    Variation unlinked = new Variation();
    unlinked.remove(sketch.wiring().link("GND.right"));
    Sketch.Running on = sketch.on(unlinked);
    assertThat(on.at("U1.4")).isEqualTo(Signal.RAISED_LOW);
    assertThat(on.at("GND.right")).isEqualTo(Signal.STARVED);
    assertThat(on.joined("GND.right", "GND")).isFalse();
    assertThat(on.joined("GND.right", "U1.7")).isTrue();
  }

  @Test
  void aTurnedPartHasItsSupplyReversedAndDoesNothing() {
    Sketch.Running on = fed("GND", "VCC", "LS").on();
    assertThat(on.at("U1.2")).isEqualTo(Signal.NOTHING);
    assertThat(on.at("U1.14")).isEqualTo(Signal.RAIL_LOW);
  }

  @Test
  void switchingOffForgetsEverything() {
    Sketch sketch = new Sketch().part("U1", "74x04", "LS").lamp("L1", "GND", 1000);
    sketch.wire("GND", "U1.1").wire("U1.2", "L1");
    Sketch.Running on = sketch.on();
    BoardState off = on.boards.powerDown(on.state());
    assertThat(on.boards.glow(off, 0, "L1").dark()).isEqualTo(1);
    assertThat(on.boards.signals(off, 0, sketch.point("VCC"))[Signal.NOTHING.ordinal()])
        .isEqualTo(1);
  }

  @Test
  void aSwitchThatShortsTheSupplyDarkensAllAndAFlipFlopOfGatesForgets() {
    Sketch sketch =
        new Sketch()
            .control("SET", true)
            .control("S", true)
            .part("U1", "74x00", "LS")
            .lamp("L1", "GND", 1000)
            .wire("SET", "U1.1")
            .wire("S", "U1.13")
            .wire("U1.3", "U1.4", "L1")
            .wire("U1.6", "U1.2");
    Variation shorted = new Variation();
    Wiring wiring = sketch.wiring();
    shorted.join(wiring.leg(sketch.end("U1.13")), wiring.rail("VCC"));
    Sketch.Running on = sketch.on(shorted).pulse("SET");
    assertThat(on.lamp("L1")).isEqualTo("lit");
    on.set("S", false);
    assertThat(on.lamp("L1")).isEqualTo("dark");
    on.set("S", true);
    assertThat(on.at("U1.3")).as("after the supply is back").isEqualTo(Signal.UNKNOWN);
  }
}
