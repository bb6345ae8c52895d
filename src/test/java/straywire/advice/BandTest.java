package straywire.advice;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class BandTest {
  /** Readings as published: see the sources at {@link Band}. */
  @ParameterizedTest
  @CsvSource({
    "-4.9, REVERSED",
    "0.0, LOW",
    "0.2, LOW",
    "0.5, LOW",
    "0.7, RAISED_LOW",
    "1.49, OPEN",
    "1.8, BETWEEN",
    "2.4, BETWEEN",
    "2.6, WEAK_HIGH",
    "3.4, HIGH",
    "4.33, HIGH",
    "5.0, NEAR_SUPPLY",
    "6.1, OVER",
  })
  void aReadingHasItsBand(double volts, Band band) {
    assertThat(Band.of(volts)).isEqualTo(band);
  }

  @Test
  void whatIsNoNumberIsNoReading() {
    assertThatThrownBy(() -> Band.of(Double.NaN)).hasMessageContaining("number of volts");
  }
}
