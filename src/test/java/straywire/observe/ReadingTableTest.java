package straywire.observe;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.EnumSource;
import straywire.module.Entry.ProbeShows;
import straywire.module.LampState;
import straywire.sim.Signal;

class ReadingTableTest {
  private final ReadingTable table = ReadingTable.shipped();

  @ParameterizedTest
  @CsvSource({
    "0.00, 0", "0.03, 0", "0.04, 1", "0.50, 1", "0.51, 2", "0.80, 2", "0.81, 3", "1.10, 3",
    "1.11, 4", "1.70, 4", "1.71, 5", "2.40, 5", "2.41, 6", "2.70, 6", "2.71, 7", "4.50, 7",
    "4.51, 8", "5.00, 8", "-0.1, 0", "12.0, 8"
  })
  void aReadingOnAnEdgeFallsInTheBandBelowIt(double volts, int band) {
    assertThat(table.band(volts)).isEqualTo(band);
  }

  @Test
  void thereAreNineBands() {
    assertThat(table.bands()).isEqualTo(9);
  }

  @ParameterizedTest
  @EnumSource(Signal.class)
  void outcomesOfEachInstrumentAddUpToOne(Signal signal) {
    double meter = 0;
    for (int band = 0; band < table.bands(); band++) {
      meter += table.meter(signal, band);
    }
    double probe = 0;
    for (ProbeShows shows : ProbeShows.values()) {
      probe += table.probe(signal, shows);
    }
    double lamp = 0;
    for (LampState state : LampState.values()) {
      lamp += state == LampState.NOT_LOOKED ? 0 : table.lamp(signal, state);
    }
    assertThat(meter).isCloseTo(1, within(1e-9));
    assertThat(probe).isCloseTo(1, within(1e-9));
    assertThat(lamp).isCloseTo(1, within(1e-9));
  }

  @ParameterizedTest
  @EnumSource(Signal.class)
  void noReadingRulesAnySignalOut(Signal signal) {
    for (int band = 0; band < table.bands(); band++) {
      assertThat(table.meter(signal, band)).isPositive();
    }
    for (ProbeShows shows : ProbeShows.values()) {
      assertThat(table.probe(signal, shows)).isPositive();
    }
    for (LampState state : LampState.values()) {
      assertThat(table.lamp(signal, state)).isPositive();
    }
  }

  @ParameterizedTest
  @EnumSource(Signal.class)
  void theUsualReadingOfASignalIsNoSlip(Signal signal) {
    assertThat(table.meter(signal, table.band(table.usualVolts(signal)))).isGreaterThan(0.03);
  }

  @Test
  void aLampNotLookedAtSaysNothing() {
    for (Signal signal : Signal.values()) {
      assertThat(table.lamp(signal, LampState.NOT_LOOKED)).isEqualTo(1);
    }
  }

  @Test
  void theMisreadRateIsSharedByAllOutcomes() {
    // RAIL_LOW is dark: 0.996 of it, and a fourth of 0.004 for each of four outcomes.
    assertThat(table.lamp(Signal.RAIL_LOW, LampState.DARK)).isCloseTo(0.997, within(1e-9));
    assertThat(table.lamp(Signal.RAIL_LOW, LampState.LIT)).isCloseTo(0.001, within(1e-9));
  }

  @Test
  void anOpenInputReadsHighToTheChipButNotToTheMeter() {
    assertThat(table.band(1.45)).isEqualTo(4);
    assertThat(table.meter(Signal.OPEN_INPUT, 4)).isGreaterThan(0.8);
    assertThat(table.meter(Signal.HIGH, 4)).isLessThan(0.01);
    assertThat(table.meter(Signal.LOW, 4)).isLessThan(0.01);
  }

  @Test
  void wordsForAReadingNameVoltsAndWhatIsOdd() {
    assertThat(table.wording(Signal.LOW)).isEqualTo("about 0.2 V");
    assertThat(table.wording(Signal.UNKNOWN)).isEqualTo("low or high");
    assertThat(table.wording(Signal.FIGHT)).endsWith("two outputs fight");
    assertThat(table.probeWording(Signal.OPEN_INPUT)).isEqualTo("neither");
    assertThat(table.probeWording(Signal.UNSTABLE)).isEqualTo("pulses");
    assertThat(table.probeWording(Signal.RAIL_HIGH)).isEqualTo("high");
  }
}
