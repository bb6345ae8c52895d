package straywire.observe;

import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.function.Function;
import straywire.faults.Hypothesis;

/** A question about what was noticed, with how likely each hypothesis makes a yes. */
public final class Question {
  public final Step.Ask step;

  private final Function<List<Hypothesis>, double[]> yes;
  private final Map<String, Double> known = new HashMap<>();

  /**
   * A question.
   *
   * @param yes probability of a yes, above 0 and below 1, of each hypothesis in order
   */
  public Question(Step.Ask step, Function<List<Hypothesis>, double[]> yes) {
    this.step = step;
    this.yes = yes;
  }

  /** Probability of a yes under each hypothesis; each is worked out once. */
  public double[] yes(List<Hypothesis> hypotheses) {
    List<Hypothesis> fresh = hypotheses.stream().filter(h -> !known.containsKey(h.id())).toList();
    if (!fresh.isEmpty()) {
      double[] computed = yes.apply(fresh);
      for (int h = 0; h < computed.length; h++) {
        known.put(fresh.get(h).id(), computed[h]);
      }
    }
    return hypotheses.stream().mapToDouble(h -> known.get(h.id())).toArray();
  }
}
