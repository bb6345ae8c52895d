package straywire.faults;

import java.util.Collections;
import java.util.Map;
import java.util.SortedMap;
import java.util.TreeMap;

/**
 * How often each mechanism is the cause before anything was seen.
 *
 * @param nothingWrong probability that nothing is wrong, above 0 and below 1
 * @param strength number of confirmed cases the table weighs as much as, above 0
 * @param table relative frequency of each mechanism but {@code NOTHING_WRONG}, above 0, any sum
 * @param confirmed confirmed findings of each mechanism so far; absent means none
 */
public record Priors(
    double nothingWrong,
    double strength,
    SortedMap<Mechanism, Double> table,
    SortedMap<Mechanism, Integer> confirmed) {
  public Priors {
    if (!(nothingWrong > 0 && nothingWrong < 1)) {
      throw new IllegalArgumentException("nothing-wrong lies between 0 and 1, got " + nothingWrong);
    }
    if (!(strength > 0) || Double.isInfinite(strength)) {
      throw new IllegalArgumentException("strength is a number above 0, got " + strength);
    }
    for (Mechanism mechanism : Mechanism.values()) {
      if (mechanism == Mechanism.NOTHING_WRONG) {
        continue;
      }
      double frequency = table.getOrDefault(mechanism, 0.0);
      if (!(frequency > 0) || Double.isInfinite(frequency)) {
        throw new IllegalArgumentException(
            "The frequency of " + mechanism.slug() + " is a number above 0, got " + frequency);
      }
    }
    confirmed.forEach(
        (mechanism, count) -> {
          if (count < 0) {
            throw new IllegalArgumentException(
                "The count of " + mechanism.slug() + " is 0 or more, got " + count);
          }
        });
    table = Collections.unmodifiableSortedMap(new TreeMap<>(table));
    confirmed = Collections.unmodifiableSortedMap(new TreeMap<>(confirmed));
  }

  /**
   * Share of {@code mechanism} among all faults: the posterior mean of a Dirichlet distribution
   * whose parameters are {@code alpha_m * strength}, {@code alpha_m} being the table's share of the
   * mechanism, after {@code n_m} confirmed findings of it among {@code N} in all:
   *
   * <pre>(alpha_m * strength + n_m) / (strength + N)</pre>
   *
   * @return above 0; all mechanisms but {@code NOTHING_WRONG} add up to 1
   * @throws IllegalArgumentException for {@code NOTHING_WRONG}, which is not a share of the faults
   */
  public double frequency(Mechanism mechanism) {
    if (mechanism == Mechanism.NOTHING_WRONG) {
      throw new IllegalArgumentException("Nothing-wrong has a probability, not a share of faults");
    }
    double sum = 0;
    int findings = 0;
    for (Mechanism each : Mechanism.values()) {
      if (each != Mechanism.NOTHING_WRONG) {
        sum += table.get(each);
        findings += confirmed.getOrDefault(each, 0);
      }
    }
    double alpha = table.get(mechanism) / sum;
    return (alpha * strength + confirmed.getOrDefault(mechanism, 0)) / (strength + findings);
  }

  /**
   * These priors with further confirmed findings. Findings of {@code NOTHING_WRONG} are left out:
   * cases are kept when something was wrong, so they do not tell how often nothing is.
   *
   * @param confirmedCounts number of findings by mechanism, 0 or more each
   */
  public Priors with(Map<Mechanism, Integer> confirmedCounts) {
    SortedMap<Mechanism, Integer> sum = new TreeMap<>(confirmed);
    confirmedCounts.forEach(
        (mechanism, count) -> {
          if (mechanism != Mechanism.NOTHING_WRONG) {
            sum.merge(mechanism, count, Integer::sum);
          }
        });
    return new Priors(nothingWrong, strength, table, sum);
  }

  /** The table alone, without anything learned. */
  public Priors unlearned() {
    return new Priors(nothingWrong, strength, table, new TreeMap<>());
  }
}
