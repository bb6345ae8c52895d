package straywire.steps;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import straywire.faults.Visibility;
import straywire.module.Point;
import straywire.observe.Instruments;
import straywire.observe.RankingNumber;
import straywire.observe.ReadingTable;
import straywire.observe.Step;
import straywire.observe.StepSeconds;
import straywire.ranking.Diagnosis;
import straywire.ranking.LiveSet;
import straywire.ranking.Posterior;
import straywire.sim.Signal;

/**
 * The cheapest way to tell the leading groups apart by readings alone, found by trying all, against
 * the way that takes the most bits per second each time. Only readings that leave the module as it
 * is take part: meter readings with no button held, rounds of them, looks; then their order does
 * not matter and every set of groups has one cheapest next reading. Readings are taken as certain.
 */
public final class ReadingTree {
  /** Groups that take part; every subset of them is looked at. */
  static final int MOST_GROUPS = 12;

  private final double[] weights;
  private final double beyondDoubt;

  /** Cheapest reading for each way to part the groups: outcome number by group. */
  private final Map<List<Integer>, Double> readings = new LinkedHashMap<>();

  private final Map<Integer, Double> best = new HashMap<>();

  /** No reading yet; {@code weights} of up to {@link #MOST_GROUPS} groups, above 0. */
  ReadingTree(double[] weights, double beyondDoubt) {
    this.beyondDoubt = beyondDoubt;
    this.weights = weights;
  }

  /**
   * What telling the leading groups apart costs, expected seconds of the hand.
   *
   * @param groups how many groups took part
   * @param best the cheapest way
   * @param greedy most bits per second each time; at least {@code best}
   */
  public record Cost(int groups, double best, double greedy) {}

  /** The costs from where a sitting stands; empty when no such reading tells anything apart. */
  public static Optional<Cost> of(
      Diagnosis diagnosis, Instruments instruments, StepSeconds seconds) {
    LiveSet live = new LiveSet(diagnosis.candidates());
    NextStep steps =
        new NextStep(diagnosis.module(), live, instruments, diagnosis.table(), seconds, List.of());
    int[] firsts = leadingGroups(live, steps.prints());
    double[] weights = new double[firsts.length];
    for (int h = 0; h < live.size(); h++) {
      for (int g = 0; g < firsts.length; g++) {
        weights[g] += steps.prints()[h] == steps.prints()[firsts[g]] ? live.weights[h] : 0;
      }
    }
    ReadingTree tree =
        new ReadingTree(weights, diagnosis.table().numbers().of(RankingNumber.BEYOND_DOUBT));
    Visibility visibility = new Visibility(diagnosis.module());
    List<Set<String>> showing = live.hypotheses.stream().map(visibility::subjects).toList();
    for (StepChoice.Worth<Step> worth : steps.ranked()) {
      if (worth.step() instanceof Step.Measure s && s.holding().isEmpty()) {
        tree.offer(meter(live, diagnosis.table(), List.of(s.point()), firsts), worth.seconds());
      } else if (worth.step() instanceof Step.MeasureRound s) {
        tree.offer(meter(live, diagnosis.table(), s.points(), firsts), worth.seconds());
      } else if (worth.step() instanceof Step.Inspect s) {
        List<Object> found = new ArrayList<>();
        Arrays.stream(firsts).forEach(h -> found.add(showing.get(h).contains(s.subject())));
        tree.offer(found, worth.seconds());
      }
    }
    return tree.readings.isEmpty() ? Optional.empty() : Optional.of(tree.cost());
  }

  /** With the readings offered so far. */
  Cost cost() {
    int all = (1 << weights.length) - 1;
    return new Cost(weights.length, best(all), greedy(all));
  }

  /** The first hypothesis of each of the most probable groups. */
  private static int[] leadingGroups(LiveSet live, long[] prints) {
    Map<Long, Double> weightOf = new LinkedHashMap<>();
    Map<Long, Integer> firstOf = new LinkedHashMap<>();
    for (int h = 0; h < live.size(); h++) {
      weightOf.merge(prints[h], live.weights[h], Double::sum);
      firstOf.putIfAbsent(prints[h], h);
    }
    return weightOf.entrySet().stream()
        .sorted(Map.Entry.<Long, Double>comparingByValue().reversed())
        .limit(MOST_GROUPS)
        .mapToInt(e -> firstOf.get(e.getKey()))
        .toArray();
  }

  /** The usual readings by group; none when one of them cannot be told beforehand. */
  private static List<Object> meter(
      LiveSet live, ReadingTable table, List<Point> points, int[] firsts) {
    Signal[][] signals = Prediction.at(live, live.states(), points);
    List<Object> readings = new ArrayList<>();
    for (int h : firsts) {
      List<Integer> bands = new ArrayList<>();
      for (Signal[] point : signals) {
        if (point[h] == Signal.UNKNOWN) {
          return List.of();
        }
        bands.add(table.band(table.usualVolts(point[h])));
      }
      readings.add(bands);
    }
    return readings;
  }

  /** Takes in a reading: its outcome by group, equal ones alike; none when that is not known. */
  void offer(List<?> outcomes, double seconds) {
    List<Object> distinct = outcomes.stream().<Object>map(o -> o).distinct().toList();
    if (distinct.size() > 1) {
      readings.merge(
          outcomes.stream().map(distinct::indexOf).toList(), seconds, (a, b) -> Math.min(a, b));
    }
  }

  /** Splits a set of groups, one bit each, by a reading's outcome. */
  private static List<Integer> parts(int groups, List<Integer> outcomes) {
    Map<Integer, Integer> parts = new LinkedHashMap<>();
    for (int left = groups; left != 0; left &= left - 1) {
      int group = Integer.numberOfTrailingZeros(left);
      parts.merge(outcomes.get(group), 1 << group, (a, b) -> a | b);
    }
    return List.copyOf(parts.values());
  }

  private double weight(int groups) {
    double sum = 0;
    for (int left = groups; left != 0; left &= left - 1) {
      sum += weights[Integer.numberOfTrailingZeros(left)];
    }
    return sum;
  }

  private boolean settled(int groups) {
    double most = 0;
    for (int left = groups; left != 0; left &= left - 1) {
      most = Math.max(most, weights[Integer.numberOfTrailingZeros(left)]);
    }
    return most >= beyondDoubt * weight(groups);
  }

  /** Expected seconds of the cheapest way; what no reading parts costs nothing more. */
  private double best(int groups) {
    Double known = best.get(groups);
    if (known != null) {
      return known;
    }
    double cheapest = Double.POSITIVE_INFINITY;
    if (!settled(groups)) {
      for (Map.Entry<List<Integer>, Double> reading : readings.entrySet()) {
        List<Integer> parts = parts(groups, reading.getKey());
        if (parts.size() > 1) {
          double cost = reading.getValue();
          for (int part : parts) {
            cost += weight(part) / weight(groups) * best(part);
          }
          cheapest = Math.min(cheapest, cost);
        }
      }
    }
    double cost = Double.isInfinite(cheapest) ? 0 : cheapest;
    best.put(groups, cost);
    return cost;
  }

  private double greedy(int groups) {
    if (settled(groups)) {
      return 0;
    }
    double rate = 0;
    double cost = 0;
    List<Integer> chosen = List.of();
    for (Map.Entry<List<Integer>, Double> reading : readings.entrySet()) {
      List<Integer> parts = parts(groups, reading.getKey());
      double bits =
          Posterior.entropy(parts.stream().mapToDouble(p -> weight(p) / weight(groups)).toArray());
      if (parts.size() > 1 && bits / reading.getValue() > rate) {
        rate = bits / reading.getValue();
        cost = reading.getValue();
        chosen = parts;
      }
    }
    for (int part : chosen) {
      cost += weight(part) / weight(groups) * greedy(part);
    }
    return cost;
  }
}
