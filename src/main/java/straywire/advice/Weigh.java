package straywire.advice;

import java.util.List;
import straywire.faults.Hypothesis;
import straywire.faults.Mechanism;
import straywire.module.Module;

/**
 * How much something that cannot be simulated speaks for, or against, some hypotheses.
 *
 * @param entry number of the log entry that says it
 * @param mechanisms those it concerns; empty for all
 * @param place a part, control, lamp or pin that the hypothesis must touch; empty for anywhere
 * @param factor likelihood ratio against all other hypotheses, above 0; below 1 speaks against
 */
public record Weigh(
    String rule,
    int entry,
    List<Mechanism> mechanisms,
    String place,
    double factor,
    String reason) {
  public Weigh {
    mechanisms = List.copyOf(mechanisms);
    if (!(factor > 0)) {
      throw new IllegalArgumentException("A likelihood ratio is above 0, got " + factor);
    }
  }

  /** True when the factor multiplies the likelihood of {@code hypothesis}. */
  public boolean concerns(Module module, Hypothesis hypothesis) {
    boolean mechanism = mechanisms.isEmpty() || mechanisms.contains(hypothesis.mechanism());
    return mechanism
        && (place.isEmpty()
            || hypothesis.edits().stream()
                .flatMap(e -> e.touches(module).stream())
                .anyMatch(end -> end.label().equals(place) || end.toString().equals(place)));
  }
}
