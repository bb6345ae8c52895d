package straywire.advice;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import java.util.EnumMap;
import java.util.EnumSet;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.junit.jupiter.api.Test;
import straywire.faults.FaultExpansion;
import straywire.faults.Hypothesis;
import straywire.faults.Mechanism;
import straywire.faults.PriorsFile;
import straywire.faults.Suggestion;
import straywire.format.TextFile;
import straywire.module.Module;
import straywire.module.ModuleFile;
import straywire.parts.ShippedParts;

class ProposalTest {
  private static final RuleBase RULES = RuleBase.shipped();
  private final List<Suggestion> suggestions = RULES.propose(BeatMemory.MODULE);

  @Test
  void everyMechanismIsProposedThatTheModuleHasAPlaceFor() {
    Set<Mechanism> proposed = EnumSet.noneOf(Mechanism.class);
    suggestions.forEach(s -> proposed.add(s.mechanism()));
    // Its rails are in one piece, its parts are supplied at the corners and have their capacitors,
    // its controls have one contact each, its button clocks nothing and its memories come empty.
    assertThat(EnumSet.complementOf(EnumSet.copyOf(proposed)))
        .containsExactly(
            Mechanism.RAIL_NOT_LINKED,
            Mechanism.SUPPLY_AT_CORNERS,
            Mechanism.THROWS_EXCHANGED,
            Mechanism.COMMON_OPEN,
            Mechanism.CONTACT_BOUNCES,
            Mechanism.CONTENTS_WRONG,
            Mechanism.SUPPLY_NOT_QUIET);
  }

  @Test
  void theCountOfEachMechanismIsKnown() {
    Map<Mechanism, Integer> counts = new EnumMap<>(Mechanism.class);
    suggestions.forEach(s -> counts.merge(s.mechanism(), 1, Integer::sum));
    assertThat(counts)
        // 66 alone, and 12 halves of a bus at once.
        .containsEntry(Mechanism.JUMPER_MISSING, 78)
        .containsEntry(Mechanism.SUPPLY_JUMPER_MISSING, 10)
        .containsEntry(Mechanism.LEG_NOT_IN_ROW, 76)
        .containsEntry(Mechanism.INVERTER_BYPASSED, 10)
        .containsEntry(Mechanism.BARE_LED, 18)
        .containsEntry(Mechanism.LED_DEAD, 16)
        .containsEntry(Mechanism.CONTACT_DEAD, 14)
        .containsEntry(Mechanism.TURNED, 5)
        .containsEntry(Mechanism.NOT_ACROSS_TRENCH, 5)
        .containsEntry(Mechanism.SUPPLY_AS_16, 2)
        .containsEntry(Mechanism.WRONG_RAIL, 7);
  }

  @Test
  void everySuggestionBecomesAHypothesisOfItsOwn() {
    List<Hypothesis> hypotheses =
        FaultExpansion.expandAll(BeatMemory.MODULE, suggestions, PriorsFile.shipped());
    assertThat(hypotheses).hasSameSizeAs(suggestions);
  }

  @Test
  void aPartThatAloneLacksItsCapacitorIsSuspected() {
    String text = TextFile.read(Path.of("cases/beat-memory/module.yaml")).replace("U2: 100n, ", "");
    Module module = ModuleFile.parse("module.yaml", text, new ShippedParts());
    assertThat(RULES.propose(module))
        .filteredOn(s -> s.mechanism() == Mechanism.SUPPLY_NOT_QUIET)
        .extracting(Suggestion::places)
        .containsExactly(List.of("U2"));
    assertThat(FaultExpansion.expandAll(module, RULES.propose(module), PriorsFile.shipped()))
        .extracting(Hypothesis::id)
        .contains("supply-not-quiet U2");
  }

  @Test
  void theSameListComesOutEveryTime() {
    assertThat(RULES.propose(BeatMemory.MODULE)).isEqualTo(suggestions);
    assertThat(RuleBase.shipped().propose(BeatMemory.MODULE)).isEqualTo(suggestions);
    assertThat(suggestions).isSortedAccordingTo(Proposals.ORDER);
  }

  @Test
  void noWiringIsSuggestedTwice() {
    Set<String> seen = new HashSet<>();
    for (Suggestion s : suggestions) {
      assertThat(seen.add(s.mechanism() + " " + s.places())).as(s.toString()).isTrue();
    }
  }

  @Test
  void linesOfAWordCanBeExchangedThoughTheirPinsLieApart() {
    assertProposed(Mechanism.ENDS_SWAPPED, "D6-U1.10", "U1.10", "D1-U2.6", "U2.6");
  }

  @Test
  void theDataCanBeReversedOnTheWayInAndOnTheWayOut() {
    assertThat(suggestions)
        .filteredOn(s -> s.rule().equals("BUS-05"))
        .anyMatch(
            s ->
                s.places().contains("D7-U1.12")
                    && s.places().contains("D0-U2.4")
                    && s.places().contains("U1.11-U3.9")
                    && s.places().size() == 32);
  }

  @Test
  void aNibbleCanBeReversedBeforeTheInverters() {
    assertProposed(
        Mechanism.ORDER_REVERSED,
        "U1.11-U3.9",
        "U3.9",
        "U1.9-U3.5",
        "U3.5",
        "U1.7-U3.3",
        "U3.3",
        "U1.5-U3.1",
        "U3.1");
  }

  @Test
  void theOtherMemoryAndTheOtherFamilyCanBeInTheSocket() {
    assertProposed(Mechanism.WRONG_PART, "U1", "74x219", "LS");
    assertProposed(Mechanism.WRONG_PART, "U5", "74x245", "HC");
  }

  @Test
  void theDirectionCanBeTiedLow() {
    assertProposed(Mechanism.WRONG_RAIL, "VCC-U5.1", "GND");
  }

  @Test
  void aLampWireCanBeMovedToTheLampBeside() {
    assertProposed(Mechanism.END_MOVED, "U5.9-R7", "R7", "R6");
  }

  @Test
  void pinsOnOneNetAreNotBridgedAndLegsAcrossTheChipAreNoNeighbours() {
    assertThat(suggestions)
        .filteredOn(s -> s.mechanism() == Mechanism.BRIDGED)
        .anyMatch(s -> s.places().equals(List.of("U5.2", "U5.3")))
        .noneMatch(s -> s.places().equals(List.of("U1.8", "U1.9")))
        .noneMatch(s -> s.places().equals(List.of("U1.1", "U1.16")));
  }

  @Test
  void aButtonBetweenLinesIsSuspectedThrowByThrow() {
    Module module =
        ModuleFile.parse(
            "m.yaml",
            """
            format: straywire-module/1
            name: sketch
            title: sketch
            rails: {VCC: {level: supply}, GND: {level: ground}}
            parts: {U1: {type: 74x74, family: LS}}
            controls:
              beat: {kind: button, low-throw: up, high-throw: down}
              side: {kind: switch, low-throw: left, high-throw: right}
            nets:
              VCC: [VCC, U1.14, up]
              GND: [GND, U1.7, down]
              BEAT: [beat, U1.3]
              LEFT: [U1.5, left]
              RIGHT: [U1.6, right]
              D: [side, U1.2]
            """,
            new ShippedParts());
    List<Suggestion> proposed = RULES.propose(module);
    assertThat(proposed)
        .filteredOn(s -> s.rule().startsWith("CTRL"))
        .extracting(s -> s.mechanism().slug() + " " + String.join(" ", s.places()))
        .containsExactlyInAnyOrder(
            "contact-dead up",
            "contact-dead down",
            "contact-dead left",
            "contact-dead right",
            "throws-exchanged beat",
            "throws-exchanged side",
            "contact-bounces up 2",
            "contact-bounces up 3",
            "contact-bounces up 4",
            "contact-bounces down 2",
            "contact-bounces down 3",
            "contact-bounces down 4",
            "ends-swapped beat-U1.3 beat GND-down down",
            "ends-swapped beat-U1.3 beat VCC-up up",
            "ends-swapped side-U1.2 side U1.5-left left",
            "ends-swapped side-U1.2 side U1.6-right right");
    assertThat(FaultExpansion.expandAll(module, proposed, PriorsFile.shipped()))
        .extracting(h -> h.id())
        .contains("jumper-missing beat-U1.3", "jumper-missing GND-down", "throws-exchanged beat");
  }

  private void assertProposed(Mechanism mechanism, String... places) {
    assertThat(suggestions)
        .anyMatch(s -> s.mechanism() == mechanism && s.places().equals(List.of(places)));
  }
}
