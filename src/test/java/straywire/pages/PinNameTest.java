package straywire.pages;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.stream.Collectors;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class PinNameTest {
  /** Barred pieces stand in brackets. */
  @ParameterizedTest
  @CsvSource({
    "A0, A0",
    "/CS, [CS]",
    "SH//LD, SH/[LD]",
    "/BI//RBO, [BI]/[RBO]",
    "RDY//BUSY, RDY/[BUSY]",
    "/P=Q, [P=Q]",
    "/CLK(RS), [CLK(RS)]",
    "A/QA, A/QA",
    "MAX/MIN, MAX/MIN",
    "D//U, D/[U]",
  })
  void aSlashBeforeASignalIsABarOverIt(String name, String drawn) {
    PinName pieces = PinName.of(name);
    assertThat(
            pieces.pieces().stream()
                .map(p -> p.barred() ? "[" + p.text() + "]" : p.text())
                .collect(Collectors.joining()))
        .isEqualTo(drawn);
    assertThat(pieces.length()).isEqualTo(drawn.replaceAll("[\\[\\]]", "").length());
    assertThat(pieces.barred()).isEqualTo(drawn.contains("["));
  }
}
