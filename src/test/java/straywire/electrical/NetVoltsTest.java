package straywire.electrical;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import straywire.parts.Family;

/** Voltages at a net against what was published or measured; the source stands at each. */
class NetVoltsTest {
  private static final String LED_1K = "lamps:\n  L: {to: GND, ohms: 1000}";
  private static final String BARE = "lamps:\n  L: {to: GND, ohms: 0}";

  /** 4.33 and 4.3 V: Electronics Stack Exchange 238224, 648763. */
  @Test
  void anLsHighWithNothingOnItIsAboutFourPointThree() {
    // The HC input at the other end takes no current.
    double volts = Sheets.volts(Sheets.module("74x00", "LS", 3, "", "U3.1"), true);
    assertThat(volts).isCloseTo(4.33, within(0.1));
  }

  /** "About 3.4 loaded", EE210L laboratory handout; 3.4 to 3.5 at 0.4 mA, Fairchild DM74LS00. */
  @Test
  void anLsHighAtItsRatedCurrentIsAboutThreePointFour() {
    List<Branch> branches =
        List.of(
            Branch.OutputHigh.of(Sheets.module("74x00", "LS", 3, "", "U2.1").parts().get("U1"), 3),
            new Branch.Resistor(8500, 0));
    assertThat(OperatingPoint.volts(branches)).isCloseTo(3.4, within(0.1));
  }

  /** 3.5 V with LED and resistor: Electronics Stack Exchange 648763. */
  @Test
  void anLsHighWithLedAndResistorIsAboutThreePointFive() {
    double volts = Sheets.volts(Sheets.module("74x00", "LS", 3, LED_1K, "L"), true);
    assertThat(volts).isCloseTo(3.5, within(0.2));
  }

  /** 2.4 V measured on a 74LS173: Electronics Stack Exchange 456535; "1.9 to 2.4" usual. */
  @Test
  void aBareLedHoldsAnLsHighNearTwoVolts() {
    double volts = Sheets.volts(Sheets.module("74x173", "LS", 3, BARE, "L"), true);
    assertThat(volts).isBetween(1.9, 2.45);
    Family ls = Sheets.family("LS");
    Family hc = Sheets.family("HC");
    assertThat(volts - ls.inputHighMin()).as("next to nothing left on LS").isBetween(0.0, 0.5);
    assertThat(volts).as("and an HC input misreads it").isLessThan(hc.inputHighMin());
  }

  /** A bus driver gives more, so that the LED suffers rather than the level. */
  @Test
  void aBareLedOnABusDriverIsHeldHigherAndBrighter() {
    double ordinary = Sheets.volts(Sheets.module("74x00", "LS", 3, BARE, "L"), true);
    double bus = Sheets.volts(Sheets.module("74x244", "LS", 18, BARE, "L"), true);
    assertThat(bus).isGreaterThan(ordinary + 0.2);
  }

  /** 0.1 to 0.4, about 0.2: EE210L laboratory handout. 0.35 at 8 mA: Fairchild DM74LS00. */
  @Test
  void anLsLowIsATenthOrTwoAndRisesWithItsLoad() {
    double logic = Sheets.volts(Sheets.module("74x00", "LS", 3, "", "U2.1, U2.3"), false);
    assertThat(logic).isCloseTo(0.2, within(0.1));
    String lamp = "lamps:\n  L: {to: VCC, ohms: 330}";
    assertThat(Sheets.volts(Sheets.module("74x00", "LS", 3, lamp, "L"), false))
        .isCloseTo(0.35, within(0.05));
  }

  /** Within 0.1 V of the rails: Fairchild MM74HCT00. */
  @Test
  void aCmosOutputIsNearTheRailsWhenOnlyCmosListens() {
    assertThat(Sheets.volts(Sheets.module("74x00", "HC", 3, "", "U3.1"), true)).isBetween(4.9, 5.0);
    assertThat(Sheets.volts(Sheets.module("74x00", "HC", 3, "", "U3.1"), false))
        .isBetween(0.0, 0.1);
  }

  /** A pull-up takes an LS high above what the totem pole gives, so that HC reads it. */
  @Test
  void aPullUpLiftsAnLsHighToTheRail() {
    String pull = "controls:\n  S: {kind: switch, closes-to: GND, pull-to: VCC, pull-ohms: 4700}";
    assertThat(Sheets.volts(Sheets.module("74x00", "LS", 3, pull, "U3.1, S"), true))
        .isGreaterThan(4.8);
  }

  /** 1.6k: 2 mA, 680: 5 mA, 330: 10 mA, 160: 20 mA at 5 V and 1.8 V (andromeda.df.lu.lv table). */
  @ParameterizedTest
  @CsvSource({"1600,2", "680,5", "330,10", "160,20"})
  void ledCurrentsAreThoseOfThePublishedTable(int ohms, double milliamps) {
    // The published table leaves the LED at 1.8 V whatever the current: allow 10 %.
    assertThat(new Branch.Led(ohms, true).milliamps(5.0))
        .isCloseTo(milliamps, within(0.1 * milliamps));
  }

  /** Computed in the trade notes: 470 to 680 ohms into an LS low 4 to 6 mA, 330 ohms 8.0 to 8.6. */
  @ParameterizedTest
  @CsvSource({"680,4.0,4.6", "470,5.6,6.4", "330,7.9,8.6"})
  void anLedFromTheSupplyIntoAnLsLow(int ohms, double least, double most) {
    String lamp = "lamps:\n  L: {to: VCC, ohms: %d}".formatted(ohms);
    NetContents net = Sheets.net(Sheets.module("74x00", "LS", 3, lamp, "L"));
    assertThat(net.lampMilliamps(net.lamps().get(0))).isBetween(least, most);
  }

  /** Computed in the trade notes: 1k to 2.2k from an LS high 1.7 to 0.8 mA. */
  @ParameterizedTest
  @CsvSource({"1000,1.7", "2200,0.8"})
  void anLedFromAnLsHighToGround(int ohms, double milliamps) {
    String lamp = "lamps:\n  L: {to: GND, ohms: %d}".formatted(ohms);
    NetContents net = Sheets.net(Sheets.module("74x00", "LS", 3, lamp, "L"));
    assertThat(net.lampMilliamps(net.lamps().get(0))).isCloseTo(milliamps, within(0.12));
  }

  /** HD74LS04: Electronics Stack Exchange 238224; 10k: Electronics Stack Exchange 336728. */
  @ParameterizedTest
  @CsvSource({"100,0.02", "330,0.07", "3300,0.60", "10000,1.3", "1000000,1.47"})
  void aPullDownUnderAnLsInputIsWhatWasMeasured(double ohms, double volts) {
    // Another chip at 10k than at the rest.
    double allowed = ohms == 10000 ? 0.1 : 0.04;
    assertThat(PullDown.of(ohms, Sheets.family("LS"), 1).usualVolts())
        .isCloseTo(volts, within(allowed));
  }

  /** 0.8 V / 0.4 mA = 2k, the limit in the trade notes from VIL and IIL of Motorola SN74LS00. */
  @Test
  void theLargestSurePullDownIsTwoKilohmsForOneLsInput() {
    assertThat(PullDown.mostOhms(Sheets.family("LS"), 1)).isCloseTo(2000, within(1.0));
    assertThat(PullDown.of(2000, Sheets.family("LS"), 1).worstVolts()).isCloseTo(0.8, within(0.01));
    assertThat(PullDown.of(1000, Sheets.family("LS"), 4).worstVolts()).isGreaterThan(0.8);
    assertThat(PullDown.of(10000, Sheets.family("HC"), 4).worstVolts()).isLessThan(0.1);
  }

  /** "1.1 to 1.7", Electronics Stack Exchange 238224; HP Bench Briefs 1Q1996. */
  @Test
  void aReleasedLsLineIsAsAnOpenInputAndALampOnItChangesLittle() {
    String released = "lamps:\n  L: {to: GND, ohms: 2200}";
    NetContents net = Sheets.net(Sheets.module("74x244", "LS", 18, released, "U2.1, L"));
    assertThat(net.releasedVolts()).isBetween(1.1, 1.7);
  }
}
