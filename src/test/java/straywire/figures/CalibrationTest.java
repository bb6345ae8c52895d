package straywire.figures;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;

class CalibrationTest {
  private final Calibration calibration = new Calibration();

  @Test
  void whatComesUpMoreOftenCountsMore() {
    calibration.add(0.7, true, 3);
    calibration.add(0.66, false, 1);

    assertThat(calibration.bins())
        .singleElement()
        .satisfies(
            bin -> {
              assertThat(bin.from()).isEqualTo(0.6);
              assertThat(bin.to()).isEqualTo(0.8);
              assertThat(bin.count()).isEqualTo(2);
              assertThat(bin.stated()).isCloseTo(0.69, within(1e-12));
              assertThat(bin.right()).isEqualTo(0.75);
            });
  }

  @Test
  void anEdgeBelongsToTheBinBelow() {
    calibration.add(0.98, true, 1);
    calibration.add(1, true, 1);

    assertThat(calibration.bins()).extracting(Calibration.Bin::from).containsExactly(0.9, 0.98);
  }

  @Test
  void aBinWithoutStatementsIsLeftOut() {
    calibration.add(0, false, 1);

    assertThat(calibration.bins()).extracting(Calibration.Bin::to).containsExactly(0.05);
  }
}
