package straywire.electrical;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import straywire.parts.Family;

/** Fan-out, margins between families, and what a module takes from its supply. */
class LoadsTest {

  /**
   * The published fan-outs: 74 to itself 10 (Fairchild DM7402), LS 20 (Fairchild DM74LS00), F 33
   * (Philips 74F00), HC 10 LS loads and 15 for a bus driver (TI SCHS167E), 4000B one LS load
   * (National CD4001BC), HCT 10 LS (Fairchild MM74HCT00), S 10 (Fairchild DM74S157), ALS 20
   * (Philips 74ALS10A); LS into 74 is 8 mA (Fairchild DM74LS00) over 1.6 (DM7402).
   */
  @ParameterizedTest
  @CsvSource({
    "74,false,74,10",
    "LS,false,LS,20",
    "S,false,S,10",
    "ALS,false,ALS,20",
    "F,false,F,33",
    "LS,false,74,5",
    "HC,false,LS,10",
    "HC,true,LS,15",
    "HCT,false,LS,10",
    "4000B,false,LS,1",
  })
  void fanOutsAreThePublishedOnes(String driver, boolean bus, String listener, int inputs) {
    assertThat(FanOut.inputs(Sheets.family(driver), bus, Sheets.family(listener)))
        .isEqualTo(inputs);
  }

  /** The compatibility list of the trade notes: VOH 2.7 against VIH 3.15 to 3.5 is not sure. */
  @ParameterizedTest
  @CsvSource({
    "LS,LS,true",
    "LS,ALS,true",
    "ALS,F,true",
    "F,HCT,true",
    "74,ACT,true",
    "LS,HC,false",
    "74,AC,false",
    "F,4000B,false",
    "ALS,HC,false",
    "HC,LS,true",
    "HCT,LS,true",
    "AC,LS,true",
    "HC,HC,true",
    "AC,HC,true",
    "4000B,LS,true",
    "4000B,4000B,true",
  })
  void marginsSayWhichFamiliesFit(String driver, String listener, boolean sure) {
    assertThat(FamilyMargin.of(Sheets.family(driver), Sheets.family(listener)).sure())
        .isEqualTo(sure);
  }

  @Test
  void lsIntoHcLacksAboutHalfAVoltAtLeast() {
    FamilyMargin margin = FamilyMargin.of(Sheets.family("LS"), Sheets.family("HC"));
    assertThat(margin.highVolts()).isCloseTo(2.7 - 3.5, within(1e-9));
    FamilyMargin own = FamilyMargin.of(Sheets.family("LS"), Sheets.family("LS"));
    assertThat(own.highVolts()).isCloseTo(0.7, within(1e-9));
    assertThat(own.lowVolts()).isCloseTo(0.3, within(1e-9));
  }

  @Test
  void inputsLampsAndPullUpsCountAsLoadOfALow() {
    String extra =
        """
        controls:
          S: {kind: switch, closes-to: GND, pull-to: VCC, pull-ohms: 1000}
        lamps:
          L: {to: VCC, ohms: 680}
          M: {to: GND, ohms: 2200}
        """;
    NetContents net =
        Sheets.net(Sheets.module("74x00", "LS", 3, extra, "U2.1, U2.3, U3.1, L, M, S"));
    FanOut fanOut = net.fanOut(net.drivers().get(0));
    // Two LS inputs 0.8, the pull-up (5 - 0.5) / 1k, the lamp about 4.1, the HC input nothing.
    assertThat(fanOut.usedLowMilliamps()).isCloseTo(0.8 + 4.5 + 4.1, within(0.1));
    assertThat(fanOut.allowedLowMilliamps()).isEqualTo(8);
    assertThat(fanOut.lowExceeded()).isTrue();
    assertThat(fanOut.usedHighMilliamps()).isCloseTo(0.041, within(1e-9));
    assertThat(fanOut.highExceeded()).isFalse();
  }

  @Test
  void anOutputWithinItsRatingIsNotExceeded() {
    String extra =
        """
        controls:
          S: {kind: switch, closes-to: GND, pull-to: VCC, pull-ohms: 1000}
        """;
    NetContents net = Sheets.net(Sheets.module("74x05", "LS", 2, extra, "U2.1, S"));
    assertThat(net.fanOut(net.drivers().get(0)).lowExceeded()).isFalse();
  }

  @Test
  void busDriversAndLampDriversCarryMore() {
    NetContents bus = Sheets.net(Sheets.module("74x244", "LS", 18, "", "U2.1"));
    assertThat(bus.fanOut(bus.drivers().get(0)).allowedLowMilliamps()).isEqualTo(24);
    NetContents segment = Sheets.net(Sheets.module("74x47", "LS", 13, "", "U2.1"));
    assertThat(segment.fanOut(segment.drivers().get(0)).allowedLowMilliamps()).isEqualTo(24);
  }

  /** 0.5 A, 6 inches, two contacts: about 40 mV. 80 and 48 mohm: DigiKey TechForum 36612. */
  @Test
  void whatARailLosesIsWhatWasMeasured() {
    assertThat(SupplyEstimate.dropMillivolts(0.5, 6, 2)).isCloseTo(40, within(3.0));
    assertThat(SupplyEstimate.dropMillivolts(1, 5.75, 2)).isCloseTo(80, within(2.0));
    assertThat(SupplyEstimate.dropMillivolts(1, 2.75, 2)).isCloseTo(48, within(1.0));
    assertThat(SupplyEstimate.jumperMillivolts(0.1)).isBetween(1.0, 5.0);
  }

  @Test
  void aSupplyEstimateAddsPartsLampsAndPulls() {
    String extra =
        """
        controls:
          S: {kind: switch, closes-to: GND, pull-to: VCC, pull-ohms: 1000}
        lamps:
          L: {to: VCC, ohms: 680}
        """;
    SupplyEstimate supply = SupplyEstimate.of(Sheets.module("74x245", "LS", 11, extra, "L, S"));
    // 95 for the transceiver and 6.6 for an LS inverter at most; the HC one takes next to nothing.
    assertThat(supply.partsMilliamps().most()).isCloseTo(101.6, within(0.5));
    assertThat(supply.partsMilliamps().usual()).isCloseTo(61, within(0.5));
    assertThat(supply.pullsMilliamps()).isCloseTo(5, within(1e-9));
    assertThat(supply.lampsMilliamps()).isBetween(4.0, 5.0);
    assertThat(supply.farVolts()).isBetween(4.97, 5.0);
    assertThat(supply.mostMilliamps()).isGreaterThan(supply.usualMilliamps());
  }

  /** 5 V over 1 kilohm; what lies behind 470 ohm more is the same resistor. */
  @Test
  void aPullThatSeveralNetsFeelIsTakenFromTheSupplyOnce() {
    String extra =
        """
        resistors:
          R1: {to: VCC, ohms: 1000}
          R2: {ohms: 470}
        """;
    SupplyEstimate supply =
        SupplyEstimate.of(Sheets.module("74x05", "LS", 2, extra, "R2.1]\n  M: [R2.2, R1, U2.1"));
    assertThat(supply.pullsMilliamps()).isCloseTo(5, within(1e-9));
  }

  @Test
  void everyFamilyHasItsCurrents() {
    for (String name : Sheets.PARTS.families()) {
      Family family = Sheets.family(name);
      Currents currents = ElectricalTable.shipped().currents(family);
      assertThat(currents.low().volts()).as(name).isLessThan(family.inputLowMax());
      assertThat(currents.lowCurve().milliamps(currents.low().volts()))
          .as("the usual low of %s is better than the sure one", name)
          .isGreaterThanOrEqualTo(currents.low().milliamps() * 0.99);
      assertThat(currents.highCurve().milliamps(currents.high().volts()))
          .as("the usual high of %s is better than the sure one", name)
          .isGreaterThanOrEqualTo(currents.high().milliamps() * 0.99);
    }
  }
}
