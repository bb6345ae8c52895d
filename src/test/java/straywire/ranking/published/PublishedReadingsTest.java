package straywire.ranking.published;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.Arrays;
import java.util.EnumSet;
import java.util.List;
import java.util.Set;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import straywire.observe.ReadingTable;
import straywire.parts.Family;
import straywire.parts.ShippedParts;
import straywire.ranking.Posterior;
import straywire.sim.Signal;

/**
 * Voltages measured and published, against the table of readings and the bands of the families.
 * Whatever signal is likeliest is so among all signals with equal priors, unless said otherwise.
 */
class PublishedReadingsTest {
  private final ReadingTable table = ReadingTable.shipped();

  /** Signals that make a reading likeliest, all of them on a tie. */
  private Set<Signal> likeliest(double volts, Set<Signal> among) {
    Signal[] signals = among.toArray(Signal[]::new);
    double[] equal = new double[signals.length];
    Arrays.fill(equal, 1);
    double[] logs =
        Arrays.stream(signals)
            .mapToDouble(signal -> Math.log(table.meter(signal, table.band(volts))))
            .toArray();
    double[] posterior = Posterior.of(equal, logs);
    double most = Arrays.stream(posterior).max().orElseThrow();
    Set<Signal> likeliest = EnumSet.noneOf(Signal.class);
    for (int i = 0; i < signals.length; i++) {
      if (posterior[i] > most - 1e-9) {
        likeliest.add(signals[i]);
      }
    }
    return likeliest;
  }

  private Set<Signal> likeliest(double volts) {
    return likeliest(volts, EnumSet.allOf(Signal.class));
  }

  /**
   * Read: open input 1.49 (Electronics Stack Exchange 238224, measured), 1.4 to 1.5 (HP Bench
   * Briefs 1Q1996). The span 1.1 to 1.7 is that of the same tables, widened.
   */
  @ParameterizedTest
  @ValueSource(doubles = {1.49, 1.4, 1.5, 1.2, 1.65})
  void anOpenInput(double volts) {
    assertThat(likeliest(volts)).containsExactly(Signal.OPEN_INPUT);
  }

  /**
   * Read: 3.4 loaded (EE210L laboratory handout; Fairchild DM74LS00), 4.33 unloaded (Electronics
   * Stack Exchange 238224), 4.3 unloaded and 3.5 with LED and resistor (648763), 2.7 to 4.5 the
   * span.
   */
  @ParameterizedTest
  @ValueSource(doubles = {3.4, 4.33, 4.3, 3.5, 2.75, 4.45})
  void aDrivenHigh(double volts) {
    assertThat(likeliest(volts)).containsExactly(Signal.HIGH);
  }

  /**
   * Read: 0.2 (EE210L handout), 0.25, 0.35, 0.4 and 0.5 (Fairchild DM74LS00, Motorola SN74LS00).
   */
  @ParameterizedTest
  @ValueSource(doubles = {0.1, 0.2, 0.25, 0.35, 0.4, 0.5})
  void aDrivenLow(double volts) {
    assertThat(likeliest(volts)).containsExactly(Signal.LOW);
  }

  /** Read: 2.4 on a 74LS173 with bare LEDs (Electronics Stack Exchange 456535). */
  @Test
  void aHighHeldDownByABareLamp() {
    assertThat(likeliest(2.4)).containsExactly(Signal.CLAMPED_HIGH);
  }

  /**
   * Read: about 2 V for two outputs joined (Cambridge laboratory notes). A bare LED gives the same
   * 2 V, more often; where the drawing shows none, a fight and a running clock are left, and tie.
   */
  @Test
  void aFightInBetween() {
    assertThat(likeliest(2.0)).containsExactly(Signal.CLAMPED_HIGH);
    assertThat(likeliest(2.0, EnumSet.complementOf(EnumSet.of(Signal.CLAMPED_HIGH))))
        .containsExactlyInAnyOrder(Signal.FIGHT, Signal.UNSTABLE);
  }

  /** Inferred from published short-circuit currents: 0.4 to 1.5 when the low side wins. */
  @Test
  void aFightThatTheLowSideWins() {
    assertThat(likeliest(0.6)).containsExactly(Signal.FIGHT_LOW);
    assertThat(table.meter(Signal.FIGHT_LOW, table.band(0.95)))
        .isGreaterThan(table.meter(Signal.FIGHT, table.band(0.95)))
        .isGreaterThan(table.meter(Signal.LOW, table.band(0.95)))
        .isGreaterThan(table.meter(Signal.OPEN_INPUT, table.band(0.95)));
  }

  /**
   * Read: 0.02 with 100 ohm to ground (Electronics Stack Exchange 238224), which a meter cannot
   * tell from ground itself.
   */
  @Test
  void aPinOnTheGroundRail() {
    assertThat(likeliest(0.0)).containsExactly(Signal.RAIL_LOW);
    assertThat(likeliest(0.02)).containsExactly(Signal.RAIL_LOW);
  }

  /**
   * Read: an LS input reads 0.07 with 330 ohm to ground and 0.60 with 3.3 kohm (Electronics Stack
   * Exchange 238224). Only among what a net without an output can show: 0.07 is a driven low first,
   * and 0.60 a fight that the low side wins.
   */
  @ParameterizedTest
  @ValueSource(doubles = {0.07, 0.60})
  void aPullDown(double volts) {
    Set<Signal> withoutOutput =
        EnumSet.of(
            Signal.PULLED_LOW,
            Signal.PULLED_HIGH,
            Signal.RAIL_LOW,
            Signal.RAIL_HIGH,
            Signal.OPEN_INPUT,
            Signal.NOTHING);
    assertThat(likeliest(volts, withoutOutput)).containsExactly(Signal.PULLED_LOW);
  }

  /** Read: 1.3 with 10 kohm (336728) and 1.47 with 1 Mohm (238224) to ground: as good as open. */
  @ParameterizedTest
  @ValueSource(doubles = {1.3, 1.47})
  void aPullDownTooWeakForLs(double volts) {
    assertThat(likeliest(volts)).containsExactly(Signal.OPEN_INPUT);
  }

  /**
   * Read: CMOS within 0.1 of the rail (data sheets); inferred: 4.6 and more is no LS output at all.
   * The rail itself comes before a CMOS output there, and a pull-up after it.
   */
  @ParameterizedTest
  @ValueSource(doubles = {4.65, 4.9, 5.0})
  void nearTheSupply(double volts) {
    assertThat(likeliest(volts)).containsExactly(Signal.RAIL_HIGH);
    assertThat(likeliest(volts, EnumSet.of(Signal.HIGH, Signal.HIGH_CMOS, Signal.PULLED_HIGH)))
        .containsExactly(Signal.HIGH_CMOS);
    assertThat(table.meter(Signal.HIGH, table.band(volts)))
        .isLessThan(0.1 * table.meter(Signal.PULLED_HIGH, table.band(volts)));
  }

  /** Read: CMOS within 0.1 of the rail (data sheets), an LS low at 0.1 to 0.4. */
  @Test
  void nearGround() {
    EnumSet<Signal> lows = EnumSet.of(Signal.LOW, Signal.LOW_CMOS, Signal.PULLED_LOW);
    assertThat(likeliest(0.02, lows)).containsExactly(Signal.LOW_CMOS);
    assertThat(likeliest(0.25, lows)).containsExactly(Signal.LOW);
    assertThat(table.meter(Signal.LOW_CMOS, table.band(0.25)))
        .as("loaded, a CMOS low rises too")
        .isGreaterThan(0.1);
  }

  /**
   * A driven high and an open input, the pair told apart most often, differ by a factor of ten at
   * each reading published for either.
   */
  @Test
  void openAndDrivenAreTenfoldApart() {
    for (double volts : List.of(1.4, 1.49, 1.5)) {
      assertThat(table.meter(Signal.OPEN_INPUT, table.band(volts)))
          .isGreaterThan(10 * table.meter(Signal.HIGH, table.band(volts)));
    }
    for (double volts : List.of(3.4, 3.5, 4.3, 4.33)) {
      assertThat(table.meter(Signal.HIGH, table.band(volts)))
          .isGreaterThan(10 * table.meter(Signal.OPEN_INPUT, table.band(volts)));
    }
  }

  /** Every row adds up to 1 and its usual reading is in a band it holds likely. */
  @Test
  void rowsAreProbabilitiesAndTheUsualReadingIsAmongTheLikelyBands() {
    for (Signal signal : Signal.values()) {
      double sum = 0;
      for (int band = 0; band < table.bands(); band++) {
        sum += table.meter(signal, band);
      }
      assertThat(sum).as("%s", signal).isCloseTo(1, within(1e-9));
      assertThat(table.meter(signal, table.band(table.usualVolts(signal))))
          .as("%s", signal)
          .isGreaterThan(1.0 / table.bands());
    }
  }

  private static Family family(String name) {
    return new ShippedParts().family(name).orElseThrow();
  }

  /**
   * Read, LS: as above; 74: VOL 0.4, VOH 2.4 (Fairchild DM7402); F: VOL 0.5, VOH 2.7 (Philips
   * 74F00); HC and HCT: within 0.1 of the rail (data sheets).
   */
  @ParameterizedTest
  @CsvSource({
    "LS, 0.1 0.2 0.25 0.35 0.4 0.5, 2.7 3.4 3.5 4.3 4.33, 1.1 1.4 1.49 1.5 1.7",
    "74, 0.2 0.4, 2.4 3.4, 1.4 1.5",
    "F, 0.3 0.5, 2.7 3.4, 1.4 1.5",
    "HC, 0.0 0.05 0.1, 4.9 5.0, 0.3 2.5 4.7",
    "HCT, 0.0 0.05 0.1, 4.9 5.0, 0.3 2.5 4.7",
  })
  void bandsOfAFamilyHoldItsPublishedReadings(String name, String low, String high, String open) {
    Family family = family(name);
    assertThat(low.split(" ")).allMatch(volts -> family.low().holds(Double.parseDouble(volts)));
    assertThat(high.split(" ")).allMatch(volts -> family.high().holds(Double.parseDouble(volts)));
    assertThat(open.split(" ")).allMatch(volts -> family.open().holds(Double.parseDouble(volts)));
  }

  /** Bands of bipolar families do not meet, nor does one hold the reading of another. */
  @ParameterizedTest
  @ValueSource(strings = {"74", "LS", "F", "ALS", "S"})
  void bandsOfABipolarFamilyAreApart(String name) {
    Family family = family(name);
    assertThat(family.low().most()).isLessThan(family.open().least());
    assertThat(family.open().most()).isLessThan(family.high().least());
    assertThat(family.high().most()).isLessThan(4.6);
    assertThat(family.low().most()).isLessThanOrEqualTo(family.inputLowMax());
    assertThat(family.high().least()).isGreaterThanOrEqualTo(family.inputHighMin());
  }

  /** Read: VIL and VIH in the data sheets named in the table of families. */
  @ParameterizedTest
  @CsvSource({
    "74, 0.8, 2.0",
    "LS, 0.8, 2.0",
    "ALS, 0.8, 2.0",
    "F, 0.8, 2.0",
    "HC, 1.5, 3.5",
    "HCT, 0.8, 2.0",
    "ACT, 0.8, 2.0",
    "4000B, 1.5, 3.5"
  })
  void inputThresholds(String name, double low, double high) {
    assertThat(family(name).inputLowMax()).isEqualTo(low);
    assertThat(family(name).inputHighMin()).isEqualTo(high);
  }
}
