package straywire.pages;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.SortedMap;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import straywire.parts.Part;
import straywire.parts.PartGroup;
import straywire.parts.PartNotes;
import straywire.parts.ShippedParts;

class PartPagesTest {
  private static final Path FOLDER = Path.of("docs", "parts");
  private static final ShippedParts PARTS = new ShippedParts();
  private static final SortedMap<String, String> PAGES = PartPages.of(PARTS);

  @TempDir private Path folder;

  static Stream<String> types() {
    return PARTS.types().stream();
  }

  @Test
  void thePagesShippedAreThoseThatWouldBeWritten() throws IOException {
    try (Stream<Path> files = Files.list(FOLDER)) {
      assertThat(files.map(f -> f.getFileName().toString()))
          .as("files of docs/parts")
          .containsExactlyInAnyOrderElementsOf(PAGES.keySet());
    }
    for (String name : PAGES.keySet()) {
      assertThat(Files.readString(FOLDER.resolve(name)))
          .as("%s; ./straywire part pages --write docs/parts writes it anew", name)
          .isEqualTo(PAGES.get(name));
    }
  }

  @Test
  void thereIsAPageAndADrawingForEachOfThe109Parts() {
    assertThat(PARTS.types()).hasSize(109);
    assertThat(PAGES).hasSize(2 * 109 + 2);
    assertThat(PAGES.get("README.md")).contains(PARTS.types().stream().map(this::link).toList());
  }

  private String link(String type) {
    return "[" + type + "](" + type + ".md)";
  }

  @Test
  void writingTwiceGivesTheSameBytes() throws IOException {
    PartPages.write(PartPages.of(new ShippedParts()), folder.resolve("new"));
    for (String name : PAGES.keySet()) {
      assertThat(Files.readString(folder.resolve("new").resolve(name))).isEqualTo(PAGES.get(name));
    }
  }

  @ParameterizedTest
  @MethodSource("types")
  void aPageSaysAllThatThePartFileSays(String type) {
    String page = PAGES.get(type + ".md").replace("\\", "");
    Part part = PARTS.part(type).orElseThrow();
    PartNotes notes = PARTS.notes(type).orElseThrow();
    assertThat(page).contains(part.title(), part.function(), notes.openInput(), notes.table());
    assertThat(page).contains("(" + type + ".svg)");
    for (List<String> texts : List.of(notes.mistakes(), notes.disagreements(), notes.sources())) {
      texts.forEach(text -> assertThat(page).contains("- " + text + "\n"));
    }
    part.pins().forEach(p -> assertThat(page).contains("| " + p.number() + " | " + p.name()));
    assertThat(notes.mistakes()).isNotEmpty();
    assertThat(notes.group()).isNotEqualTo(PartGroup.OTHER);
  }

  /** The differences that facts about the trade list; they must not get lost. */
  @Test
  void knownDifferencesBetweenMakersAreShown() {
    List<String> differing =
        PARTS.types().stream()
            .filter(type -> !PARTS.notes(type).orElseThrow().disagreements().isEmpty())
            .toList();
    assertThat(differing)
        .contains("74x157", "74x158", "74x257", "74x258", "74x240", "74x241", "74x244", "74x147")
        .contains("74x293", "4060", "4040", "28C64", "74x219", "74x189", "74x48", "74x181", "2114")
        .hasSizeGreaterThanOrEqualTo(36);
    assertThat(PAGES.get("74x147.md")).contains("pin 15");
    assertThat(PAGES.get("28C64.md")).contains("Pin 1 is RDY//BUSY");
  }

  @Test
  void everyFamilyIsOnItsPageWithSources() {
    for (String family : PARTS.families()) {
      assertThat(PAGES.get("families.md")).contains("\n## " + family + "\n");
      assertThat(PARTS.familySources(family)).as(family).isNotEmpty();
    }
  }

  @Test
  void supplyPinsAwayFromTheCornersArePointedOut() {
    assertThat(PAGES.get("74x90.md"))
        .contains("Supply at pin 5 (VCC), ground at pin 10 (GND): not at the usual corners.");
    assertThat(PAGES.get("74x00.md")).contains("Supply at pin 14 (VCC), ground at pin 7 (GND).\n");
  }
}
