package straywire.sitting;

import java.util.List;
import java.util.Optional;
import straywire.advice.Advice;
import straywire.advice.Caution;
import straywire.module.ControlState;
import straywire.steps.Outlook;

/**
 * How a sitting stands after its latest entry: all there is to show.
 *
 * @param entries number of the latest entry; 0 before the first
 * @param mayFinish true when the exercise shows nothing wrong, so that the finding may be written
 * @param controls where the hand left controls and power
 * @param caution the urgent caution that stands; the next step answers it
 * @param next the one step asked for; empty when there is a repair to make, or nothing left to do
 * @param others further steps that tell suspects apart, best first
 * @param lamps what each word of lamps was seen to show and should show
 * @param contradictions entries that do not go together, one line each
 */
public record Situation(
    int entries,
    Stage stage,
    boolean mayFinish,
    ControlState controls,
    Outlook outlook,
    Optional<Caution> caution,
    Optional<Proposed> next,
    List<Proposed> others,
    List<LampForecast> lamps,
    List<String> contradictions,
    Advice advice) {
  public Situation {
    others = List.copyOf(others);
    lamps = List.copyOf(lamps);
    contradictions = List.copyOf(contradictions);
  }

  /** What a sitting is about at the moment. */
  public enum Stage {
    /** The by-hand exercise runs, nothing differs so far. */
    EXERCISING,
    /** Something is wrong; steps tell what. */
    SEARCHING,
    /** One group of suspects is beyond doubt, or no step tells what is left apart: repair it. */
    REPAIRING,
    /** A repair was made; the exercise shows whether it cured. */
    CONFIRMING,
    /** All works as it should: the finding can be written. */
    CONFIRMED,
    /** The finding is written. */
    CLOSED
  }

  /**
   * A word of lamps now, one character a lamp, high bit first: 1 lit, 0 dark, ? either.
   *
   * @param seen as last seen since anything was touched, with the marks of the bench log; "-" for a
   *     lamp not looked at
   * @param healthy with nothing wrong
   * @param leader under the leading suspect
   */
  public record LampForecast(
      String word, List<String> members, String seen, String healthy, String leader) {}
}
