package straywire.casebook;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.Stream;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import straywire.module.BenchLog;
import straywire.module.Entry;
import straywire.module.LogFile;
import straywire.module.ModuleFile;
import straywire.parts.ShippedParts;

/** Every case of the beat memory is replayed and must come out as it says. */
class CaseBookTest {
  private static final int SHIPPED = 54;

  /** Read as strictly as a case that somebody else wrote, schema included. */
  private static final CaseBook BOOK =
      new CaseBook(
          Path.of("cases", "beat-memory"),
          false,
          file -> file.resolveSibling("module.yaml"),
          m -> BeatMemory.MODULE,
          BeatMemory.RULES);

  /** The books of all modules together. */
  private static final CaseBook ALL =
      new CaseBook(
          Path.of("cases"),
          true,
          file -> file.resolveSibling("module.yaml"),
          m -> ModuleFile.readShipped(m, new ShippedParts()),
          BeatMemory.RULES);

  @Test
  void theBookOfTheBeatMemoryHasThisManyCases() {
    assertThat(BOOK.files()).hasSize(SHIPPED);
  }

  @Test
  void everySixthCaseIsFoundFirstInTheStepsItAllows() {
    assertAllFound(6);
  }

  @Tag("slow")
  @Test
  void everyShippedCaseIsFoundFirstInTheStepsItAllows() {
    List<CaseScore> scores = assertAllFound(1);
    assertThat(scores).hasSize(SHIPPED);
  }

  @Test
  void thereAreCasesOfEveryModuleThatShips() throws IOException {
    Set<Path> modules = new TreeSet<>();
    ALL.files().forEach(file -> modules.add(file.getParent()));
    try (Stream<Path> folders = Files.list(Path.of("cases"))) {
      assertThat(modules).containsExactlyElementsOf(folders.sorted().toList());
    }
    assertThat(ALL.files()).hasSizeGreaterThanOrEqualTo(90);
  }

  @Tag("slow")
  @Test
  void everyCaseOfTheOtherModulesIsFoundFirstInTheStepsItAllows() {
    List<Path> others =
        ALL.files().stream().filter(f -> !f.toString().contains("beat-memory")).toList();
    assertFound(ALL, others);
  }

  private static List<CaseScore> assertAllFound(int stride) {
    List<Path> files = new ArrayList<>();
    for (int i = 0; i < BOOK.files().size(); i += stride) {
      files.add(BOOK.files().get(i));
    }
    return assertFound(BOOK, files);
  }

  private static List<CaseScore> assertFound(CaseBook book, List<Path> files) {
    List<CaseScore> scores = files.stream().map(book::run).toList();
    assertThat(scores).allMatch(CaseScore::passed).allMatch(score -> score.rank() == 1);
    return scores;
  }

  @Test
  void theBookHoldsSlipsUndoingStepsNotTakenAndWords() {
    Set<String> kinds = new TreeSet<>();
    for (Path file : BOOK.files()) {
      BenchLog log = LogFile.readCase(file, BeatMemory.MODULE, false);
      for (BenchLog.Line line : log.lines()) {
        if (line.entry() instanceof Entry.Withdrawn) {
          kinds.add("undone");
        } else if (line.entry() instanceof Entry.Note note
            && note.text().startsWith("don't know")) {
          kinds.add("not taken");
        } else if (line.entry() instanceof Entry.Symptom symptom) {
          kinds.add(symptom.entries().isEmpty() ? "word alone" : "word about entries");
        }
      }
    }
    assertThat(kinds).containsExactly("not taken", "undone", "word about entries", "word alone");
  }

  @Test
  void everyFaultOfACaseIsOneThatTheModuleCanHave() {
    for (Path file : BOOK.files()) {
      BenchLog log = LogFile.readCase(file, BeatMemory.MODULE, false);
      Entry.Expected expected = (Entry.Expected) log.lines().get(log.lines().size() - 1).entry();
      assertThat(expected.faults())
          .as(file.toString())
          .allMatch(id -> BeatMemory.WORKBENCH.hypothesis(id).isPresent());
    }
  }
}
