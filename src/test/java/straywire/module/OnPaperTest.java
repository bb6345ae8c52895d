package straywire.module;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import straywire.format.InputError;

/** Capacitors and explanations of a module file. */
class OnPaperTest {
  private static Module with(String lines) {
    return BeatMemory.parse(SmallModule.with("neighbours:", lines + "\nneighbours:"));
  }

  @Test
  void capacitorsAreKnownByTheirPlace() {
    OnPaper paper =
        with("capacitors-to-ground: {U1: 100n, go: 1u, U1.2A: 10n, VCC: 47u, BELL1: 1n}").onPaper();
    assertThat(paper.nanofarads("U1")).isEqualTo(100);
    assertThat(paper.nanofarads("U1.3")).isEqualTo(10);
    assertThat(paper.nanofarads("VCC")).isEqualTo(47000);
    assertThat(paper.nanofarads("U2")).isZero();
  }

  @Test
  void aModuleWithoutThemHasNone() {
    assertThat(SmallModule.module().onPaper()).isEqualTo(OnPaper.NOTHING);
  }

  @Test
  void explanationsKeepTheOrderOfTheFile() {
    OnPaper paper =
        with("explained:\n"
                + "  - {finding: OPEN-07, place: B, because: it is}\n"
                + "  - {finding: DRV-11, place: U1 and U2, because: so}")
            .onPaper();
    assertThat(paper.explained())
        .containsExactly(
            new OnPaper.Explained("OPEN-07", "B", "it is"),
            new OnPaper.Explained("DRV-11", "U1 and U2", "so"));
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      textBlock =
          """
          capacitors-to-ground: {U9: 100n} | U9
          capacitors-to-ground: {U1: 100} | such as 100n, 4u7 or 10u, got 100
          capacitors-to-ground: {U1: none} | such as 100n, 4u7 or 10u, got none
          capacitors-to-ground: {U1: 0n} | such as 100n, 4u7 or 10u, got 0n
          capacitors-to-ground: {GND: 100n} | not at GND
          capacitors-to-ground: {L1: 100n} | not at L1
          capacitors-to-ground: {U1.3: 100n, U1.2A: 10n} | U1.3 has a capacitor already
          explained: [{finding: DRV-11, place: U1}] | the field because is missing
          explained: [{finding: drv, place: U1, because: so}] | an id of the review looks like DRV-11, got drv
          """)
  void aMistakeGivesOneClearLine(String lines, String complaint) {
    assertThatThrownBy(() -> with(lines))
        .isInstanceOf(InputError.class)
        .hasMessageContaining(complaint)
        .hasMessageMatching("[^\\n]*:\\d+: [^\\n]*");
  }
}
