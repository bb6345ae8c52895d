package straywire.steps;

import java.util.List;
import java.util.Optional;
import straywire.faults.Hypothesis;
import straywire.observe.Step;

/**
 * How a sitting stands: what is suspected, whether that is beyond doubt, and what to do next.
 *
 * @param suspects ambiguity groups, most probable first
 * @param next the step worth most; empty when the sitting may stop
 * @param others further steps worth taking, best first
 * @param uncertainty entropy of the posterior, bits
 */
public record Outlook(
    Verdict verdict,
    List<Suspect> suspects,
    Optional<Proposal> next,
    List<Proposal> others,
    double uncertainty) {

  /** Whether a sitting may stop, and why. */
  public enum Verdict {
    /** More steps tell more. */
    OPEN,
    /** One group is beyond doubt. */
    NAMED,
    /** "Nothing is wrong" is beyond doubt. */
    NOTHING_WRONG,
    /** No step at hand separates what is left. */
    INSEPARABLE
  }

  /**
   * Hypotheses that no step at hand tells apart, or that have one cure, as one line of the ranking.
   *
   * @param probability that one of the members is there, alone or beside another fault, 0 to 1
   * @param withAnother the part of it in which another fault is there as well, 0 to 1: what is left
   *     shows after the repair
   * @param members most probable first
   * @param grounds log entries that speak for or against the first member, strongest first
   */
  public record Suspect(
      double probability, double withAnother, List<Hypothesis> members, List<Ground> grounds) {
    public Hypothesis first() {
      return members.get(0);
    }

    public boolean healthy() {
      return first().edits().isEmpty();
    }
  }

  /**
   * What one log entry says of a suspect.
   *
   * @param entry index in the log, 0 for the first entry
   * @param logFactor natural log of how much likelier the entry is under the suspect than under
   *     everything else together; above 0 speaks for it
   */
  public record Ground(int entry, double logFactor) {}

  /**
   * A step with what it is worth and what to expect.
   *
   * @param bits expected information
   * @param seconds expected time of the hand
   * @param expected for each of the leading suspects, in their order, the expected reading
   */
  public record Proposal(Step step, double bits, double seconds, List<String> expected) {}
}
