package straywire.ranking;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.Arrays;
import java.util.List;
import org.junit.jupiter.api.Test;
import straywire.faults.Hypothesis;
import straywire.faults.HypothesisPairs;
import straywire.module.Entry;
import straywire.observe.RankingNumbers;
import straywire.ranking.Diagnosis.Candidate;
import straywire.steps.DiagnosisBench;
import straywire.symptoms.SymptomBench;

/** A cure works nine times in ten; two hundredths of the first priors stay with everything. */
class AfterRepairTest {
  private static final Hypothesis SOUND = DiagnosisBench.sound(0.5);
  private static final Hypothesis WIRE = DiagnosisBench.missing("A1-U1.15", 0.3);
  private static final Hypothesis LEG = DiagnosisBench.leg("U1.13", 0.2);
  private static final List<Hypothesis> SINGLES = List.of(SOUND, WIRE, LEG);
  private static final Hypothesis BOTH = HypothesisPairs.pair(WIRE, LEG, 0.5).orElseThrow();

  private static Candidate candidate(Hypothesis hypothesis, double probability) {
    return new Candidate(
        hypothesis, probability, new Diagnosis.Lane(DiagnosisBench.bank(hypothesis), 0));
  }

  private static void assertPriors(Entry cure, List<Candidate> before, double... expected) {
    double[] priors = AfterRepair.priors(cure, SINGLES, before, RankingNumbers.shipped());
    assertThat(priors).containsExactly(expected, within(1e-9));
    assertThat(Arrays.stream(priors).sum()).isCloseTo(1, within(1e-9));
  }

  @Test
  void mostOfAMendedFaultGoesToNothingWrong() {
    assertPriors(
        new Entry.Repaired(WIRE.id()),
        List.of(candidate(WIRE, 0.7), candidate(SOUND, 0.2), candidate(LEG, 0.1)),
        // 0.98 * (0.2 + 0.9 * 0.7) + 0.02 * 0.5
        0.8234,
        // 0.98 * 0.1 * 0.7 + 0.02 * 0.3
        0.0746,
        // 0.98 * 0.1 + 0.02 * 0.2
        0.102);
  }

  @Test
  void ofAPairTheOtherFaultIsLeft() {
    assertPriors(new Entry.Repaired(WIRE.id()), List.of(candidate(BOTH, 1)), 0.01, 0.104, 0.886);
    // The first fault of a pair stands for both when the cure fails.
    assertPriors(new Entry.Repaired(LEG.id()), List.of(candidate(BOTH, 1)), 0.01, 0.986, 0.004);
  }

  @Test
  void ofAPairMendedWholeNothingIsLeft() {
    assertPriors(new Entry.Repaired(BOTH.id()), List.of(candidate(BOTH, 1)), 0.892, 0.104, 0.004);
  }

  @Test
  void aCureOfSomethingElseMovesNothing() {
    assertPriors(
        new Entry.Exchanged("U5"),
        List.of(candidate(WIRE, 0.6), candidate(SOUND, 0.4)),
        0.402,
        0.594,
        0.004);
  }

  @Test
  void anExchangeMendsWhatIsInsideThePartAndNoWire() {
    assertThat(AfterRepair.mends(new Entry.Exchanged("U1"), LEG)).isTrue();
    assertThat(AfterRepair.mends(new Entry.Exchanged("U1"), WIRE)).isFalse();
    assertThat(AfterRepair.mends(new Entry.Exchanged("U2"), LEG)).isFalse();
    assertThat(
            AfterRepair.mends(
                new Entry.Exchanged("U1"), SymptomBench.fault("leg-not-in-row U10.1", List.of())))
        .as("U1 is not U10")
        .isFalse();
    assertThat(AfterRepair.mends(new Entry.Power(true), LEG)).isFalse();
  }

  @Test
  void aRepairMendsTheFaultItNamesAlsoAsOneOfTwo() {
    assertThat(AfterRepair.mends(new Entry.Repaired(WIRE.id()), WIRE)).isTrue();
    assertThat(AfterRepair.mends(new Entry.Repaired(BOTH.id()), WIRE)).isTrue();
    assertThat(AfterRepair.mends(new Entry.Repaired(BOTH.id()), LEG)).isTrue();
    assertThat(AfterRepair.mends(new Entry.Repaired(LEG.id()), WIRE)).isFalse();
  }
}
