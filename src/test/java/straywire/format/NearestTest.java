package straywire.format;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class NearestTest {
  @ParameterizedTest
  @CsvSource({
    "memry, memory",
    "mmeory, memory",
    "MEMORY, memory",
    "wrote, write",
    "U9, U1",
    "u2, U2",
    "ba, ab",
    "r, R"
  })
  void aSlipOfTheFingerFindsTheName(String wrong, String meant) {
    assertThat(Nearest.to(wrong, List.of("U2", "U1", "memory", "write", "ab", "a", "R")))
        .contains(meant);
  }

  @ParameterizedTest
  @CsvSource({"x", "qq", "bus", "''"})
  void whatIsFarFromEverythingFindsNothing(String wrong) {
    assertThat(Nearest.to(wrong, List.of("U2", "U1", "memory", "write", "R"))).isEmpty();
  }

  @Test
  void theHintNamesTheNearestOrTheKnown() {
    List<String> many = IntStream.rangeClosed(1, 12).mapToObj(i -> "lamp" + i).toList();

    assertThat(Nearest.hint("memry", List.of("memory"))).isEqualTo("; nearest is memory");
    assertThat(Nearest.hint("x", List.of("memory", "bus"))).isEqualTo("; known are bus, memory");
    assertThat(Nearest.hint("x", List.of())).isEmpty();
    assertThat(Nearest.hint("x", many))
        .isEqualTo(
            "; known are lamp1, lamp10, lamp11, lamp12, lamp2, lamp3, lamp4, lamp5 and 4 more");
  }
}
