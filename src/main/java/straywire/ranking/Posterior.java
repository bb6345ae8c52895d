package straywire.ranking;

/** Bayes' rule over a list of hypotheses. */
public final class Posterior {
  private static final double LOG_2 = Math.log(2);

  private Posterior() {}

  /**
   * Normalised posterior from priors and log likelihoods.
   *
   * @param priors at least 0, any sum above 0
   * @param logLikelihoods natural logarithms, at most 0 or so; the same length
   * @return probabilities that add up to 1
   * @throws IllegalArgumentException when no hypothesis with a prior explains what was seen at all
   */
  public static double[] of(double[] priors, double[] logLikelihoods) {
    if (priors.length != logLikelihoods.length) {
      throw new IllegalArgumentException(
          "As many priors as likelihoods: " + priors.length + ", " + logLikelihoods.length);
    }
    double most = Double.NEGATIVE_INFINITY;
    for (int h = 0; h < priors.length; h++) {
      if (priors[h] > 0) {
        most = Math.max(most, Math.log(priors[h]) + logLikelihoods[h]);
      }
    }
    if (priors.length > 0 && most == Double.NEGATIVE_INFINITY) {
      throw new IllegalArgumentException(
          "None of " + priors.length + " hypotheses is possible, so nothing can be ranked");
    }
    double[] posterior = new double[priors.length];
    double sum = 0;
    for (int h = 0; h < priors.length; h++) {
      posterior[h] = priors[h] > 0 ? Math.exp(Math.log(priors[h]) + logLikelihoods[h] - most) : 0;
      sum += posterior[h];
    }
    for (int h = 0; h < priors.length; h++) {
      posterior[h] /= sum;
    }
    return posterior;
  }

  /** Entropy in bits of probabilities that add up to 1. */
  public static double entropy(double[] probabilities) {
    double entropy = 0;
    for (double p : probabilities) {
      entropy += entropyTerm(p);
    }
    return entropy;
  }

  /** Contribution of one probability to an entropy, in bits. */
  public static double entropyTerm(double p) {
    return p > 0 ? -p * Math.log(p) / LOG_2 : 0;
  }
}
