package straywire.faults;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import straywire.format.InputError;

class PriorsTest {
  private static final double EXACT = 1e-12;

  /** What each mechanism has beside the two of 40 that share the most. */
  private static final double SMALL = 20.0 / (faults().size() - 2);

  /** Strength 100; jumper-missing 40, end-moved 40, the others share 20. */
  private static Priors plain() {
    TreeMap<Mechanism, Double> table = new TreeMap<>();
    for (Mechanism m : faults()) {
      table.put(m, SMALL);
    }
    table.put(Mechanism.JUMPER_MISSING, 40.0);
    table.put(Mechanism.END_MOVED, 40.0);
    return new Priors(0.5, 100, table, new TreeMap<>());
  }

  private static List<Mechanism> faults() {
    return Arrays.stream(Mechanism.values()).filter(m -> m != Mechanism.NOTHING_WRONG).toList();
  }

  private static double sum(Priors priors, Mechanism... mechanisms) {
    return Arrays.stream(mechanisms).mapToDouble(priors::frequency).sum();
  }

  @Test
  void theShippedTableGivesEveryFaultAShareAndTheSharesAddUpToOne() {
    Priors shipped = PriorsFile.shipped();
    assertThat(shipped.nothingWrong()).isEqualTo(0.5);
    assertThat(faults()).allMatch(m -> shipped.frequency(m) > 0);
    assertThat(faults().stream().mapToDouble(shipped::frequency).sum()).isCloseTo(1, within(EXACT));
  }

  /** The order of City Tech EMT lab 0: wrong wire, supply, chip placed wrongly, leg, bad chip. */
  @Test
  void theShippedTableKeepsTheOrderInWhichCausesOccur() {
    Priors shipped = PriorsFile.shipped();
    double wire =
        sum(
            shipped,
            Mechanism.JUMPER_MISSING,
            Mechanism.END_MOVED,
            Mechanism.ENDS_SWAPPED,
            Mechanism.ORDER_REVERSED,
            Mechanism.INVERTER_BYPASSED,
            Mechanism.WRONG_RAIL,
            Mechanism.BRIDGED);
    double supply =
        sum(
            shipped,
            Mechanism.SUPPLY_JUMPER_MISSING,
            Mechanism.RAIL_NOT_LINKED,
            Mechanism.SUPPLY_AS_16,
            Mechanism.SUPPLY_REVERSED,
            Mechanism.RAILS_JOINED);
    double placed =
        sum(
            shipped,
            Mechanism.TURNED,
            Mechanism.COUNTED_MIRRORED,
            Mechanism.COUNTED_AS_16,
            Mechanism.WRONG_PART);
    double leg = shipped.frequency(Mechanism.LEG_NOT_IN_ROW);
    double chip =
        sum(
            shipped,
            Mechanism.OUTPUT_STUCK_LOW,
            Mechanism.OUTPUT_STUCK_HIGH,
            Mechanism.OUTPUT_DEAD,
            Mechanism.INPUT_STUCK_LOW,
            Mechanism.INPUT_STUCK_HIGH,
            Mechanism.PART_UNLISTED);
    assertThat(List.of(wire, supply, placed, leg, chip))
        .isSortedAccordingTo((a, b) -> Double.compare(b, a));
  }

  @Test
  void confirmedFindingsMoveTheSharesByTheDirichletFormula() {
    Priors learned =
        plain().with(Map.of(Mechanism.JUMPER_MISSING, 10, Mechanism.LEG_NOT_IN_ROW, 15));
    // (0.4 * 100 + 10) / (100 + 25)
    assertThat(learned.frequency(Mechanism.JUMPER_MISSING)).isCloseTo(0.4, within(EXACT));
    // (0.4 * 100 + 0) / 125
    assertThat(learned.frequency(Mechanism.END_MOVED)).isCloseTo(0.32, within(EXACT));
    // (SMALL / 100 * 100 + 15) / 125
    assertThat(learned.frequency(Mechanism.LEG_NOT_IN_ROW))
        .isCloseTo((SMALL + 15) / 125, within(EXACT));
    assertThat(faults().stream().mapToDouble(learned::frequency).sum()).isCloseTo(1, within(EXACT));
  }

  @Test
  void learningInTwoStepsIsLearningAtOnce() {
    Priors twice = plain().with(Map.of(Mechanism.TURNED, 2)).with(Map.of(Mechanism.TURNED, 3));
    assertThat(twice).isEqualTo(plain().with(Map.of(Mechanism.TURNED, 5)));
    assertThat(twice.unlearned()).isEqualTo(plain());
  }

  @Test
  void aFindingThatNothingWasWrongTeachesNoShare() {
    assertThat(plain().with(Map.of(Mechanism.NOTHING_WRONG, 7))).isEqualTo(plain());
    assertThatThrownBy(() -> plain().frequency(Mechanism.NOTHING_WRONG))
        .isInstanceOf(IllegalArgumentException.class);
  }

  @Test
  void aPersonsFileOverridesOnlyTheLinesItHas(@TempDir Path folder) throws IOException {
    Path file = folder.resolve("mine.yaml");
    Files.writeString(
        file,
        """
        format: straywire-priors/1
        strength: 20
        frequencies:
          turned: 135
        """);
    Priors mine = PriorsFile.over(file);
    assertThat(mine.strength()).isEqualTo(20);
    assertThat(mine.nothingWrong()).isEqualTo(0.5);
    assertThat(mine.table()).containsEntry(Mechanism.TURNED, 135.0);
    assertThat(mine.table().get(Mechanism.END_MOVED))
        .isEqualTo(PriorsFile.shipped().table().get(Mechanism.END_MOVED));
  }

  @Test
  void aFileThatIsNotThereIsNamed(@TempDir Path folder) {
    assertThatThrownBy(() -> PriorsFile.over(folder.resolve("none.yaml")))
        .isInstanceOf(InputError.class)
        .hasMessageContaining("none.yaml: there is no such file");
  }

  private static void assertRefused(String text, String message) {
    assertThatThrownBy(() -> PriorsFile.parseOver(plain(), "p.yaml", text))
        .isInstanceOf(InputError.class)
        .hasMessage(message);
  }

  @Test
  void eachMistakeInAFileIsOneLineWithItsPlace() {
    assertRefused("", "p.yaml: the file is empty");
    assertRefused("strength: 3\n", "p.yaml:1: the field format is missing");
    assertRefused(
        "format: straywire-priors/2\n",
        "p.yaml:1: format: straywire-priors/2 is not one of straywire-priors/1");
    String head = "format: straywire-priors/1\n";
    assertRefused(
        head + "nothing-wrong: 1\n",
        "p.yaml:2: nothing-wrong: expected a number between 0 and 1, got 1.0");
    assertRefused(
        head + "strength: many\n", "p.yaml:2: strength: expected a number above 0, got many");
    assertRefused(
        head + "strength: 1\nstrength: 2\n", "p.yaml:3: strength: stands twice, first on line 2");
    assertRefused(head + "strenght: 2\n", "p.yaml:2: unknown field strenght; nearest is strength");
    assertRefused(
        head + "frequencies:\n  turned: -1\n",
        "p.yaml:3: frequencies.turned: expected a number above 0, got -1");
    assertRefused(
        head + "frequencies:\n  truned: 1\n",
        "p.yaml:3: frequencies.truned: there is no such mechanism; nearest is turned");
    assertRefused(
        head + "frequencies:\n  nothing-wrong: 1\n",
        "p.yaml:3: frequencies.nothing-wrong: there is no such mechanism here; it stands outside"
            + " frequencies, as a probability");
    assertRefused(
        head + "frequencies: [turned]\n",
        "p.yaml:2: frequencies: expected fields, each with a colon and a space, such as \"name: value\", got a list");
    assertRefused(head + "strength: [1]\n", "p.yaml:2: strength: expected a word, got a list");
    assertRefused(
        head + "nothing-wrong: &half [0.5]\nfrequencies: *half\n",
        "p.yaml:3: a list or mapping is used twice by *name; write it out");
    assertThatThrownBy(() -> PriorsFile.parseOver(plain(), "p.yaml", head + "a: {b\nc: d"))
        .isInstanceOf(InputError.class)
        .hasMessageMatching("p\\.yaml:\\d+: [^\\n]+");
  }

  @Test
  void aWholeTableLacksNothing() {
    String text =
        """
        format: straywire-priors/1
        nothing-wrong: 0.5
        strength: 9
        frequencies:
          turned: 1
        """;
    assertThatThrownBy(() -> PriorsFile.parseWhole("p.yaml", text))
        .isInstanceOf(InputError.class)
        .hasMessage("p.yaml: frequencies lacks jumper-missing; give it a number above 0");
  }

  @Test
  void aMechanismAndItsSlugAreOneToOne() {
    for (Mechanism m : Mechanism.values()) {
      assertThat(Mechanism.ofSlug(m.slug())).contains(m);
    }
    assertThat(Mechanism.COUNTED_AS_16.slug()).isEqualTo("counted-as-16");
    assertThat(Mechanism.ofSlug("upside-down")).isEmpty();
  }
}
