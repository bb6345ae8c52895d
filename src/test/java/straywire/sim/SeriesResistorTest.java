package straywire.sim;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import straywire.parts.Family;
import straywire.parts.ShippedParts;

/** A resistor between two lines. */
class SeriesResistorTest {
  /** A push to ground through a resistor, against a pull-up where the input listens. */
  private static Sketch discharging(int pullOhms, int seriesOhms) {
    return new Sketch()
        .control("S1", false)
        .part("U1", "74x14", "HC")
        .resistor("R1", "VCC", pullOhms)
        .series("R2", seriesOhms)
        .wire("S1", "R2.1")
        .wire("R1", "R2.2", "U1.1");
  }

  @Test
  void aContactBehindAResistorPullsItsLine() {
    Sketch.Running on = discharging(10000, 1000).on();
    assertThat(on.at("U1.1")).isEqualTo(Signal.PULLED_LOW);
    assertThat(on.at("U1.2")).isEqualTo(Signal.HIGH_CMOS);
    on.set("S1", true);
    assertThat(on.at("U1.1")).isEqualTo(Signal.PULLED_HIGH);
    assertThat(on.at("U1.2")).isEqualTo(Signal.LOW_CMOS);
  }

  /**
   * Ohm's law: what a divider of {@code pull} to 5 V and {@code series} to ground leaves, against
   * the levels that the family's data sheets are sure of.
   */
  @ParameterizedTest
  @CsvSource({"10000, 1000", "1000, 10000", "1000, 1000", "4700, 2200", "10000, 330", "330, 10000"})
  void aDividerIsALevelOnlyWhereTheDataSheetIsSureOfIt(int pull, int series) {
    Family hc = new ShippedParts().family("HC").orElseThrow();
    double volts = 5.0 * series / (pull + series);
    Signal said =
        new Sketch()
            .part("U1", "74x14", "HC")
            .resistor("R1", "VCC", pull)
            .series("R2", series)
            .wire("R1", "R2.1", "U1.1")
            .wire("GND", "R2.2")
            .on()
            .at("U1.1");
    assertThat(said)
        .isEqualTo(
            volts <= hc.inputLowMax()
                ? Signal.PULLED_LOW
                : volts >= hc.inputHighMin() ? Signal.PULLED_HIGH : Signal.UNKNOWN);
  }

  /** The ratio at which one side decides leaves every family a level it is sure of. */
  @Test
  void oneSixthIsEnoughForEveryFamily() {
    ShippedParts parts = new ShippedParts();
    for (String name : parts.families()) {
      Family family = parts.family(name).orElseThrow();
      assertThat(5.0 / 7).as("low of " + name).isLessThan(family.inputLowMax());
      assertThat(5.0 * 6 / 7).as("high of " + name).isGreaterThan(family.inputHighMin());
    }
  }

  @Test
  void whatDrivesALineItselfWins() {
    Sketch.Running on =
        new Sketch()
            .control("S1", false)
            .control("S2", true)
            .part("U1", "74x04", "LS")
            .series("R1", 330)
            .wire("S1", "R1.1")
            .wire("S2", "U1.1")
            .wire("U1.2", "R1.2", "U1.3")
            .on();
    assertThat(on.at("U1.4")).as("both low").isEqualTo(Signal.HIGH);
    on.set("S2", false);
    assertThat(on.at("U1.2")).as("the output is high").isEqualTo(Signal.HIGH);
    assertThat(on.at("S1")).as("and the contact keeps its own line").isEqualTo(Signal.RAIL_LOW);
  }

  @Test
  void theNearerOfTwoDecides() {
    Sketch.Running on =
        new Sketch()
            .control("S1", false)
            .part("U1", "74x04", "HC")
            .series("R1", 1000)
            .series("R2", 1000)
            .wire("S1", "R1.1")
            .wire("R1.2", "R2.1")
            .wire("R2.2", "U1.1")
            .on();
    assertThat(on.at("U1.1")).isEqualTo(Signal.PULLED_LOW);
    on.set("S1", true);
    assertThat(on.at("U1.1"))
        .as("by way of the switch's own pull-up")
        .isEqualTo(Signal.PULLED_HIGH);
  }

  /** 0.8 V at 0.4 mA is 2 kilohm (Fairchild DM74LS00). */
  @ParameterizedTest
  @ValueSource(ints = {2000, 2200})
  void aLowThroughMoreThanTwoKilohmDoesNotReachAnLsInput(int ohms) {
    Signal out =
        new Sketch()
            .control("S1", false)
            .part("U1", "74x04", "LS")
            .series("R1", ohms)
            .wire("S1", "R1.1")
            .wire("R1.2", "U1.1")
            .on()
            .at("U1.2");
    assertThat(out).isEqualTo(ohms <= 2000 ? Signal.HIGH : Signal.LOW);
  }

  /** 4.7 kilohm to ground under an open input: near 0.8 V, not the supply behind the ground. */
  @Test
  void aPullUpBeyondALowIsNotFeltWhereTheLowIsTooWeakForTheInput() {
    Sketch.Running on =
        new Sketch()
            .control("S1", false)
            .part("U1", "74x04", "LS")
            .series("R1", 4700)
            .wire("S1", "R1.1")
            .wire("R1.2", "U1.1")
            .on();
    assertThat(on.at("U1.1")).isEqualTo(Signal.OPEN_INPUT);
    on.set("S1", true);
    assertThat(on.at("U1.1")).isEqualTo(Signal.PULLED_HIGH);
  }

  @Test
  void aRailIsFeltThroughAResistorAndNothingBeyondIt() {
    Sketch.Running on =
        new Sketch()
            .control("S1", true)
            .part("U1", "74x04", "HC")
            .series("R1", 1000)
            .series("R2", 1000)
            .wire("GND", "R1.1", "R2.1")
            .wire("S1", "R1.2")
            .wire("R2.2", "U1.1")
            .on();
    assertThat(on.at("U1.1")).isEqualTo(Signal.PULLED_LOW);
    assertThat(on.at("S1")).as("two pulls alike").isEqualTo(Signal.UNKNOWN);
  }

  @Test
  void withBothLegsInOneRowItIsAWire() {
    Sketch sketch = discharging(10000, 1000);
    Variation wire = new Variation();
    wire.join(sketch.wiring().row(sketch.end("R2.1")), sketch.wiring().row(sketch.end("R2.2")));
    assertThat(sketch.on(wire).at("U1.1")).isEqualTo(Signal.RAIL_LOW);
  }

  @Test
  void aBeepDoesNotPassIt() {
    Sketch sketch = discharging(10000, 1000);
    Boards boards = new Boards(sketch.wiring(), java.util.List.of(new Variation()));
    assertThat(
            boards.joined(0, sketch.point("R2.1"), sketch.point("R2.2"), boards.off().controls()))
        .isZero();
  }
}
