package straywire.faults;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Collections;
import java.util.EnumMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Random;
import java.util.Set;
import java.util.TreeMap;
import org.junit.jupiter.api.Test;
import straywire.logic.PinKind;
import straywire.logic.PinSpec;
import straywire.module.End;
import straywire.module.Fitted;
import straywire.module.Jumper;
import straywire.module.Module;
import straywire.module.ModuleFile;
import straywire.parts.ShippedParts;
import straywire.sim.Wiring;

/** What must hold for every fault of a real module; suggestions by brute force, not by rule. */
class BeatMemoryFaultsTest {
  private static final Module MODULE =
      ModuleFile.readShipped(Path.of("cases", "beat-memory", "module.yaml"), new ShippedParts());
  private static final List<Hypothesis> ALL = expand(everything());

  private static List<Hypothesis> expand(List<Suggestion> suggestions) {
    return FaultExpansion.expandAll(MODULE, suggestions, PriorsFile.shipped());
  }

  /** Each mechanism wherever the module has a place for it, neighbours being pins n and n+1. */
  private static List<Suggestion> everything() {
    Suggested all = new Suggested();
    for (Jumper jumper : MODULE.jumpers()) {
      all.add(Mechanism.JUMPER_MISSING, jumper.name());
      boolean onRail = jumper.from().kind() == End.Kind.RAIL;
      if (onRail) {
        all.add(
            Mechanism.WRONG_RAIL,
            jumper.name(),
            jumper.from().label().equals("VCC") ? "GND" : "VCC");
      }
      if (onRail && powers(jumper.to())) {
        all.add(Mechanism.SUPPLY_JUMPER_MISSING, jumper.name());
      }
      for (End end : List.of(jumper.from(), jumper.to())) {
        neighbour(end).ifPresent(now -> all.add(Mechanism.END_MOVED, jumper.name(), end, now));
        for (Jumper other : MODULE.jumpers()) {
          for (End there : List.of(other.from(), other.to())) {
            if (neighbour(end).filter(there::equals).isPresent()) {
              all.add(Mechanism.ENDS_SWAPPED, jumper.name(), end, other.name(), there);
            }
          }
        }
      }
    }
    for (Fitted fitted : MODULE.parts().values()) {
      addPart(all, fitted);
    }
    MODULE.lamps().keySet().forEach(lamp -> addLamp(all, lamp));
    for (String control : MODULE.controls().keySet()) {
      all.add(Mechanism.CONTACT_DEAD, control);
      all.add(Mechanism.CONTACT_STUCK, control);
      all.add(Mechanism.PULL_MISSING, control);
      for (String times : List.of("any", "2", "3", "4")) {
        all.add(Mechanism.CONTACT_BOUNCES, control, times);
      }
    }
    all.add(Mechanism.BARE_LED, "R7", "R6", "R5", "R4", "R3", "R2", "R1", "R0");
    all.add(
        Mechanism.ORDER_REVERSED,
        "U1.11-U3.9",
        "U3.9",
        "U1.9-U3.5",
        "U3.5",
        "U1.7-U3.3",
        "U3.3",
        "U1.5-U3.1",
        "U3.1");
    all.add(
        Mechanism.INVERTER_BYPASSED,
        "U3",
        "U3.9",
        "U3.8",
        "U3.5",
        "U3.6",
        "U3.3",
        "U3.4",
        "U3.1",
        "U3.2");
    all.add(Mechanism.INVERTER_BYPASSED, "U4", "U4.1", "U4.2");
    all.add(Mechanism.WRONG_PART, "U1", "74x219", "LS");
    all.add(Mechanism.WRONG_PART, "U5", "74x245", "HC");
    all.add(Mechanism.SUPPLY_REVERSED);
    all.add(Mechanism.RAILS_JOINED);
    return all.list;
  }

  private static void addPart(Suggested all, Fitted fitted) {
    String label = fitted.label();
    all.add(Mechanism.TURNED, label);
    all.add(Mechanism.COUNTED_MIRRORED, label);
    all.add(Mechanism.NOT_ACROSS_TRENCH, label);
    all.add(Mechanism.PART_UNLISTED, label);
    all.add(Mechanism.SUPPLY_NOT_QUIET, label);
    if (fitted.part().pinCount() == 14) {
      all.add(Mechanism.COUNTED_AS_16, label);
      all.add(Mechanism.SUPPLY_AS_16, label);
    }
    for (PinSpec spec : fitted.part().pins()) {
      End pin = End.pin(label, spec.number());
      all.add(Mechanism.LEG_NOT_IN_ROW, pin);
      neighbour(pin).ifPresent(beside -> all.add(Mechanism.BRIDGED, pin, beside));
      if (!powers(pin)) {
        all.add(Mechanism.SHORTED_LOW, pin);
        all.add(Mechanism.SHORTED_HIGH, pin);
      }
      if (spec.kind().drives()) {
        all.add(Mechanism.OUTPUT_STUCK_LOW, pin);
        all.add(Mechanism.OUTPUT_STUCK_HIGH, pin);
        all.add(Mechanism.OUTPUT_DEAD, pin);
      }
      if (spec.kind().listens()) {
        all.add(Mechanism.INPUT_STUCK_LOW, pin);
        all.add(Mechanism.INPUT_STUCK_HIGH, pin);
      }
    }
  }

  private static void addLamp(Suggested all, String lamp) {
    all.add(Mechanism.BARE_LED, lamp);
    all.add(Mechanism.LED_BACKWARDS, lamp);
    all.add(Mechanism.LED_DEAD, lamp);
  }

  private static final class Suggested {
    final List<Suggestion> list = new ArrayList<>();

    void add(Mechanism mechanism, Object... places) {
      List<String> labels = new ArrayList<>();
      for (Object place : places) {
        labels.add(place.toString());
      }
      list.add(new Suggestion("ALL", mechanism, labels, 1, "Anything can."));
    }
  }

  private static Optional<End> neighbour(End end) {
    if (end.kind() != End.Kind.PIN) {
      return Optional.empty();
    }
    int count = MODULE.parts().get(end.label()).part().pinCount();
    boolean lastOfARow = end.pin() == count || end.pin() == count / 2;
    return lastOfARow ? Optional.empty() : Optional.of(End.pin(end.label(), end.pin() + 1));
  }

  private static boolean powers(End end) {
    if (end.kind() != End.Kind.PIN) {
      return false;
    }
    PinKind kind = MODULE.parts().get(end.label()).part().pin(end.pin()).kind();
    return kind == PinKind.SUPPLY || kind == PinKind.GROUND;
  }

  private static Set<End> ends() {
    Set<End> ends = new HashSet<>();
    for (Fitted fitted : MODULE.parts().values()) {
      fitted.part().pins().forEach(p -> ends.add(End.pin(fitted.label(), p.number())));
    }
    MODULE.controls().keySet().forEach(c -> ends.add(new End(End.Kind.CONTROL, c, 0)));
    MODULE.lamps().keySet().forEach(l -> ends.add(new End(End.Kind.LAMP, l, 0)));
    MODULE.rails().forEach(r -> ends.add(new End(End.Kind.RAIL, r.label(), 0)));
    MODULE
        .ports()
        .values()
        .forEach(lines -> lines.forEach(l -> ends.add(new End(End.Kind.PORT, l, 0))));
    return ends;
  }

  /** Parts of 16, 16, 14, 14 and 20 pins, two power pins each; 7 ties beside the power jumpers. */
  @Test
  void everyPlaceOfTheModuleIsExpanded() {
    Map<Mechanism, Integer> counts = new EnumMap<>(Mechanism.class);
    ALL.forEach(h -> counts.merge(h.mechanism(), 1, Integer::sum));
    int jumpers = MODULE.jumpers().size();
    assertThat(counts)
        .containsEntry(Mechanism.NOTHING_WRONG, 1)
        .containsEntry(Mechanism.SUPPLY_JUMPER_MISSING, 10)
        .containsEntry(Mechanism.JUMPER_MISSING, jumpers - 10)
        .containsEntry(Mechanism.LEG_NOT_IN_ROW, 80)
        .containsEntry(Mechanism.BRIDGED, 70)
        .containsEntry(Mechanism.SHORTED_LOW, 70)
        .containsEntry(Mechanism.WRONG_RAIL, 17)
        .containsEntry(Mechanism.OUTPUT_DEAD, 4 + 4 + 6 + 6 + 16)
        .containsEntry(Mechanism.INPUT_STUCK_LOW, 10 + 10 + 6 + 6 + 18)
        .containsEntry(Mechanism.TURNED, 5)
        .containsEntry(Mechanism.COUNTED_AS_16, 2)
        .containsEntry(Mechanism.BARE_LED, 17)
        .containsEntry(Mechanism.INVERTER_BYPASSED, 2)
        .doesNotContainKeys(
            Mechanism.RAIL_NOT_LINKED,
            Mechanism.SUPPLY_AT_CORNERS,
            Mechanism.THROWS_EXCHANGED,
            Mechanism.COMMON_OPEN,
            Mechanism.CONTENTS_WRONG);
    // This board has no linked rails, no part with its supply elsewhere than at the corners, and no
    // change-over or programmed memory.
    assertThat(counts).hasSize(Mechanism.values().length - 5);
  }

  @Test
  void idsAndEditsAreUnique() {
    assertThat(ALL).extracting(Hypothesis::id).doesNotHaveDuplicates();
    assertThat(ALL.stream().map(h -> new HashSet<>(h.edits()))).doesNotHaveDuplicates();
    assertThat(ALL).noneMatch(h -> h.id().contains(HypothesisPairs.PLUS));
  }

  @Test
  void priorsAreAboveZeroAndAddUpToOne() {
    assertThat(ALL).allMatch(h -> h.prior() > 0);
    assertThat(ALL.stream().mapToDouble(Hypothesis::prior).sum()).isCloseTo(1, within(1e-9));
  }

  @Test
  void everyEditNamesWhatTheModuleHas() {
    Set<End> ends = ends();
    Set<String> subjects = new HashSet<>();
    MODULE.jumpers().forEach(j -> subjects.add("jumper " + j));
    MODULE.parts().keySet().forEach(p -> subjects.add("part " + p));
    MODULE.lamps().keySet().forEach(l -> subjects.add("lamp " + l));
    MODULE.controls().keySet().forEach(c -> subjects.add("control " + c));
    ends.forEach(e -> subjects.add("leg " + e));
    subjects.add("supply");
    VariationOf compiler = new VariationOf(new Wiring(MODULE));
    for (Hypothesis h : ALL) {
      for (Edit edit : h.edits()) {
        assertThat(edit.touches(MODULE)).as(h.id()).isNotEmpty().isSubsetOf(ends);
        assertThat(edit.seenAt(MODULE)).as(h.id()).isSubsetOf(subjects);
        assertThat(edit.words(MODULE)).as(h.id()).isNotBlank();
        assertThat(edit.repair(MODULE)).as(h.id()).isNotBlank();
      }
      // Names something that the wiring lacks? Then this throws.
      assertThat(compiler.compile(h)).as(h.id()).isNotNull();
    }
  }

  @Test
  void wordsAreOnePhraseAndRepairsAreSentences() {
    for (Hypothesis h : ALL) {
      assertThat(h.words()).as(h.id()).matches("[A-Z].*[^.]").doesNotContain("  ");
      assertThat(h.repair()).as(h.id()).matches("[A-Z].*\\.").doesNotContain("..", "  ", " .");
    }
  }

  @Test
  void wordsTellHypothesesApart() {
    Map<String, List<String>> byWords = new TreeMap<>();
    for (Hypothesis h : ALL) {
      byWords.computeIfAbsent(h.words(), w -> new ArrayList<>()).add(h.id());
    }
    assertThat(byWords.values().stream().filter(ids -> ids.size() > 1)).isEmpty();
  }

  @Test
  void theOrderOfSuggestionsMakesNoDifference() {
    List<Suggestion> shuffled = everything();
    Random random = new Random(3);
    for (int i = 0; i < 3; i++) {
      Collections.shuffle(shuffled, random);
      assertThat(expand(shuffled)).isEqualTo(ALL);
    }
  }

  @Test
  void pairsFallAndHaveTheEditsOfBoth() {
    List<Hypothesis> pairs = HypothesisPairs.pairs(ALL, 0.5, 500);
    assertThat(pairs).hasSize(500);
    assertThat(pairs).extracting(Hypothesis::id).doesNotHaveDuplicates();
    assertThat(pairs.stream().map(h -> -h.prior()).toList()).isSorted();
    Map<String, Hypothesis> byId = new TreeMap<>();
    ALL.forEach(h -> byId.put(h.id(), h));
    for (Hypothesis pair : pairs) {
      String[] ids = pair.id().split(" \\+ ");
      assertThat(ids).hasSize(2);
      List<Edit> edits = new ArrayList<>(byId.get(ids[0]).edits());
      edits.addAll(byId.get(ids[1]).edits());
      assertThat(pair.edits()).isEqualTo(edits);
    }
  }
}
