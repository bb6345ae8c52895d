package straywire.advice;

import java.util.List;
import straywire.faults.Suggestion;
import straywire.module.Module;

/**
 * The trade's knowledge as rules: proposes what may be wrong with a module, and advises at the
 * bench. Loading takes about half a second; keep one for the life of the program.
 */
public final class RuleBase {
  private final RuleSessions proposal;

  private RuleBase(RuleSessions proposal) {
    this.proposal = proposal;
  }

  /** The rules that ship with the tool. */
  public static RuleBase shipped() {
    return new RuleBase(RuleSessions.compiled("straywire.rules.proposal"));
  }

  /**
   * Every mechanism at every place where the rules find it plausible on {@code module}, sorted by
   * rule, mechanism and places; the same list in every run.
   */
  public List<Suggestion> propose(Module module) {
    List<Suggestion> suggestions =
        proposal.conclude(WiringFacts.of(module).all()).stream()
            .filter(Suggestion.class::isInstance)
            .map(Suggestion.class::cast)
            .toList();
    return new Proposals(module).once(suggestions);
  }
}
