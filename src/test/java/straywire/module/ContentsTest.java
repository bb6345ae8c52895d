package straywire.module;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.util.Map;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import straywire.format.InputError;
import straywire.parts.ShippedParts;

/** What a module file says of a programmed memory. */
class ContentsTest {
  private static final String STORE =
      """
      format: straywire-module/1
      name: store
      title: Store
      rails: {VCC: {level: supply}, GND: {level: ground}}
      parts:
        U1: {type: 28C16, family: HCT, contents: {0: 00000001, 2047: 10000000}}
      nets:
        VCC: [VCC, U1.24, U1.21]
        GND: [GND, U1.12]
      """;

  private static Module parse(String text) {
    return ModuleFile.parse("store.yaml", text, new ShippedParts());
  }

  @Test
  void wordsAreGivenByAddressHighBitFirst() {
    assertThat(parse(STORE).parts().get("U1").contents().words())
        .isEqualTo(Map.of(0, 1L, 2047, 128L));
    assertThat(parse(STORE.replace(", contents: {0: 00000001, 2047: 10000000}", "")))
        .extracting(module -> module.parts().get("U1").contents().known())
        .isEqualTo(false);
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "28C16 | 6116 | parts.U1.contents: a 6116 keeps nothing without power; contents belong to an EEPROM",
        "2047: | 2048: | parts.U1.contents.2048: an address is a number from 0 to 2047, got 2048",
        "2047: | x: | parts.U1.contents.x: an address is a number from 0 to 2047, got x",
        "10000000 | 1000000 | parts.U1.contents.2047: expected 8 bits, high bit first, got 1000000",
        "10000000 | 10000002 | parts.U1.contents.2047: expected 8 bits, high bit first, got 10000002",
        "{0: 00000001, 2047: 10000000} | {} | parts.U1.contents: write at least one word, such as 0: 00000000",
        "U1.24, U1.21 | U1.24 | parts.U1.contents: the module may write U1: tie its /WE to a supply rail, or leave out contents",
      })
  void aSlipIsToldWithItsLine(String from, String to, String message) {
    assertThatThrownBy(() -> parse(STORE.replace(from, to)))
        .isInstanceOf(InputError.class)
        .hasMessage("store.yaml:6: " + message);
  }
}
