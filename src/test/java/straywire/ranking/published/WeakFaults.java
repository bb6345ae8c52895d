package straywire.ranking.published;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.OptionalInt;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import straywire.ranking.Posterior;
import straywire.steps.StepChoice;

/**
 * Diagnosis under the weak fault model: a broken component may do anything. One hypothesis for each
 * set of components, bit i for component i; evidence is a value at a point.
 *
 * <p>Rule of update: of a point whose value follows from the healthy components and the evidence, a
 * hypothesis predicts that value for certain; of any other point it predicts each of the m values
 * of the domain with 1/m. That is the rule of de Kleer and Williams (1987), written as P(outcome |
 * hypothesis).
 */
final class WeakFaults {
  /** What follows under a hypothesis about a point, given the evidence. */
  interface Model {
    OptionalInt value(int broken, Map<String, Integer> evidence, String point);
  }

  private final List<String> components;
  private final int domain;
  private final Model model;
  private final double[] priors;
  private final double[] logLikelihoods;
  private final Map<String, Integer> evidence = new LinkedHashMap<>();

  /**
   * @param prior of each component being broken
   * @param domain number of values, 0 to domain-1
   */
  WeakFaults(List<String> components, double prior, int domain, Model model) {
    this.components = components;
    this.domain = domain;
    this.model = model;
    priors = new double[1 << components.size()];
    logLikelihoods = new double[priors.length];
    for (int broken = 0; broken < priors.length; broken++) {
      int count = Integer.bitCount(broken);
      priors[broken] = Math.pow(prior, count) * Math.pow(1 - prior, components.size() - count);
    }
  }

  WeakFaults observe(String point, int value) {
    for (int broken = 0; broken < priors.length; broken++) {
      if (logLikelihoods[broken] > Double.NEGATIVE_INFINITY) {
        logLikelihoods[broken] += Math.log(outcomes(broken, point)[value]);
      }
    }
    evidence.put(point, value);
    return this;
  }

  private double[] outcomes(int broken, String point) {
    OptionalInt predicted = model.value(broken, evidence, point);
    double[] p = new double[domain];
    if (predicted.isPresent()) {
      p[predicted.getAsInt()] = 1;
    } else {
      Arrays.fill(p, 1.0 / domain);
    }
    return p;
  }

  double[] posterior() {
    return Posterior.of(priors, logLikelihoods);
  }

  double posterior(String... broken) {
    return posterior()[set(List.of(broken))];
  }

  /** Probability that a component is among the broken ones. */
  double marginal(String component) {
    double[] posterior = posterior();
    int bit = set(List.of(component));
    return IntStream.range(0, posterior.length)
        .filter(d -> (d & bit) != 0)
        .mapToDouble(d -> posterior[d])
        .sum();
  }

  private int set(List<String> names) {
    return names.stream().mapToInt(name -> 1 << components.indexOf(name)).sum();
  }

  double entropy() {
    return Posterior.entropy(posterior());
  }

  double information(String point) {
    return information(posterior(), point);
  }

  private double information(double[] weights, String point) {
    double[][] outcomes = new double[weights.length][domain];
    for (int broken = 0; broken < weights.length; broken++) {
      if (weights[broken] > 0) {
        outcomes[broken] = outcomes(broken, point);
      }
    }
    return StepChoice.information(weights, outcomes);
  }

  double expectedEntropy(String point) {
    return entropy() - information(point);
  }

  /** Points in the order in which the program would probe them, all equally quick. */
  List<String> ranked(String... points) {
    return StepChoice.ranked(
            Arrays.stream(points)
                .map(point -> new StepChoice.Worth<>(point, information(point), 1))
                .toList())
        .stream()
        .map(StepChoice.Worth::step)
        .toList();
  }

  private List<Integer> possible() {
    double[] posterior = posterior();
    return IntStream.range(0, posterior.length).filter(d -> posterior[d] > 0).boxed().toList();
  }

  int diagnoses() {
    return possible().size();
  }

  /** Sets of components, each as its sorted names joined by a space. */
  private Set<String> names(List<Integer> sets) {
    return sets.stream()
        .map(
            s ->
                IntStream.range(0, components.size())
                    .filter(i -> (s >> i & 1) == 1)
                    .mapToObj(components::get)
                    .sorted()
                    .collect(Collectors.joining(" ")))
        .collect(Collectors.toCollection(TreeSet::new));
  }

  private static List<Integer> minimal(List<Integer> sets) {
    return sets.stream()
        .filter(s -> sets.stream().noneMatch(t -> !t.equals(s) && (t & s) == t))
        .toList();
  }

  Set<String> minimalDiagnoses() {
    return names(minimal(possible()));
  }

  /** Smallest sets of components that cannot all be healthy. */
  Set<String> minimalConflicts() {
    Set<Integer> possible = Set.copyOf(possible());
    int all = priors.length - 1;
    List<Integer> conflicts = new ArrayList<>();
    for (int healthy = 0; healthy <= all; healthy++) {
      if (!possible.contains(all & ~healthy)) {
        conflicts.add(healthy);
      }
    }
    return names(minimal(conflicts));
  }

  private List<Integer> smallest() {
    List<Integer> possible = possible();
    int least = possible.stream().mapToInt(Integer::bitCount).min().orElseThrow();
    return possible.stream().filter(d -> Integer.bitCount(d) == least).toList();
  }

  Set<String> smallestDiagnoses() {
    return names(smallest());
  }

  /**
   * The measurement cost of Forbus and de Kleer (1993), lower is better: the sum of c log2 c over
   * the values predicted, c the number of smallest diagnoses that predict it. With n equally likely
   * smallest diagnoses, all of which predict the point, that is n times the entropy expected to be
   * left, n (log2 n - information), and so it is taken from the program's information here.
   */
  double cost(String point) {
    List<Integer> smallest = smallest();
    double[] weights = new double[priors.length];
    for (int broken : smallest) {
      if (model.value(broken, evidence, point).isEmpty()) {
        throw new IllegalStateException("A smallest diagnosis says nothing about " + point);
      }
      weights[broken] = 1;
    }
    int n = smallest.size();
    return n * (Math.log(n) / Math.log(2) - information(weights, point));
  }
}
