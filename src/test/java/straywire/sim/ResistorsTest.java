package straywire.sim;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** A resistor from a net to a rail. */
class ResistorsTest {
  private static Sketch openCollectorInto(String rail) {
    return new Sketch()
        .control("S1", true)
        .part("U1", "74x05", "LS")
        .part("U2", "74x04", "HC")
        .resistor("R1", rail, 1000)
        .wire("S1", "U1.1")
        .wire("U1.2", "R1", "U2.1");
  }

  @Test
  void aPullUpHoldsUpALineThatAnOpenCollectorLetsGo() {
    Sketch.Running on = openCollectorInto("VCC").on();
    assertThat(on.at("U2.2")).isEqualTo(Signal.HIGH_CMOS);
    on.set("S1", false);
    assertThat(on.at("U2.2")).isEqualTo(Signal.LOW_CMOS);
  }

  @Test
  void withoutItsJumperThePullUpHoldsNothing() {
    Sketch sketch = openCollectorInto("VCC");
    Variation loose = new Variation();
    loose.remove(
        sketch
            .wiring()
            .jumper(
                sketch.wiring().module().jumpers().stream()
                    .filter(j -> j.name().equals("U1.2-R1"))
                    .findFirst()
                    .orElseThrow()));
    Sketch.Running on = sketch.on(loose).set("S1", false);
    assertThat(on.at("U1.2")).isEqualTo(Signal.NOTHING);
    assertThat(on.at("R1")).isEqualTo(Signal.PULLED_HIGH);
  }

  @Test
  void anOutputOutweighsAResistor() {
    Sketch.Running on =
        new Sketch()
            .control("S1", true)
            .part("U1", "74x04", "LS")
            .resistor("R1", "VCC", 1000)
            .wire("S1", "U1.1")
            .wire("U1.2", "R1")
            .on();
    assertThat(on.at("U1.2")).isEqualTo(Signal.LOW);
  }

  /** 0.8 V at 0.4 mA is 2 kilohm; an HC input lets no current out. */
  @ParameterizedTest
  @CsvSource({"LS, 470, HIGH", "LS, 10000, LOW", "HC, 10000, HIGH_CMOS"})
  void aPullDownThatIsTooLargeDoesNotHoldDownAnLsInput(String family, int ohms, Signal inverted) {
    Sketch.Running on =
        new Sketch()
            .control("S1", true)
            .part("U1", "74x04", family)
            .resistor("R1", "GND", ohms)
            .wire("R1", "U1.1")
            .on();
    assertThat(on.at("U1.2")).isEqualTo(inverted);
  }
}
