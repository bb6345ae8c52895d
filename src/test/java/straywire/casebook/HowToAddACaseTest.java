package straywire.casebook;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import straywire.module.ModuleFile;
import straywire.parts.ShippedParts;

/** The page on adding a case tells what is so. */
class HowToAddACaseTest {
  private static final Path PAGE = Path.of("docs/how-to-add-a-case.md");

  @Test
  void theExampleWrittenByHandLoadsAndIsFound(@TempDir Path folder) throws IOException {
    Matcher example =
        Pattern.compile("```json\n(.*?)```", Pattern.DOTALL).matcher(Files.readString(PAGE));
    assertThat(example.find()).isTrue();
    Path own = Files.createDirectories(folder.resolve("beat-memory"));
    Files.copy(BeatMemory.FOLDER.resolve("module.yaml"), own.resolve("module.yaml"));
    Path file = Files.writeString(own.resolve("bell-5.jsonl"), example.group(1));

    CaseBook book =
        new CaseBook(
            folder,
            false,
            f -> f.resolveSibling("module.yaml"),
            m -> ModuleFile.read(m, new ShippedParts()),
            BeatMemory.RULES);
    assertThat(book.files()).containsExactly(file);
    CaseScore score = book.run(file);
    assertThat(score.passed()).isTrue();
    assertThat(score.rank()).isEqualTo(1);
  }
}
