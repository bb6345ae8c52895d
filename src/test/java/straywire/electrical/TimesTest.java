package straywire.electrical;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import straywire.module.Fitted;
import straywire.module.ModuleFile;
import straywire.parts.ShippedParts;

/** Times of the 555 and of a resistor and a capacitor. */
class TimesTest {
  private static final Thresholds LS14 = schmitt("74x14", "LS");

  private static Thresholds schmitt(String type, String family) {
    Fitted part = Sheets.module(type, family, 2, "", "U2.1").parts().get("U1");
    return ElectricalTable.shipped().schmitt(part).orElseThrow();
  }

  /**
   * Worked answers of a published 555 page (circflow.com); the last row the figure of the TI NE555
   * data sheet, from memory. The trade notes allow 0.25 % for the rounded 1.44.
   */
  @ParameterizedTest
  @CsvSource({
    "10000,10000,1000,48.09,13.863,6.931,0.667",
    "1000,10000,100,687.0,0.762462,0.693147,0.524",
    "10000,68000,10000,0.988,540.655,471.34,0.534",
    "5000,3000,150,874.4,0.8318,0.3119,0.727",
  })
  void anAstableIsWhatWasPublished(
      double r1, double r2, double nf, double hertz, double high, double low, double duty) {
    Timer555.Astable astable = Timer555.astable(r1, r2, nf);
    assertThat(astable.hertz().usual()).isCloseTo(hertz, within(hertz * 0.0025));
    assertThat(astable.highMillis().usual()).isCloseTo(high, within(high * 0.0025));
    assertThat(astable.lowMillis().usual()).isCloseTo(low, within(low * 0.0025));
    assertThat(astable.dutyHigh()).isCloseTo(duty, within(0.001));
  }

  /** 1.1 R C, Maplin NE555N text; 1 M and 0.1 or 0.33 uF are computed in the trade notes. */
  @ParameterizedTest
  @CsvSource({"100,110", "330,363"})
  void aOneShotIsWhatWasPublished(double nf, double millis) {
    assertThat(Timer555.oneShotMillis(1e6, nf).usual()).isCloseTo(millis, within(0.1));
  }

  /** The trade notes: real parts lie within 25 %, with 5 % resistors and a 20 % capacitor. */
  @Test
  void tolerancesAreThoseOfRealParts() {
    Range electrolytic = Timer555.astable(10000, 68000, 10000).highMillis();
    assertThat(electrolytic.most() / electrolytic.usual()).isCloseTo(1.25, within(0.03));
    Range film = Timer555.oneShotMillis(1e6, 100);
    assertThat(film.most() / film.usual()).isCloseTo(1.18, within(0.001));
    Range hertz = Timer555.astable(10000, 10000, 1000).hertz();
    assertThat(hertz.least()).isLessThan(48.0);
    assertThat(hertz.most()).isGreaterThan(60.0);
  }

  /** 10k and 1 uF into a 74LS14: 3.9 ms up to 1.6 V, 18.3 ms down to 0.8 V (trade notes). */
  @Test
  void theUsualDebounceTakesFourMillisecondsUpAndEighteenDown() {
    assertThat(Rc.millisToRise(10000, 1000, 1.6)).isCloseTo(3.9, within(0.05));
    assertThat(Rc.millisToFall(10000, 1000, 0.8)).isCloseTo(18.3, within(0.05));
    assertThat(Rc.lowMillis(10000, 1000, LS14).usual()).isCloseTo(3.9, within(0.05));
    assertThat(Rc.highMillis(10000, 1000, LS14).usual()).isCloseTo(18.3, within(0.05));
  }

  /** 10k and 10 uF into a 74LS14: about 39 ms of reset (trade notes; US 5,144,159 prior art). */
  @Test
  void theUsualPowerOnResetTakesThirtyNineMilliseconds() {
    Range reset = Rc.lowMillis(10000, 10000, LS14);
    assertThat(reset.usual()).isCloseTo(39, within(0.5));
    // 1.4 V and all parts small to 1.9 V and all parts large.
    assertThat(reset.least()).isCloseTo(100 * Math.log(5 / 3.6) * 0.75, within(0.01));
    assertThat(reset.most()).isCloseTo(100 * Math.log(5 / 3.1) * 1.25, within(0.01));
  }

  /**
   * 28.9 kohm and 470 nF at a HEF4060B: 32.009 Hz, a worked answer (electronics.stackexchange.com,
   * question 643227); 100 kohm and 1 nF at a 74HC4060: 4 kHz by the Philips formula of 1990.
   */
  @ParameterizedTest
  @CsvSource({"4000B,28900,470,32.009", "HC,100000,1,4000"})
  void anOscillatorOfResistorAndCapacitorIsWhatWasPublished(
      String family, double ohms, double nf, double hertz) {
    assertThat(Oscillator4060.resistorAndCapacitor(family, ohms, nf).usual())
        .isCloseTo(hertz, within(hertz * 0.0005));
  }

  /** 10 kohm and 1 nF at a CD4060: 38.7 kHz measured (LEAP, Electronics101, RC oscillator). */
  @Test
  void aMeasuredOscillatorLiesInTheRange() {
    Range hertz = Oscillator4060.resistorAndCapacitor("4000B", 10000, 1);
    assertThat(hertz.least()).isLessThan(38700);
    assertThat(hertz.most()).isGreaterThan(38700);
  }

  /** A watch crystal gives 2 Hz after fourteen halvings: 32768 is the fifteenth power of two. */
  @Test
  void aCrystalIsDividedDownToEveryWiredOutput() {
    String yaml =
        """
        format: straywire-module/1
        name: beat-source
        title: Half-second beats for the chime
        rails:
          VCC: {level: supply}
          GND: {level: ground}
        parts:
          U1: {type: 4060, family: HC}
        lamps:
          L: {title: beat, to: GND, ohms: 1000}
          K: {title: quick, to: GND, ohms: 1000}
        timing:
          U1: {crystal: 32.768k}
        nets:
          VCC: [VCC, U1.16]
          GND: [GND, U1.8, U1.12]
          BEAT: [U1.3, L]
          QUICK: [U1.15, K]
        """;
    assertThat(Times.of(ModuleFile.parse("m.yaml", yaml, new ShippedParts())))
        .containsExactly(
            "U1 runs at 32768 Hz (32765 to 32771): Q14 (pin 3) at 2.00 Hz, Q10 (pin 15) at 32.0 Hz");
    String rough = yaml.replace("{crystal: 32.768k}", "{r: 4k7, c: 10n}");
    assertThat(Times.of(ModuleFile.parse("m.yaml", rough, new ShippedParts())))
        .singleElement()
        .asString()
        .contains("U1 runs at 8511 Hz (7401 to 10013)", "a rough guide");
  }

  @Test
  void onlySchmittInputsHaveTwoThresholds() {
    assertThat(LS14.up().least()).isGreaterThan(LS14.down().most());
    Fitted plain = Sheets.module("74x04", "LS", 2, "", "U2.1").parts().get("U1");
    assertThat(ElectricalTable.shipped().schmitt(plain)).isEmpty();
  }

  /** Hysteresis 0.4 V at least, 0.8 usual: Fairchild DM74LS14, NTE7413, TI CD74HCT14. */
  @ParameterizedTest
  @CsvSource({"LS", "74", "HCT"})
  void theThresholdsOfASchmittInputLieApart(String family) {
    Thresholds thresholds = schmitt("74x14", family);
    assertThat(thresholds.up().usual() - thresholds.down().usual()).isGreaterThanOrEqualTo(0.7);
  }
}
