package straywire.advice;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import straywire.parts.Part;
import straywire.parts.ShippedParts;

class PinRoleTest {
  private final ShippedParts parts = new ShippedParts();

  /** Pin numbers and meanings from the makers' data sheets. */
  @ParameterizedTest
  @CsvSource({
    "74x189,  1, ADDRESS",
    "74x189,  2, ENABLE",
    "74x189,  3, WRITE",
    "74x189,  4, DATA_IN",
    "74x189,  5, DATA_OUT",
    "74x189,  8, GROUND",
    "74x189, 16, SUPPLY",
    "74x245,  1, DIRECTION",
    "74x245,  2, DATA_OUT",
    "74x245, 19, ENABLE",
    "74x138,  1, SELECT",
    "74x138,  4, ENABLE",
    "74x138,  6, ENABLE",
    "74x157,  1, SELECT",
    "74x161,  1, CLEAR",
    "74x161,  2, CLOCK",
    "74x161,  3, DATA_IN",
    "74x161,  7, ENABLE",
    "74x161,  9, LOAD",
    "74x173,  1, ENABLE",
    "74x173, 15, CLEAR",
    "74x273, 11, CLOCK",
    "74x00,   1, DATA_IN",
  })
  void aPinIsForWhatItsNameSays(String type, int pin, PinRole role) {
    Part part = parts.part(type).orElseThrow();
    assertThat(PinRole.of(part, part.pin(pin))).isEqualTo(role);
  }
}
