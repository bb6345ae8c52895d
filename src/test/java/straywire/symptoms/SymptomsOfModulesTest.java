package straywire.symptoms;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.TreeSet;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import straywire.advice.RuleBase;
import straywire.advice.SymptomEntry;
import straywire.advice.SymptomTable;
import straywire.faults.FaultExpansion;
import straywire.faults.Hypothesis;
import straywire.faults.PriorsFile;
import straywire.module.Module;
import straywire.module.ModuleFile;
import straywire.parts.ShippedParts;

/** Symptoms of counting, shifting, selecting and reckoning on the shipped modules. */
class SymptomsOfModulesTest {
  private static final Map<String, Bench> BENCHES = new HashMap<>();

  private record Bench(SymptomScores scores, List<Hypothesis> hypotheses) {}

  private static Bench bench(String name) {
    return BENCHES.computeIfAbsent(
        name,
        n -> {
          Module module =
              ModuleFile.readShipped(Path.of("cases", n, "module.yaml"), new ShippedParts());
          return new Bench(
              SymptomBench.scores(module),
              FaultExpansion.expandAll(
                  module, RuleBase.shipped().propose(module), PriorsFile.shipped()));
        });
  }

  private static double yes(String module, String word, String symptom, String fault) {
    Bench bench = bench(module);
    Hypothesis hypothesis =
        bench.hypotheses().stream().filter(h -> h.id().equals(fault)).findFirst().orElseThrow();
    assertThat(bench.scores().offers(symptom, word)).as("%s at %s", symptom, word).isTrue();
    return bench.scores().yes(List.of(hypothesis), symptom, word)[0];
  }

  /** Each with a fault that shows it; what it shows follows from the data sheets. */
  @ParameterizedTest
  @CsvSource({
    "hour-counter, hour, never-counts, jumper-missing U3.2-U1.2",
    "hour-counter, hour, counts-double, contact-bounces strike 2",
    "ripple-divider, count, counts-double, contact-bounces tick 3",
    "beat-counter, number, skips-numbers, output-stuck-low U1.14",
    "hour-counter, hour, starts-over-early, wrong-part U1 74x161 LS",
    "beat-counter, number, starts-over-early, wrong-part U1 74x160 LS",
    "ripple-divider, count, first-only, leg-not-in-row U1.1",
    "ripple-divider, count, stops-half-way, output-stuck-low U1.11",
    "beat-counter, number, loads-always, input-stuck-low U1.9",
    "volume-counter, level, never-clears, shorted-low U1.14",
    "beat-counter, number, wrong-edge, inverter-bypassed U2.1-U2.2",
    "beat-decoder, line, select-reversed, order-reversed S2-U1.3 S1-U1.2 S0-U1.1 at U1.3 U1.2 U1.1",
    "beat-decoder, line, wrong-selected, order-reversed S2-U1.3 S1-U1.2 S0-U1.1 at U1.3 U1.2 U1.1",
    "beat-decoder, line, several-selected, bridged U1.14 U1.15",
    "tally-adder, sum, one-too-high, jumper-missing U4.13-U1.7",
    "tally-adder, sum, carry-wrong, jumper-missing U1.9-U2.7",
    "tune-selector, bell, switch-ignored, jumper-missing select-U1.1",
  })
  void theFaultShowsTheSymptom(String module, String word, String symptom, String fault) {
    assertThat(yes(module, word, symptom, fault)).as(fault).isGreaterThan(0.85);
    assertThat(yes(module, word, symptom, "nothing-wrong")).as("sound").isLessThan(0.05);
  }

  @ParameterizedTest
  @CsvSource({
    "hour-counter, hour, counts-double, wrong-part U1 74x161 LS",
    "hour-counter, hour, starts-over-early, contact-bounces strike 2",
    "beat-counter, number, counts-double, output-stuck-low U1.14",
    "ripple-divider, count, first-only, output-stuck-low U1.11",
    "beat-counter, number, loads-always, jumper-missing U2.2-U1.2",
    "tally-adder, sum, one-too-low, jumper-missing U4.13-U1.7",
    "hour-counter, hour, counts-backwards, contact-bounces strike 2",
  })
  void anotherFaultDoesNot(String module, String word, String symptom, String fault) {
    assertThat(yes(module, word, symptom, fault)).as(fault).isLessThan(0.6);
  }

  /** Every symptom that is computed shows under some fault of some module. */
  @Test
  void aMemoryIsNotAskedAboutCountingNorACounterAboutSelecting() {
    TreeSet<String> counter = new TreeSet<>();
    bench("hour-counter").scores().questions().forEach(q -> counter.add(q.symptom()));
    assertThat(counter)
        .contains("never-counts", "counts-double", "starts-over-early", "first-only", "wrong-edge")
        .doesNotContain("select-reversed", "several-selected", "addresses-share");
    TreeSet<String> memory = new TreeSet<>();
    bench("beat-memory").scores().questions().forEach(q -> memory.add(q.symptom()));
    assertThat(memory).doesNotContain("never-counts", "counts-double", "loads-always");
  }

  @Test
  void theTableHasMoreThanFortyFiveSymptoms() {
    List<SymptomEntry> entries = SymptomTable.shipped().entries();
    assertThat(entries).hasSizeGreaterThanOrEqualTo(45);
    assertThat(entries)
        .filteredOn(e -> e.kind() == SymptomEntry.Kind.EXECUTABLE)
        .hasSize(SymptomPredicate.values().length);
  }
}
