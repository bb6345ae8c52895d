package straywire.casebook;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Set;
import java.util.TreeSet;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import straywire.advice.SymptomTable;
import straywire.faults.Mechanism;
import straywire.module.EntryFormat;
import straywire.sim.Signal;

/** What the page of mistakes names has to exist, and no mistake may be missing. */
class MistakesPageTest {
  private static final Path DOCS = Path.of("docs");
  private static final Pattern ROW =
      Pattern.compile("\\| ([A-Z]\\d+) \\| ([^|]*) \\| ([^|]*) \\| ([^|]*) \\|");
  private static final Pattern CODE = Pattern.compile("`([^`]*)`");
  private static final Pattern LINK = Pattern.compile("\\]\\(([^)]*)\\)");

  private record Row(String id, String what, String lives, String shown) {}

  private static List<Row> rows() throws IOException {
    List<Row> rows = new ArrayList<>();
    Matcher row = ROW.matcher(Files.readString(DOCS.resolve("mistakes.md")));
    while (row.find()) {
      rows.add(new Row(row.group(1), row.group(2), row.group(3), row.group(4)));
    }
    return rows;
  }

  private static Stream<String> numbered(String letter, int count) {
    return Stream.iterate(1, n -> n + 1).limit(count).map(n -> letter + n);
  }

  @Test
  void everyMistakeTestAndNormalThingHasItsRowInOrder() throws IOException {
    List<String> expected =
        Stream.of(
                numbered("A", 11),
                numbered("B", 7),
                numbered("C", 11),
                numbered("D", 7),
                numbered("E", 9),
                numbered("F", 4),
                numbered("T", 8),
                numbered("G", 8))
            .flatMap(ids -> ids)
            .toList();
    assertThat(expected).hasSize(49 + 8 + 8);
    assertThat(rows()).extracting(Row::id).containsExactlyElementsOf(expected);
  }

  @Test
  void whatARowNamesExists() throws IOException {
    Set<String> known = known();
    for (Row row : rows()) {
      List<String> named = CODE.matcher(row.lives()).results().map(r -> r.group(1)).toList();
      assertThat(named).as(row.id()).isNotEmpty().isSubsetOf(known);
      assertThat(row.what()).as(row.id()).matches("[A-Z].*\\.");
    }
  }

  @Test
  void aRowHasACaseOrSaysWhyThereIsNone() throws IOException {
    for (Row row : rows()) {
      List<String> cases = LINK.matcher(row.shown()).results().map(r -> r.group(1)).toList();
      if (cases.isEmpty()) {
        assertThat(row.shown()).as(row.id()).matches("no case: .{10,}");
      }
      for (String file : cases) {
        assertThat(DOCS.resolve(file)).as(row.id()).isRegularFile();
        assertThat(file).as(row.id()).startsWith("../cases/").endsWith(".jsonl");
      }
    }
  }

  /** Where a row names a mechanism and a case, some case of the row found that mechanism. */
  @Test
  void theCasesOfARowAreAboutItsMechanisms() throws IOException {
    for (Row row : rows()) {
      List<String> mechanisms =
          CODE.matcher(row.lives())
              .results()
              .map(r -> r.group(1))
              .filter(code -> Mechanism.ofSlug(code).isPresent())
              .toList();
      List<String> cases = LINK.matcher(row.shown()).results().map(r -> r.group(1)).toList();
      if (!mechanisms.isEmpty() && !cases.isEmpty()) {
        String found = "";
        for (String file : cases) {
          found +=
              Files.readString(DOCS.resolve(file))
                  .lines()
                  .filter(line -> line.contains("\"finding\"") || line.contains("\"title\""))
                  .collect(Collectors.joining());
        }
        String all = found;
        assertThat(mechanisms).as(row.id()).anyMatch(m -> all.contains("\"" + m));
      }
    }
  }

  private static Set<String> known() throws IOException {
    Set<String> known = new TreeSet<>();
    try (Stream<Path> files = Files.list(Path.of("rules"))) {
      for (Path file : files.sorted().toList()) {
        Matcher id = Pattern.compile("@id\\(([^)]*)\\)").matcher(Files.readString(file));
        id.results().forEach(r -> known.add(r.group(1)));
      }
    }
    assertThat(known).hasSizeGreaterThan(150);
    Arrays.stream(Mechanism.values()).forEach(m -> known.add(m.slug()));
    SymptomTable.shipped().entries().forEach(e -> known.add(e.id()));
    Arrays.stream(Signal.values()).forEach(s -> known.add(s.name()));
    known.addAll(new EntryFormat(BeatMemory.MODULE).verbs());
    return known;
  }
}
