package straywire.advice;

import java.util.List;

/**
 * What the rules have to say at one moment of a sitting. Lists are sorted, urgent cautions first,
 * then by rule, entry and text.
 *
 * @param powerOffFirst true when the next step must be one with the power off
 */
public record Advice(
    List<Weigh> weights,
    List<Normal> normal,
    List<Caution> cautions,
    List<Hint> hints,
    boolean powerOffFirst) {
  public Advice {
    weights = List.copyOf(weights);
    normal = List.copyOf(normal);
    cautions = List.copyOf(cautions);
    hints = List.copyOf(hints);
  }
}
