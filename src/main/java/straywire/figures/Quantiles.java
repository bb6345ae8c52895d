package straywire.figures;

import java.util.Collection;

/**
 * Mean, median and tail of some measured values.
 *
 * @param count how many values
 * @param p50 the value that half of them do not exceed
 * @param p95 the value that 95 in 100 of them do not exceed
 * @param worst the largest
 */
public record Quantiles(int count, double mean, double p50, double p95, double worst) {

  /** Of at least one value; with none all figures are 0. */
  public static Quantiles of(Collection<Double> values) {
    double[] rising = values.stream().mapToDouble(Double::doubleValue).sorted().toArray();
    if (rising.length == 0) {
      return new Quantiles(0, 0, 0, 0, 0);
    }
    double sum = 0;
    for (double value : rising) {
      sum += value;
    }
    return new Quantiles(
        rising.length,
        sum / rising.length,
        rank(rising, 0.5),
        rank(rising, 0.95),
        rising[rising.length - 1]);
  }

  /** Nearest rank: the smallest value that a share of all values does not exceed. */
  private static double rank(double[] rising, double share) {
    int rank = (int) Math.ceil(share * rising.length);
    return rising[Math.max(0, rank - 1)];
  }
}
