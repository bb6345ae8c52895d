package straywire.casebook;

import java.nio.file.Path;
import java.util.Optional;

/**
 * How a case came out.
 *
 * @param rank of the group with the true cause after the last reading before the repair, from 1; 0
 *     when it is nowhere
 * @param steps readings after the first deviation until it was first for good; empty when it never
 *     was
 * @param withinSteps steps that the case allows
 */
public record CaseScore(
    Path file, String title, int rank, Optional<Integer> steps, int withinSteps) {
  /** True when the true cause was first within the steps the case allows. */
  public boolean passed() {
    return steps.isPresent() && steps.get() <= withinSteps;
  }
}
