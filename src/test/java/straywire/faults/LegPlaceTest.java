package straywire.faults;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;

/** Numbering of two-row parts: pin 1 left of the notch, counter-clockwise; common practice. */
class LegPlaceTest {
  /** Reads a drawing with the notch up, one row of legs a line. */
  private static void assertDrawing(String drawing) {
    String[] lines = drawing.strip().split("\n");
    int count = 2 * lines.length;
    for (int i = 0; i < lines.length; i++) {
      String[] pins = lines[i].strip().split("\\s+");
      assertThat(LegPlace.of(Integer.parseInt(pins[0]), count))
          .isEqualTo(new LegPlace(true, i + 1));
      assertThat(LegPlace.of(Integer.parseInt(pins[1]), count))
          .isEqualTo(new LegPlace(false, i + 1));
    }
  }

  @Test
  void eightLegsRunDownTheLeftAndUpTheRight() {
    assertDrawing(
        """
         1  8
         2  7
         3  6
         4  5
        """);
  }

  @Test
  void fourteenLegsRunDownTheLeftAndUpTheRight() {
    assertDrawing(
        """
         1 14
         2 13
         3 12
         4 11
         5 10
         6  9
         7  8
        """);
  }

  @Test
  void sixteenLegsRunDownTheLeftAndUpTheRight() {
    assertDrawing(
        """
         1 16
         2 15
         3 14
         4 13
         5 12
         6 11
         7 10
         8  9
        """);
  }

  @Test
  void twentyLegsRunDownTheLeftAndUpTheRight() {
    assertDrawing(
        """
         1 20
         2 19
         3 18
         4 17
         5 16
         6 15
         7 14
         8 13
         9 12
        10 11
        """);
  }

  @Test
  void aPlaceIsToldAsATechnicianSaysIt() {
    assertThat(LegPlace.of(3, 16).words()).isEqualTo("left row, third from the notch");
    assertThat(LegPlace.of(13, 14).words()).isEqualTo("right row, second from the notch");
    assertThat(LegPlace.of(28, 28).words()).isEqualTo("right row, first from the notch");
    assertThat(LegPlace.of(14, 28).words()).isEqualTo("left row, fourteenth from the notch");
  }

  @Test
  void everyLegHasAPlaceOfItsOwn() {
    for (int count : new int[] {8, 14, 16, 18, 20, 24, 28, 40}) {
      assertThat(IntStream.rangeClosed(1, count).mapToObj(p -> LegPlace.of(p, count)).distinct())
          .hasSize(count);
    }
  }

  @Test
  void aPinThePartDoesNotHaveIsRefused() {
    assertThatThrownBy(() -> LegPlace.of(15, 14)).hasMessage("Pins run from 1 to 14, got 15");
    assertThatThrownBy(() -> LegPlace.of(0, 14)).hasMessage("Pins run from 1 to 14, got 0");
    assertThatThrownBy(() -> LegPlace.of(1, 42)).hasMessageContaining("got 42");
    assertThatThrownBy(() -> LegPlace.of(1, 15)).hasMessageContaining("got 15");
  }
}
