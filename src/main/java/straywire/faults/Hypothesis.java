package straywire.faults;

import java.util.List;

/**
 * A named set of edits that may be how the module was built.
 *
 * @param id stable name, such as {@code jumper-missing U1.3-U2.3}; two joined by {@code +}
 * @param prior relative weight before anything was seen, above 0
 * @param rule id of the rule that suggested it
 * @param reason why it is plausible there
 * @param words what is wrong, as a person says it
 * @param repair what to do: the inverse of the edits
 */
public record Hypothesis(
    String id,
    Mechanism mechanism,
    List<Edit> edits,
    double prior,
    String rule,
    String reason,
    String words,
    String repair) {
  public Hypothesis {
    edits = List.copyOf(edits);
  }
}
