package straywire.advice;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import org.junit.jupiter.api.Test;

class PlacesTest {
  @Test
  void reversingTheJoinedListReversesEachBusOnItsOwn() {
    List<String> joined =
        Places.nested(
            List.of("i3", "I3", "i2", "I2", "i1", "I1", "i0", "I0"),
            List.of("o2", "O2", "o1", "O1", "o0", "O0"));
    for (int i = 0; i < joined.size(); i += 2) {
      String mirror = joined.get(joined.size() - 2 - i);
      assertThat(mirror.charAt(0)).isEqualTo(joined.get(i).charAt(0));
    }
    assertThat(joined.get(joined.size() - 2)).isEqualTo("i0");
  }

  @Test
  void theMiddleLineOfAnOddOuterBusStaysOut() {
    assertThat(
            Places.nested(
                List.of("i2", "I2", "i1", "I1", "i0", "I0"),
                List.of("o2", "O2", "o1", "O1", "o0", "O0")))
        .containsExactly("i2", "I2", "o2", "O2", "o1", "O1", "o0", "O0", "i0", "I0");
  }
}
