package straywire.symptoms;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.TreeSet;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import straywire.faults.ChipEdit;
import straywire.faults.Edit;
import straywire.faults.LegEdit;
import straywire.module.Module;
import straywire.module.ModuleFile;
import straywire.parts.ShippedParts;

/** Which symptoms make sense is found by working the module, not from its name. */
class SymptomOffersTest {
  private static final String GATES =
      """
      format: straywire-module/1
      name: gates
      title: Four gates
      about: says when two of a kind are up
      rails:
        VCC: {level: supply}
        GND: {level: ground}
      parts:
        U1: {type: 74x08, family: LS}
      controls:
        A: {kind: switch, closes-to: GND, pull-to: VCC, pull-ohms: 1000, rest: low}
        B: {kind: switch, closes-to: GND, pull-to: VCC, pull-ohms: 1000, rest: low}
        C: {kind: switch, closes-to: GND, pull-to: VCC, pull-ohms: 1000, rest: low}
        D: {kind: switch, closes-to: GND, pull-to: VCC, pull-ohms: 1000, rest: low}
      lamps:
        L3: {to: GND, ohms: 2200}
        L2: {to: GND, ohms: 2200}
        L1: {to: GND, ohms: 2200}
        L0: {to: GND, ohms: 2200}
      words:
        in: {controls: [D, C, B, A]}
        out: {lamps: [L3, L2, L1, L0]}
      nets:
        VCC: [VCC, U1.14]
        GND: [GND, U1.7]
        A: [A, U1.1, U1.13]
        B: [B, U1.2, U1.4]
        C: [C, U1.5, U1.9]
        D: [D, U1.10, U1.12]
        L0: [U1.3, L0]
        L1: [U1.6, L1]
        L2: [U1.8, L2]
        L3: [U1.11, L3]
      exercise:
        - {power: on}
        - {set: {in: "1111"}}
        - {look: [out]}
      """;

  private static final String REGISTER =
      """
      format: straywire-module/1
      name: register
      title: Four bits kept
      about: takes four switches in at the push of a button
      rails:
        VCC: {level: supply}
        GND: {level: ground}
      parts:
        U1: {type: 74x173, family: LS}
      controls:
        D3: {kind: switch, closes-to: GND, pull-to: VCC, pull-ohms: 1000, rest: low}
        D2: {kind: switch, closes-to: GND, pull-to: VCC, pull-ohms: 1000, rest: low}
        D1: {kind: switch, closes-to: GND, pull-to: VCC, pull-ohms: 1000, rest: low}
        D0: {kind: switch, closes-to: GND, pull-to: VCC, pull-ohms: 1000, rest: low}
        take: {kind: button, closes-to: GND, pull-to: VCC, pull-ohms: 1000}
        show: {kind: switch, closes-to: GND, pull-to: VCC, pull-ohms: 1000, rest: low}
      lamps:
        Q3: {to: GND, ohms: 2200}
        Q2: {to: GND, ohms: 2200}
        Q1: {to: GND, ohms: 2200}
        Q0: {to: GND, ohms: 2200}
      words:
        bells: {controls: [D3, D2, D1, D0]}
        kept: {lamps: [Q3, Q2, Q1, Q0]}
      nets:
        VCC: [VCC, U1.16]
        GND: [GND, U1.8, U1.9, U1.10, U1.15]
        SHOW: [show, U1.1, U1.2]
        TAKE: [take, U1.7]
        D0: [D0, U1.14]
        D1: [D1, U1.13]
        D2: [D2, U1.12]
        D3: [D3, U1.11]
        Q0: [U1.3, Q0]
        Q1: [U1.4, Q1]
        Q2: [U1.5, Q2]
        Q3: [U1.6, Q3]
      exercise:
        - {power: on}
        - {set: {bells: "0110"}}
        - {press: take}
        - {look: [kept]}
      """;

  @TempDir private Path folder;

  private Module module(String yaml) throws Exception {
    Path file = folder.resolve("module.yaml");
    Files.writeString(file, yaml);
    return ModuleFile.readShipped(file, new ShippedParts());
  }

  private static TreeSet<String> asked(SymptomScores scores) {
    TreeSet<String> asked = new TreeSet<>();
    scores.questions().forEach(question -> asked.add(question.symptom()));
    return asked;
  }

  @Test
  void aModuleOfGatesIsNotAskedAboutMemoryOrBus() throws Exception {
    SymptomScores scores = SymptomBench.scores(module(GATES));
    assertThat(asked(scores))
        .containsExactlyInAnyOrder(
            "all-zeros",
            "all-ones",
            "half-dead",
            "changes-untouched",
            "bit-stuck-low",
            "bit-stuck-high",
            "complemented-all",
            "complemented-nibble",
            "complemented-one",
            "reversed-all",
            "reversed-nibble",
            "two-swapped",
            "two-equal",
            "never-clears",
            "one-too-high",
            "one-too-low",
            "carry-wrong",
            "one-setting-wrong",
            "frozen",
            "switch-ignored");
  }

  @Test
  void aFaultOfAGateShowsInTheSweep() throws Exception {
    Module module = module(GATES);
    SymptomScores scores = SymptomBench.scores(module);
    List<Edit> dead = List.of(new ChipEdit.OutputHeld(SymptomBench.pin("U1.3"), true));
    List<Edit> twice = List.of(new ChipEdit.PartReplaced("U1", "74x00", "LS"));
    assertThat(yes(scores, dead, "bit-stuck-high", "L0")).isGreaterThan(0.9);
    assertThat(yes(scores, dead, "bit-stuck-high", "L1")).isLessThan(0.1);
    assertThat(yes(scores, twice, "complemented-all", "out")).isGreaterThan(0.9);
    assertThat(yes(scores, twice, "complemented-nibble", "out")).isLessThan(0.1);
  }

  private static double yes(SymptomScores scores, List<Edit> edits, String symptom, String place) {
    return scores.yes(List.of(SymptomBench.fault("fault", edits)), symptom, place)[0];
  }

  @Test
  void aRegisterIsAskedAboutWritingAndReleasingButNotAboutAddresses() throws Exception {
    SymptomScores scores = SymptomBench.scores(module(REGISTER));
    assertThat(asked(scores))
        .contains(
            "never-changes-on-write",
            "writes-unasked",
            "random-at-power-up",
            "changes-each-power-up",
            "bus-never-drives",
            "bus-never-releases")
        .doesNotContain("writes-elsewhere", "addresses-share");
    List<Edit> noClock = List.of(new LegEdit.ContactOpen(SymptomBench.pin("U1.7")));
    assertThat(yes(scores, noClock, "never-changes-on-write", "kept")).isGreaterThan(0.9);
    List<Edit> open = List.of(new LegEdit.ContactOpen(SymptomBench.pin("U1.1")));
    assertThat(yes(scores, open, "bus-never-drives", "kept")).isGreaterThan(0.9);
  }
}
