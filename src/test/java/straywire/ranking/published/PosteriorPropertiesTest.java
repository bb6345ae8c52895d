package straywire.ranking.published;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.Arrays;
import java.util.List;
import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import straywire.ranking.Posterior;
import straywire.steps.StepChoice;

/** What must hold of Bayes' rule and of information for any numbers; random ones by seed. */
class PosteriorPropertiesTest {
  private static final double EXACT = 1e-9;

  private static double[] priors(SplittableRandom random, int size) {
    return random.doubles(size).map(p -> p < 0.1 ? 0 : p).toArray();
  }

  /** Rows that add up to 1. */
  private static double[][] outcomes(SplittableRandom random, int hypotheses, int outcomes) {
    double[][] rows = new double[hypotheses][];
    for (int h = 0; h < hypotheses; h++) {
      double[] row = random.doubles(outcomes).toArray();
      double sum = Arrays.stream(row).sum();
      rows[h] = Arrays.stream(row).map(p -> p / sum).toArray();
    }
    return rows;
  }

  private static double[] logs(double[][] outcomes, int seen) {
    return Arrays.stream(outcomes).mapToDouble(row -> Math.log(row[seen])).toArray();
  }

  private static double[] plus(double[] a, double[] b) {
    double[] sum = a.clone();
    Arrays.setAll(sum, i -> a[i] + b[i]);
    return sum;
  }

  @ParameterizedTest
  @ValueSource(longs = {1, 2, 3, 4, 5})
  void probabilitiesAddUpToOneHoweverSmallTheLikelihoods(long seed) {
    SplittableRandom random = new SplittableRandom(seed);
    double[] priors = priors(random, 200);
    double[] logs = random.doubles(200, -90_000, -80_000).toArray();
    double[] posterior = Posterior.of(priors, logs);
    assertThat(Arrays.stream(posterior).sum()).isCloseTo(1, within(EXACT));
    assertThat(Arrays.stream(posterior)).allMatch(p -> p >= 0 && p <= 1);
    for (int h = 0; h < priors.length; h++) {
      if (priors[h] == 0) {
        assertThat(posterior[h]).isZero();
      }
    }
  }

  /** All at once, one after the other, and the other way round. */
  @ParameterizedTest
  @ValueSource(longs = {1, 2, 3, 4, 5})
  void theOrderOfEvidenceDoesNotMatter(long seed) {
    SplittableRandom random = new SplittableRandom(seed);
    double[] priors = priors(random, 50);
    double[] first = logs(outcomes(random, 50, 4), 2);
    double[] second = logs(outcomes(random, 50, 3), 0);
    double[] atOnce = Posterior.of(priors, plus(first, second));
    assertThat(Posterior.of(Posterior.of(priors, first), second))
        .containsExactly(atOnce, within(EXACT));
    assertThat(Posterior.of(Posterior.of(priors, second), first))
        .containsExactly(atOnce, within(EXACT));
  }

  /** Only ratios of priors and of likelihoods count. */
  @Test
  void scaleDoesNotMatter() {
    double[] posterior = Posterior.of(new double[] {1, 3}, new double[] {-1, -2});
    assertThat(posterior[1] / posterior[0]).isCloseTo(3 / Math.E, within(EXACT));
    assertThat(Posterior.of(new double[] {7, 21}, new double[] {-501, -502}))
        .containsExactly(posterior, within(EXACT));
  }

  /** Information is the fall of entropy, averaged over the outcomes: worked out the long way. */
  @ParameterizedTest
  @ValueSource(longs = {1, 2, 3, 4, 5})
  void informationIsTheExpectedFallOfEntropy(long seed) {
    SplittableRandom random = new SplittableRandom(seed);
    double[] weights = priors(random, 30);
    double[][] outcomes = outcomes(random, 30, 5);
    double[] now = Posterior.of(weights, new double[30]);
    double after = 0;
    for (int o = 0; o < 5; o++) {
      double p = 0;
      for (int h = 0; h < 30; h++) {
        p += now[h] * outcomes[h][o];
      }
      after += p * Posterior.entropy(Posterior.of(now, logs(outcomes, o)));
    }
    assertThat(StepChoice.information(weights, outcomes))
        .isCloseTo(Posterior.entropy(now) - after, within(EXACT));
  }

  /**
   * Shannon (1948): a certain answer to an even question is worth one bit; noise takes its part.
   */
  @ParameterizedTest
  @CsvSource({"1.0, 1.0", "0.5, 0.0", "0.89, 0.500084"})
  void worthOfAYesOrNoThatIsRightSoOften(double right, double bits) {
    double[][] outcomes = {{right, 1 - right}, {1 - right, right}};
    assertThat(StepChoice.information(new double[] {2, 2}, outcomes))
        .isCloseTo(bits, within(5.1e-7));
  }

  @Test
  void aStepThatEveryHypothesisPredictsAlikeIsWorthNothing() {
    double[][] outcomes = {{0.2, 0.8}, {0.2, 0.8}, {0.2, 0.8}};
    assertThat(StepChoice.information(new double[] {1, 5, 2}, outcomes))
        .isCloseTo(0, within(EXACT));
  }

  @Test
  void priorsAndLikelihoodsMustBeAsMany() {
    assertThatThrownBy(() -> Posterior.of(new double[2], new double[3]))
        .isInstanceOf(IllegalArgumentException.class)
        .hasMessageContaining("2, 3");
  }

  /** Else every probability would be no number, and the order of the suspects an accident. */
  @Test
  void evidenceThatNothingExplainsIsRefused() {
    double[] impossible = {Double.NEGATIVE_INFINITY, Double.NEGATIVE_INFINITY};
    assertThatThrownBy(() -> Posterior.of(new double[] {1, 1}, impossible))
        .isInstanceOf(IllegalArgumentException.class)
        .hasMessageContaining("None of 2 hypotheses");
    assertThatThrownBy(() -> Posterior.of(new double[] {0, 1}, new double[] {0, impossible[0]}))
        .isInstanceOf(IllegalArgumentException.class);
  }

  /** Half a bit in a second is worth more than nine tenths in two; equal ones keep their order. */
  @Test
  void stepsAreRankedByInformationPerSecond() {
    List<StepChoice.Worth<String>> steps =
        List.of(
            new StepChoice.Worth<>("thorough", 0.9, 2),
            new StepChoice.Worth<>("idle", 0, 1),
            new StepChoice.Worth<>("quick", 0.5, 1),
            new StepChoice.Worth<>("quick too", 1, 2));
    assertThat(StepChoice.ranked(steps))
        .extracting(StepChoice.Worth::step)
        .containsExactly("quick", "quick too", "thorough", "idle");
  }
}
