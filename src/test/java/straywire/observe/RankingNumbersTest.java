package straywire.observe;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;
import straywire.faults.Hypothesis;
import straywire.module.End;
import straywire.module.Entry;
import straywire.module.Point;
import straywire.ranking.Bank;
import straywire.ranking.Diagnosis;
import straywire.ranking.LiveSet;
import straywire.steps.DiagnosisBench;
import straywire.steps.NextStep;
import straywire.steps.StepChoice;

/** What is scored and what is planned with come from the same rows. */
class RankingNumbersTest {
  private static final Hypothesis SOUND = DiagnosisBench.sound(0.5);
  private static final Hypothesis LEG = DiagnosisBench.leg("U1.15", 0.5);
  private static final Point LEG_POINT = new Point(End.pin("U1", 15), true);
  private static final Point ROW = new Point(End.pin("U1", 15), false);

  private static RankingNumbers over(String rows) {
    return RankingNumbers.over(RankingNumbers.shipped(), "mine.yaml", rows);
  }

  private static double[] said(RankingNumbers numbers, Entry entry) {
    Bank bank =
        new Bank(
            DiagnosisBench.MODULE,
            new straywire.sim.Wiring(DiagnosisBench.MODULE),
            List.of(SOUND, LEG),
            ReadingTable.shipped(numbers));
    bank.accept(entry, new double[2]);
    return new double[] {Math.exp(bank.logLikelihood(0)), Math.exp(bank.logLikelihood(1))};
  }

  @Test
  void aBeepIsRightNinetyNineTimesInAHundred() {
    double[] beeped = said(RankingNumbers.shipped(), new Entry.Continuity(LEG_POINT, ROW, true));
    assertThat(beeped[0]).isCloseTo(0.99, within(1e-9));
    assertThat(beeped[1]).isCloseTo(0.01, within(1e-9));
    double[] silent = said(RankingNumbers.shipped(), new Entry.Continuity(LEG_POINT, ROW, false));
    assertThat(silent[0]).isCloseTo(0.01, within(1e-9));
    assertThat(silent[1]).isCloseTo(0.99, within(1e-9));
  }

  @Test
  void aLookFindsWhatShowsAndSeldomImagines() {
    double[] wrong = said(RankingNumbers.shipped(), new Entry.Inspected("leg U1.15", false));
    assertThat(wrong[0]).isCloseTo(0.01, within(1e-9));
    assertThat(wrong[1]).isCloseTo(0.96, within(1e-9));
  }

  @Test
  void anExchangeCuresWhatItMendsNineTimesInTen() {
    assertThat(RankingNumbers.shipped().cures(true)).isEqualTo(0.9);
    assertThat(RankingNumbers.shipped().cures(false)).isEqualTo(0.01);
  }

  @Test
  void aRowOfOnesOwnChangesWhatABeepSaysAndWhatItIsWorth() {
    RankingNumbers mine = over("beep-is-right: {value: 0.6}");
    assertThat(said(mine, new Entry.Continuity(LEG_POINT, ROW, true))[1])
        .isCloseTo(0.4, within(1e-9));
    assertThat(bits(mine, new Step.Beep(LEG_POINT, ROW, Map.of())))
        // One of two, right with 0.6: 1 - H(0.6).
        .isCloseTo(1 + (0.6 * Math.log(0.6) + 0.4 * Math.log(0.4)) / Math.log(2), within(1e-9));
  }

  @Test
  void anExchangeIsWorthWhatTheCureIsBelieved() {
    double cured = (0.9 + 0.01) / 2;
    assertThat(bits(RankingNumbers.shipped(), new Step.Exchange("U1")))
        .isCloseTo(entropy(cured) - (entropy(0.9) + entropy(0.01)) / 2, within(1e-9));
  }

  private static double entropy(double p) {
    return -(p * Math.log(p) + (1 - p) * Math.log(1 - p)) / Math.log(2);
  }

  private static double bits(RankingNumbers numbers, Step step) {
    ReadingTable table = ReadingTable.shipped(numbers);
    Diagnosis diagnosis = new Diagnosis(DiagnosisBench.MODULE, List.of(SOUND, LEG), table);
    DiagnosisBench.accept(diagnosis, DiagnosisBench.POWER_ON);
    NextStep steps =
        new NextStep(
            DiagnosisBench.MODULE,
            new LiveSet(diagnosis.candidates()),
            Instruments.USUAL,
            table,
            DiagnosisBench.SECONDS,
            List.of());
    return steps.ranked().stream()
        .filter(w -> w.step().equals(step))
        .mapToDouble(StepChoice.Worth::bits)
        .findFirst()
        .orElseThrow();
  }

  @Test
  void aLampIsMisreadAsOftenInPlanningAsInScoring() {
    // Three of the four words for a lamp are wrong, and a fourth of the misread rate is each's.
    assertThat(ReadingTable.shipped().lampSlip()).isCloseTo(0.003, within(1e-9));
  }

  @Test
  void mistakesInATableAreNamedWithFileLineAndCure() {
    assertThatThrownBy(() -> over("look-finds: {value: 1.2}"))
        .hasMessage("mine.yaml:1: look-finds.value: expected a number between 0 and 1, got 1.2");
    assertThatThrownBy(() -> over("look-finds: {value: 0.9, unit: bits}"))
        .hasMessage("mine.yaml:1: look-finds.unit: bits is not one of probability");
    assertThatThrownBy(() -> over("look-find: {value: 0.9}"))
        .hasMessageStartingWith("mine.yaml:1: unknown field look-find")
        .hasMessageContaining("look-finds");
    assertThatThrownBy(() -> RankingNumbers.whole("r.yaml", "slip: {value: 0.03}"))
        .hasMessageContaining("r.yaml");
  }
}
