package straywire.parts;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/**
 * Parts against function tables copied from makers' data sheets, apart from the tables in the part
 * files. Each file in {@code published/functions} says in remarks ({@code #}) which sheet it is
 * from, and how the sheet's pin names and words were turned into the notation of part files
 * (docs/formats/part.md).
 */
class DataSheetTablesTest {
  private static final ShippedParts PARTS = new ShippedParts();
  private static final Path TABLES = Path.of("src/test/resources/published/functions");
  private static final Pattern SOURCE = Pattern.compile("(?m)^# source: (.+)$");

  /** Parts without a published table, and why. */
  private static final Map<String, String> WITHOUT =
      Map.of(
          "2114",
          "Of the sheets only text without a table was found; ComputedDefinitionsTest holds it against an array.");

  static Stream<String> types() throws IOException {
    try (Stream<Path> files = Files.list(TABLES)) {
      return files
          .map(f -> f.getFileName().toString().replaceFirst("\\.txt$", ""))
          .sorted()
          .toList()
          .stream();
    }
  }

  @Test
  void everyShippedPartHasAPublishedTable() throws IOException {
    assertThat(Stream.concat(types(), WITHOUT.keySet().stream()))
        .containsExactlyInAnyOrderElementsOf(PARTS.types());
  }

  @Test
  void nothingInAPartIsFromMemory() {
    assertThat(PARTS.types())
        .allSatisfy(
            type ->
                assertThat(PARTS.file(type).orElseThrow().notes().sources())
                    .noneMatch(source -> source.contains("from memory")));
  }

  @ParameterizedTest
  @MethodSource("types")
  void aPartDoesWhatTheDataSheetSays(String type) throws IOException {
    PartFile shipped = PARTS.file(type).orElseThrow();
    String rows =
        text(type).lines().map(l -> l.startsWith("#") ? "" : l).collect(Collectors.joining("\n"));
    FunctionTable table = FunctionTable.read(type + ".txt", 1, rows, shipped.part());
    PartFile asPublished = new PartFile(shipped.part(), shipped.notes(), table, shipped.logic());

    assertThat(TableCheck.failures(asPublished, false)).isEmpty();
  }

  @ParameterizedTest
  @MethodSource("types")
  void thePartFileNamesTheSheet(String type) throws IOException {
    Matcher source = SOURCE.matcher(text(type));
    assertThat(source.find()).as("a line \"# source: ...\"").isTrue();

    List<String> sources = PARTS.file(type).orElseThrow().notes().sources();
    assertThat(sources).contains("function: " + source.group(1));
  }

  private static String text(String type) throws IOException {
    return Files.readString(TABLES.resolve(type + ".txt"));
  }
}
