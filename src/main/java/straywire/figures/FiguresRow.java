package straywire.figures;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.function.Predicate;
import straywire.faults.Hypothesis;

/** How one way of choosing steps did over many simulated faults. */
public final class FiguresRow {
  /** The sitting that looked for a fault, without its outlooks: these are large. */
  private record Sitting(
      String fault,
      boolean deviated,
      boolean right,
      boolean foundInThree,
      int steps,
      double handSeconds) {
    boolean visible() {
      return deviated || right;
    }
  }

  private final List<Sitting> sittings = new ArrayList<>();

  void add(Hypothesis truth, Trial.Result result) {
    sittings.add(
        new Sitting(
            truth.id(),
            result.deviated(),
            result.right(),
            result.foundIn(3),
            result.steps(),
            result.handSeconds()));
  }

  /** The same, of the faults that the exercise shows: these are the same in every way. */
  public FiguresRow shown() {
    FiguresRow shown = new FiguresRow();
    sittings.stream().filter(Sitting::deviated).forEach(shown.sittings::add);
    return shown;
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
    return share(visibleOnes(), Sitting::right);
  }

  /** Of the visible: share whose group is first after at most three steps. */
  public double foundInThree() {
    return share(visibleOnes(), Sitting::foundInThree);
  }

  /** Of the visible: steps until the tool stopped. */
  public Quantiles steps() {
    return Quantiles.of(visibleOnes().stream().map(s -> (double) s.steps()).toList());
  }

  /** Of the visible: expected seconds of the hand until the tool stopped. */
  public Quantiles handSeconds() {
    return Quantiles.of(visibleOnes().stream().map(Sitting::handSeconds).toList());
  }

  /** The visible fault that took most of the hand's time. */
  public Optional<String> worst() {
    return visibleOnes().stream()
        .max(
            Comparator.comparingDouble((Sitting s) -> s.handSeconds())
                .thenComparing(Sitting::fault))
        .map(Sitting::fault);
  }

  /** Ids of the visible faults whose group was not first at the stop, sorted. */
  public List<String> missed() {
    return visibleOnes().stream().filter(s -> !s.right()).map(Sitting::fault).sorted().toList();
  }

  private List<Sitting> visibleOnes() {
    return sittings.stream().filter(Sitting::visible).toList();
  }

  private static double share(List<Sitting> of, Predicate<Sitting> when) {
    return of.isEmpty() ? 0 : (double) of.stream().filter(when).count() / of.size();
  }
}
