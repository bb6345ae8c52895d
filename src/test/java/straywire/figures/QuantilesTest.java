package straywire.figures;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;

class QuantilesTest {
  @Test
  void ofOneToAHundredTheMedianIsFiftyAndTheTailNinetyFive() {
    List<Double> values = IntStream.rangeClosed(1, 100).mapToObj(i -> 101.0 - i).toList();

    assertThat(Quantiles.of(values)).isEqualTo(new Quantiles(100, 50.5, 50, 95, 100));
  }

  @Test
  void oneValueIsAllOfThem() {
    assertThat(Quantiles.of(List.of(7.0))).isEqualTo(new Quantiles(1, 7, 7, 7, 7));
  }

  @Test
  void nothingMeasuredIsZero() {
    assertThat(Quantiles.of(List.of())).isEqualTo(new Quantiles(0, 0, 0, 0, 0));
  }
}
