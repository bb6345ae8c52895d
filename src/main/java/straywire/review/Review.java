package straywire.review;

import java.util.List;
import straywire.advice.Caution;
import straywire.electrical.SupplyEstimate;
import straywire.module.OnPaper.Explained;

/**
 * What the wiring review of a module found.
 *
 * @param open findings that nothing explains, the worst first
 * @param meant notes that the module file explains
 * @param idle explanations that match no note
 */
public record Review(
    String module,
    List<Finding> open,
    List<Meant> meant,
    List<Explained> idle,
    List<Caution> cautions,
    SupplyEstimate supply) {
  /** A note and why it is as it should be. */
  public record Meant(Finding finding, String because) {}

  public Review {
    open = List.copyOf(open);
    meant = List.copyOf(meant);
    idle = List.copyOf(idle);
    cautions = List.copyOf(cautions);
  }

  /** True when nothing is left to say but what is explained. */
  public boolean clean() {
    return open.isEmpty() && idle.isEmpty();
  }

  public long count(Severity severity) {
    return open.stream().filter(f -> f.severity() == severity).count();
  }
}
