package straywire.format;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

class QuantityTest {
  @ParameterizedTest
  @CsvSource({
    "470, 470",
    "470R, 470",
    "10k, 10000",
    "4k7, 4700",
    "4.7k, 4700",
    "1M, 1000000",
    "2M2, 2200000",
    "0.5k, 500",
    "0, 0",
    "4R7, 4.7",
  })
  void resistorsReadAsPrintedOnThem(String text, double ohms) {
    assertThat(Quantity.ohms(text).orElseThrow()).isCloseTo(ohms, within(1e-6));
  }

  @ParameterizedTest
  @CsvSource({"100n, 100", "4n7, 4.7", "10u, 10000", "2.2u, 2200", "470p, 0.47", "1m, 1000000"})
  void capacitorsReadAsPrintedOnThem(String text, double nanofarads) {
    assertThat(Quantity.nanofarads(text).orElseThrow()).isCloseTo(nanofarads, within(1e-9));
  }

  @ParameterizedTest
  @ValueSource(strings = {"", "k", "4x7", "10u", "-1", "1e3", "4.7k2", "10 k", "10K", "4.5.6"})
  void whatIsNoResistorIsRefused(String text) {
    assertThat(Quantity.ohms(text)).isEmpty();
  }

  @ParameterizedTest
  @ValueSource(strings = {"100", "100k", "n", "1.n", "4n7u", "100N"})
  void aCapacitorWithoutItsUnitIsRefused(String text) {
    assertThat(Quantity.nanofarads(text)).isEmpty();
  }
}
