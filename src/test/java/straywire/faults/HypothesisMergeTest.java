package straywire.faults;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Random;
import java.util.TreeMap;
import org.junit.jupiter.api.Test;
import straywire.module.Module;

class HypothesisMergeTest {
  private static final double EXACT = 1e-12;
  private static final Module MODULE = SmallBoard.module();

  /** Every mechanism 1 but jumper-missing 6 and supply-jumper-missing 3. */
  private static Priors priors() {
    TreeMap<Mechanism, Double> table = new TreeMap<>();
    for (Mechanism m : Mechanism.values()) {
      if (m != Mechanism.NOTHING_WRONG) {
        table.put(m, 1.0);
      }
    }
    table.put(Mechanism.JUMPER_MISSING, 6.0);
    table.put(Mechanism.SUPPLY_JUMPER_MISSING, 3.0);
    return new Priors(0.4, 100, table, new TreeMap<>());
  }

  private static Suggestion suggestion(
      String rule, double weight, Mechanism mechanism, String... places) {
    return new Suggestion(rule, mechanism, List.of(places), weight, "Reason of " + rule + ".");
  }

  private static List<Hypothesis> expand(Suggestion... suggestions) {
    return FaultExpansion.expandAll(MODULE, List.of(suggestions), priors());
  }

  @Test
  void nothingWrongTakesPartUnasked() {
    assertThat(expand())
        .singleElement()
        .satisfies(
            h -> {
              assertThat(h.id()).isEqualTo("nothing-wrong");
              assertThat(h.prior()).isEqualTo(0.4);
            });
    assertThat(expand(suggestion("N-1", 3, Mechanism.NOTHING_WRONG)))
        .singleElement()
        .satisfies(
            h -> {
              assertThat(h.rule()).isEqualTo("N-1");
              assertThat(h.prior()).isEqualTo(0.4);
            });
  }

  @Test
  void aMechanismsFrequencyIsSharedAmongItsPlacesByWeight() {
    List<Hypothesis> all =
        expand(
            suggestion("J-1", 1, Mechanism.JUMPER_MISSING, "U1.5-U3.1"),
            suggestion("J-1", 2, Mechanism.JUMPER_MISSING, "U1.7-U3.3"),
            suggestion("T-1", 1, Mechanism.TURNED, "U1"));
    assertThat(all)
        .extracting(Hypothesis::id)
        .containsExactly(
            "nothing-wrong", "jumper-missing U1.5-U3.1", "jumper-missing U1.7-U3.3", "turned U1");
    // 0.6 of faults, 6 parts of 7 to jumpers, of which one third and two thirds.
    assertThat(all.get(1).prior()).isCloseTo(0.6 * 6 / 7 / 3, within(EXACT));
    assertThat(all.get(2).prior()).isCloseTo(0.6 * 6 / 7 * 2 / 3, within(EXACT));
    assertThat(all.get(3).prior()).isCloseTo(0.6 / 7, within(EXACT));
  }

  @Test
  void twoRulesWithTheSameEditsMakeOneHypothesisWithTheLargerWeight() {
    List<Hypothesis> all =
        expand(
            suggestion("J-2", 1, Mechanism.JUMPER_MISSING, "U1.5-U3.1"),
            suggestion("J-1", 3, Mechanism.JUMPER_MISSING, "U1.5-U3.1"),
            suggestion("J-1", 1, Mechanism.JUMPER_MISSING, "U1.7-U3.3"));
    assertThat(all).hasSize(3);
    assertThat(all.get(1).rule()).isEqualTo("J-1, J-2");
    assertThat(all.get(1).reason()).isEqualTo("Reason of J-1. Reason of J-2.");
    assertThat(all.get(1).prior()).isCloseTo(0.6 * 3 / 4, within(EXACT));
    assertThat(all.get(2).prior()).isCloseTo(0.6 * 1 / 4, within(EXACT));
  }

  @Test
  void aSupplyJumperSuggestedAsAnyJumperStaysASupplyJumper() {
    List<Hypothesis> all =
        expand(
            suggestion("J-1", 1, Mechanism.JUMPER_MISSING, "VCC-U3.14"),
            suggestion("J-1", 1, Mechanism.JUMPER_MISSING, "U1.5-U3.1"),
            suggestion("J-1", 1, Mechanism.JUMPER_MISSING, "U1.7-U3.3"),
            suggestion("P-1", 1, Mechanism.SUPPLY_JUMPER_MISSING, "VCC-U3.14"));
    assertThat(all)
        .extracting(Hypothesis::id)
        .containsExactly(
            "nothing-wrong",
            "jumper-missing U1.5-U3.1",
            "jumper-missing U1.7-U3.3",
            "supply-jumper-missing VCC-U3.14");
    assertThat(all.get(3).rule()).isEqualTo("J-1, P-1");
    // Shares 2, 2 and 3 of 7.
    assertThat(all.get(3).prior()).isCloseTo(0.6 * 3 / 7, within(EXACT));
  }

  @Test
  void aSwapAndATwoWireReversalAreOne() {
    assertThat(
            expand(
                suggestion(
                    "S-1", 1, Mechanism.ENDS_SWAPPED, "U1.5-U3.1", "U3.1", "U1.7-U3.3", "U3.3"),
                suggestion(
                    "S-2", 1, Mechanism.ORDER_REVERSED, "U1.5-U3.1", "U3.1", "U1.7-U3.3", "U3.3")))
        .extracting(Hypothesis::id)
        .containsExactly("nothing-wrong", "ends-swapped U1.5-U3.1 U3.1 with U1.7-U3.3 U3.3");
  }

  @Test
  void theOrderOfSuggestionsMakesNoDifferenceAndPriorsAddUpToOne() {
    List<Suggestion> suggestions = new ArrayList<>();
    MODULE
        .jumpers()
        .forEach(j -> suggestions.add(suggestion("J-1", 1, Mechanism.JUMPER_MISSING, j.name())));
    suggestions.add(suggestion("J-2", 2, Mechanism.JUMPER_MISSING, "U1.5-U3.1"));
    suggestions.add(suggestion("P-1", 1, Mechanism.SUPPLY_JUMPER_MISSING, "VCC-U3.14"));
    suggestions.add(suggestion("B-1", 1, Mechanism.BRIDGED, "U3.1", "U3.2"));
    suggestions.add(suggestion("B-2", 2, Mechanism.BRIDGED, "U3.2", "U3.1"));
    suggestions.add(suggestion("T-1", 1, Mechanism.TURNED, "U1"));
    List<Hypothesis> first = FaultExpansion.expandAll(MODULE, suggestions, priors());
    assertThat(first).extracting(Hypothesis::id).doesNotHaveDuplicates();
    assertThat(first.stream().mapToDouble(Hypothesis::prior).sum()).isCloseTo(1, within(EXACT));
    Random random = new Random(7);
    for (int i = 0; i < 20; i++) {
      Collections.shuffle(suggestions, random);
      assertThat(FaultExpansion.expandAll(MODULE, suggestions, priors())).isEqualTo(first);
    }
  }
}
