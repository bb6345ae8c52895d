package straywire.steps;

import java.util.Comparator;
import java.util.List;
import straywire.ranking.Posterior;

/**
 * Choice of the next step by expected information per second. Knows nothing but the probability of
 * each outcome under each hypothesis, so that any model can feed it.
 */
public final class StepChoice {
  private StepChoice() {}

  /**
   * Expected information of a step, in bits: the mutual information of outcome and hypothesis, the
   * entropy of the posterior less its expected entropy after the step (Shannon 1948, section 12).
   *
   * @param posterior weight of each hypothesis, at least 0, any sum above 0
   * @param outcome probability of each outcome under each hypothesis: {@code outcome[h][o]}; each
   *     row adds up to 1
   * @return at least 0
   */
  public static double information(double[] posterior, double[][] outcome) {
    double sum = 0;
    for (double weight : posterior) {
      sum += weight;
    }
    int outcomes = outcome.length == 0 ? 0 : outcome[0].length;
    double[] total = new double[outcomes];
    double conditional = 0;
    for (int h = 0; h < posterior.length; h++) {
      double weight = posterior[h] / sum;
      for (int o = 0; o < outcomes; o++) {
        total[o] += weight * outcome[h][o];
        conditional += weight * Posterior.entropyTerm(outcome[h][o]);
      }
    }
    double entropy = 0;
    for (double p : total) {
      entropy += Posterior.entropyTerm(p);
    }
    return Math.max(0, entropy - conditional);
  }

  /**
   * A step with what it is worth.
   *
   * @param bits expected information, at least 0
   * @param seconds expected time of the hand, above 0
   */
  public record Worth<S>(S step, double bits, double seconds) {
    /** Bits per second. */
    public double rate() {
      return bits / seconds;
    }
  }

  /** Best first by bits per second; equal ones keep their order. */
  public static <S> List<Worth<S>> ranked(List<Worth<S>> steps) {
    return steps.stream()
        .sorted(Comparator.comparingDouble((Worth<S> w) -> w.rate()).reversed())
        .toList();
  }
}
