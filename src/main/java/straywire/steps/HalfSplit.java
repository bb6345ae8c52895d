package straywire.steps;

import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import straywire.module.Point;
import straywire.observe.ReadingTable;
import straywire.observe.Step;
import straywire.ranking.Bank;
import straywire.ranking.Diagnosis;
import straywire.sim.BoardState;
import straywire.sim.Boards;
import straywire.sim.Lanes;
import straywire.sim.Signal;

/**
 * The trade's plain way of choosing a step, to measure ours against: touch the point that is as
 * likely to read as meant as not, so that either answer leaves half of what is suspected. Looks
 * neither at the hand's time nor at the lamps.
 */
public final class HalfSplit {
  private HalfSplit() {}

  /**
   * The measuring step, with no button held, that splits most evenly; when there is none, the step
   * that tells most.
   *
   * @param steps the menu, at least one step
   */
  public static Step pick(Diagnosis diagnosis, List<StepChoice.Worth<Step>> steps) {
    Map<Point, Double> asMeant = new TreeMap<>();
    for (StepChoice.Worth<Step> worth : steps) {
      if (worth.step() instanceof Step.Measure measure && measure.holding().isEmpty()) {
        asMeant.put(measure.point(), 0.0);
      }
    }
    weigh(diagnosis, asMeant);
    Optional<Point> point =
        asMeant.entrySet().stream()
            .min(Comparator.comparingDouble(e -> Math.abs(e.getValue() - 0.5)))
            .map(Map.Entry::getKey);
    return point
        .<Step>map(p -> new Step.Measure(p, Optional.empty()))
        .orElseGet(
            () ->
                steps.stream()
                    .max(Comparator.comparingDouble(StepChoice.Worth::bits))
                    .orElseThrow()
                    .step());
  }

  /** Adds up, for each point, the probability that it reads as on a module with nothing wrong. */
  private static void weigh(Diagnosis diagnosis, Map<Point, Double> asMeant) {
    Map<Bank, double[]> probabilities = new LinkedHashMap<>();
    Optional<Diagnosis.Lane> sound = Optional.empty();
    for (Diagnosis.Candidate candidate : diagnosis.candidates()) {
      Diagnosis.Lane lane = candidate.lane();
      probabilities.computeIfAbsent(lane.bank(), b -> new double[b.boards.lanes()])[lane.index()] =
          candidate.probability();
      if (candidate.hypothesis().edits().isEmpty()) {
        sound = Optional.of(lane);
      }
    }
    Map<Point, Signal> meant = new TreeMap<>();
    Diagnosis.Lane healthy = sound.orElseThrow();
    visit(
        healthy.bank(),
        asMeant,
        (point, signal, group, lanes) -> {
          if (group == Lanes.group(healthy.index()) && (lanes & Lanes.bit(healthy.index())) != 0) {
            meant.put(point, signal);
          }
        });
    ReadingTable table = diagnosis.table();
    probabilities.forEach(
        (bank, weights) ->
            visit(
                bank,
                asMeant,
                (point, signal, group, lanes) -> {
                  int band = table.band(table.usualVolts(meant.get(point)));
                  double share = 0;
                  for (long left = lanes; left != 0; left &= left - 1) {
                    share += weights[group * Lanes.COUNT + Long.numberOfTrailingZeros(left)];
                  }
                  asMeant.merge(point, share * table.meter(signal, band), Double::sum);
                }));
  }

  /** Sees the lanes that show a signal at a point. */
  private interface Visitor {
    void shows(Point point, Signal signal, int group, long lanes);
  }

  private static void visit(Bank bank, Map<Point, Double> points, Visitor visitor) {
    Boards boards = bank.boards;
    BoardState state = bank.state();
    for (int group = 0; group < boards.groups(); group++) {
      long[][] all = boards.allSignals(state, group);
      for (Point point : List.copyOf(points.keySet())) {
        long[] signals = all[boards.wiring().vertex(point)];
        for (Signal signal : Signal.values()) {
          if (signals[signal.ordinal()] != 0) {
            visitor.shows(point, signal, group, signals[signal.ordinal()]);
          }
        }
      }
    }
  }
}
