package straywire.symptoms;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import straywire.advice.SymptomEntry;
import straywire.advice.SymptomTable;

/**
 * The page lists every symptom of the table with what it means. Run with {@code
 * -Dstraywire.write=true} to write the list anew.
 */
class SymptomPageTest {
  private static final Path PAGE = Path.of("docs", "symptoms.md");
  private static final String LIST = "## The list\n";

  private static String list() {
    StringBuilder page = new StringBuilder(LIST);
    for (SymptomEntry entry : SymptomTable.shipped().entries()) {
      Optional<SymptomPredicate> predicate = SymptomPredicate.of(entry.id());
      page.append("\n### ").append(entry.id()).append("\n\n");
      page.append("*").append(entry.question()).append("*\n\n");
      page.append(
          predicate
              .map(p -> "Means: " + p.words() + ".\n")
              .orElse("Not simulated: weighed by `rules/symptoms.drl`.\n"));
    }
    return page.toString();
  }

  @Test
  void thePageListsEverySymptomWithItsQuestionAndItsMeaning() throws IOException {
    String page = Files.readString(PAGE);
    if (Boolean.getBoolean("straywire.write")) {
      page = page.substring(0, page.indexOf(LIST)) + list();
      Files.writeString(PAGE, page);
    }
    assertThat(page.substring(page.indexOf(LIST)))
        .as("the list in docs/symptoms.md, which has to be replaced by the text expected here")
        .isEqualTo(list());
  }

  @Test
  void theTableSaysOfEachSymptomWhetherItIsComputed() {
    for (SymptomEntry entry : SymptomTable.shipped().entries()) {
      assertThat(SymptomScores.computes(entry.id()))
          .as(entry.id())
          .isEqualTo(entry.kind() == SymptomEntry.Kind.EXECUTABLE);
    }
    assertThat(SymptomPredicate.values())
        .allMatch(p -> SymptomTable.shipped().symptom(p.id()).isPresent());
    assertThat(Arrays.stream(SymptomPredicate.values()).map(SymptomPredicate::words))
        .doesNotHaveDuplicates();
  }
}
