package straywire.parts;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import straywire.format.InputError;

class FamiliesTest {
  private static final ShippedParts PARTS = new ShippedParts();

  private static Family family(String name) {
    return PARTS.family(name).orElseThrow();
  }

  @Test
  void allTenFamiliesAreThere() {
    assertThat(PARTS.families())
        .containsExactly("4000B", "74", "AC", "ACT", "ALS", "F", "HC", "HCT", "LS", "S");
    assertThat(PARTS.family("TTL")).isEmpty();
  }

  /** VIL and VIH at 5 V from the data sheets named in families.yaml. */
  @ParameterizedTest
  @CsvSource({
    "74,0.8,2.0", "LS,0.8,2.0", "S,0.8,2.0", "ALS,0.8,2.0", "F,0.8,2.0",
    "HC,1.5,3.5", "HCT,0.8,2.0", "AC,1.5,3.5", "ACT,0.8,2.0", "4000B,1.5,3.5",
  })
  void thresholdsAreThoseOfTheDataSheets(String name, double lowMax, double highMin) {
    assertThat(family(name).inputLowMax()).isEqualTo(lowMax);
    assertThat(family(name).inputHighMin()).isEqualTo(highMin);
  }

  @ParameterizedTest
  @ValueSource(strings = {"74", "LS", "S", "ALS", "F"})
  void aBipolarLowOutranksAHighOfItsKindAndAnOpenInputReadsHigh(String name) {
    Family family = family(name);
    assertThat(family.lowRank()).isGreaterThan(family.highRank());
    assertThat(family.busLowRank()).isGreaterThan(family.busHighRank());
    assertThat(family.openReadsHigh()).isTrue();
    assertThat(family.feedsThroughInputs()).isFalse();
    assertThat(family.open().holds(1.45)).isTrue();
    assertThat(family.low().holds(1.45)).isFalse();
    assertThat(family.high().holds(1.45)).isFalse();
  }

  @ParameterizedTest
  @ValueSource(strings = {"HC", "HCT", "AC", "ACT", "4000B"})
  void cmosAgainstItsOwnKindIsUndecidedAndAnOpenInputIsAnything(String name) {
    Family family = family(name);
    assertThat(family.lowRank()).isEqualTo(family.highRank());
    assertThat(family.busLowRank()).isEqualTo(family.busHighRank());
    assertThat(family.openReadsHigh()).isFalse();
    assertThat(family.feedsThroughInputs()).isTrue();
    assertThat(family.open().holds(0) && family.open().holds(5)).isTrue();
  }

  @Test
  void anOrdinaryLsLowAgainstABusDriversHighIsUndecided() {
    assertThat(family("LS").lowRank()).isEqualTo(family("LS").busHighRank());
  }

  @Test
  void aRankOutsideOneToSixIsRefused() {
    String text =
        ShippedParts.resource("families.yaml").replace("low: 4, high: 3", "low: 7, high: 3");
    assertThatThrownBy(() -> Families.read("families.yaml", text))
        .isInstanceOf(InputError.class)
        .hasMessageContaining("expected a whole number from 1 to 6");
  }
}
