package straywire.casebook;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.function.Predicate;
import straywire.faults.Hypothesis;
import straywire.prove.Quantiles;

/** How one way of choosing steps did over many simulated faults. */
public final class FiguresRow {
  /** A fault and the sitting that looked for it. */
  private record Sitting(Hypothesis truth, Trial.Result result) {
    boolean visible() {
      return result.deviated() || result.right();
    }
  }

  private final List<Sitting> sittings = new ArrayList<>();

  void add(Hypothesis truth, Trial.Result result) {
    sittings.add(new Sitting(truth, result));
  }

  public int sittings() {
    return sittings.size();
  }

  /** Share of the faults that the exercise shows, or that the steps find all the same. */
  public double visible() {
    return share(sittings, Sitting::visible);
  }

  /** Of the visible: share whose group is first when the tool stops. */
  public double first() {
    return share(visibleOnes(), s -> s.result().right());
  }

  /** Of the visible: share whose group is first after at most three steps. */
  public double foundInThree() {
    return share(visibleOnes(), s -> s.result().foundIn(3));
  }

  /** Of the visible: steps until the tool stopped. */
  public Quantiles steps() {
    return Quantiles.of(visibleOnes().stream().map(s -> (double) s.result().steps()).toList());
  }

  /** Of the visible: expected seconds of the hand until the tool stopped. */
  public Quantiles handSeconds() {
    return Quantiles.of(visibleOnes().stream().map(s -> s.result().handSeconds()).toList());
  }

  /** The visible fault that took most of the hand's time. */
  public Optional<String> worst() {
    return visibleOnes().stream()
        .max(
            Comparator.comparingDouble((Sitting s) -> s.result().handSeconds())
                .thenComparing(s -> s.truth().id()))
        .map(s -> s.truth().id());
  }

  /** Ids of the visible faults whose group was not first at the stop, sorted. */
  public List<String> missed() {
    return visibleOnes().stream()
        .filter(s -> !s.result().right())
        .map(s -> s.truth().id())
        .sorted()
        .toList();
  }

  private List<Sitting> visibleOnes() {
    return sittings.stream().filter(Sitting::visible).toList();
  }

  private static double share(List<Sitting> of, Predicate<Sitting> when) {
    return of.isEmpty() ? 0 : (double) of.stream().filter(when).count() / of.size();
  }
}
