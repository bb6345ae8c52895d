package straywire.saying;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.junit.jupiter.api.DynamicTest;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestFactory;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import straywire.advice.SymptomTable;
import straywire.format.InputError;
import straywire.format.TextFile;
import straywire.module.EntryWords;
import straywire.module.Module;
import straywire.module.ModuleFile;
import straywire.parts.ShippedParts;

class HearingTest {
  private static final Module MODULE =
      ModuleFile.readShipped(Path.of("cases/beat-memory/module.yaml"), new ShippedParts());
  private static final Hearing HEARING = new Hearing(MODULE, symptom -> true, Optional.empty());
  private static final EntryWords WORDS = new EntryWords(MODULE);

  private static String entry(Meaning meaning) {
    return meaning instanceof Meaning.Told told
        ? WORDS.print(told.entry()).replaceFirst("^symptom ", "")
        : ((Meaning.Help) meaning).command();
  }

  /** Clear meanings, joined by plus; several behind a question mark; nothing as a dash. */
  private static String heard(String line) {
    Heard heard = HEARING.hear(line);
    if (heard instanceof Heard.Clear clear) {
      return clear.meanings().stream().map(HearingTest::entry).collect(Collectors.joining(" + "));
    }
    return heard instanceof Heard.Several several
        ? "? "
            + several.meanings().stream().map(HearingTest::entry).collect(Collectors.joining(" | "))
        : "-";
  }

  @ParameterizedTest
  @CsvSource({
    "bus never releases, bus-never-releases bus yes",
    "U2 is hot, chip-warm U2 yes",
    "u2 is getting realy hot, chip-warm U2 yes",
    "it smells burnt, smell yes",
    "there was a pop and smoke, smell yes",
    "nothing is hot, chip-warm no",
    "all leds are off, all-zeros yes",
    "every lamp is lit, all-ones yes",
    "the buss doesn't let go, bus-never-releases yes",
    "two bits are swaped, two-swapped yes",
    "R3 never lights, bit-stuck-low R3 yes",
    "writing has no efect, never-changes-on-write yes",
    "it counts backward, counts-backwards yes",
    "reversed-nibble memory, reversed-nibble memory yes",
    "nothing yet guide me, next",
    "how do I repair it, repair",
    "frobnicate the zither now, -",
    "measure nothing here, -"
  })
  void whatIsSaidAtTheBenchIsUnderstood(String line, String meaning) {
    assertThat(heard(line)).isEqualTo(meaning);
  }

  @Test
  void reversedBitsAreAListToPickFrom() {
    assertThat(HEARING.hear("bits are reversed")).isInstanceOf(Heard.Several.class);
    assertThat(heard("bits are reversed")).contains("reversed-all yes", "reversed-nibble yes");
  }

  @Test
  void severalThingsInOneLineAreTakenEach() {
    assertThat(heard("the bus never releases, and U2 is hot"))
        .isEqualTo("bus-never-releases bus yes + chip-warm U2 yes");
  }

  @Test
  void aSymptomThatMakesNoSenseHereIsNotHeard() {
    Hearing deaf =
        new Hearing(MODULE, symptom -> !symptom.equals("bus-never-releases"), Optional.empty());
    assertThat(deaf.all().stream().map(HearingTest::entry))
        .doesNotContain("bus-never-releases yes")
        .contains("all-zeros yes");
    if (deaf.hear("bus never releases") instanceof Heard.Clear clear) {
      assertThat(entry(clear.meanings().get(0))).doesNotStartWith("bus-never-releases");
    }
  }

  @TestFactory
  Stream<DynamicTest> everyWayToSayASymptomLeadsToIt() {
    return WordTable.shipped().say().entrySet().stream()
        .flatMap(
            row ->
                row.getValue().stream()
                    .map(
                        way ->
                            DynamicTest.dynamicTest(
                                way, () -> assertThat(heard(way)).contains(row.getKey()))));
  }

  @Test
  void everySymptomOfTheTableCanBeSaid() {
    assertThat(WordTable.shipped().say().keySet())
        .containsExactlyInAnyOrderElementsOf(SymptomTable.shipped().ids());
  }

  @Test
  void aTableOfOnesOwnThatNamesNoSymptomIsRefusedWithFileAndLine() {
    String text =
        TextFile.shipped("/tables/words.yaml").replace("  all-zeros: [", "  all-zeroes: [");
    assertThatThrownBy(() -> WordTable.parse("own.yaml", text))
        .isInstanceOf(InputError.class)
        .hasMessageContaining("own.yaml")
        .hasMessageContaining("nearest is all-zeros");
  }

  @Test
  void aTableOfOnesOwnTeachesNewWords() {
    String text =
        TextFile.shipped("/tables/words.yaml")
            .replace("smell: [\"it smells burnt\"", "smell: [\"es stinkt\", \"it smells burnt\"");
    Hearing own = new Hearing(MODULE, symptom -> true, WordTable.parse("own.yaml", text));
    assertThat(own.hear("es stinkt"))
        .isInstanceOfSatisfying(
            Heard.Clear.class,
            clear ->
                assertThat(clear.meanings().stream().map(HearingTest::entry))
                    .isEqualTo(List.of("smell yes")));
  }
}
