package straywire.review;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.SortedMap;
import java.util.stream.Stream;
import straywire.advice.Caution;
import straywire.advice.RuleSessions;
import straywire.advice.WiringFacts;
import straywire.electrical.SupplyEstimate;
import straywire.module.Module;
import straywire.module.OnPaper.Explained;

/**
 * Looks at a module on paper before it is powered: rules over the wiring and over what was computed
 * of currents, voltages and logic. Not for use by several threads at once.
 */
public final class WiringReview {
  public static final String REVIEW = "straywire.rules.review";

  private final RuleSessions rules = RuleSessions.compiled(REVIEW);

  private WiringReview() {}

  /** The rules that ship with the tool. */
  public static WiringReview shipped() {
    return new WiringReview();
  }

  /** Everything that can be seen wrong in {@code module}; the same in every run. */
  public Review of(Module module) {
    SupplyEstimate supply = SupplyEstimate.of(module);
    List<Object> conclusions =
        rules.conclude(
            Stream.<Object>concat(
                    WiringFacts.of(module).all().stream(), ReviewFacts.of(module, supply).stream())
                .toList());
    List<Finding> open = new ArrayList<>();
    List<Review.Meant> meant = new ArrayList<>();
    List<Explained> idle = new ArrayList<>(module.onPaper().explained());
    conclusions.stream()
        .filter(Finding.class::isInstance)
        .map(Finding.class::cast)
        .sorted(Finding.ORDER)
        .forEach(
            finding -> {
              Optional<Explained> why = explained(module, finding);
              if (why.isPresent()) {
                meant.add(new Review.Meant(finding, why.get().because()));
                idle.remove(why.get());
              } else {
                open.add(finding);
              }
            });
    List<Caution> cautions =
        conclusions.stream()
            .filter(Caution.class::isInstance)
            .map(Caution.class::cast)
            .sorted(Caution.ORDER)
            .toList();
    return new Review(module.name(), open, meant, idle, cautions, supply);
  }

  /** Only a note can be as it should be. */
  private static Optional<Explained> explained(Module module, Finding finding) {
    return module.onPaper().explained().stream()
        .filter(e -> finding.severity() == Severity.NOTE)
        .filter(e -> e.finding().equals(finding.rule()) && e.place().equals(finding.place()))
        .findFirst();
  }

  /** The sentence of every rule by its id. */
  public SortedMap<String, String> sentences() {
    return rules.sentences();
  }
}
