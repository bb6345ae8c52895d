package straywire.module;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import straywire.parts.ShippedParts;

/** The examples on the format pages are read as they stand. */
class FormatPagesTest {
  @TempDir private Path folder;

  private static String block(String page, String language) throws IOException {
    String text = Files.readString(Path.of("docs", "formats", page));
    Matcher matcher =
        Pattern.compile("```" + language + "\n(.*?)```", Pattern.DOTALL).matcher(text);
    assertThat(matcher.find()).as("%s has an example", page).isTrue();
    return matcher.group(1);
  }

  private Path file(String name, String text) throws IOException {
    return Files.writeString(folder.resolve(name), text);
  }

  private static Module beatMemory() {
    return ModuleFile.read(BeatMemory.FILE, new ShippedParts());
  }

  @Test
  void theModuleExampleIsAModule() throws IOException {
    Path file = file("module.yaml", block("module.md", "yaml"));

    Module module = ModuleFile.read(file, new ShippedParts());

    assertThat(module.jumpers()).hasSize(14);
    assertThat(ModuleFile.notes(module)).isEmpty();
  }

  @Test
  void theComplaintShownIsTheOneGiven() throws IOException {
    String yaml = Files.readString(BeatMemory.FILE).replace("[write, U1.3, ", "[write, U1./WR, ");

    assertThat(Files.readString(Path.of("docs", "formats", "module.md"))).contains(complaint(yaml));
  }

  private static String complaint(String yaml) {
    try {
      return ModuleFile.parse("module.yaml", yaml, new ShippedParts()).title();
    } catch (straywire.format.InputError e) {
      return "    " + e.getMessage() + "\n";
    }
  }

  @Test
  void theLogExampleIsALogAndIsWrittenTheSame() throws IOException {
    String text = block("bench-log.md", "json");
    Module module = beatMemory();
    BenchLog log = LogFile.read(file("a.jsonl", text), module);
    Path again = folder.resolve("again.jsonl");
    try (LogWriter writer = LogWriter.create(again, module, log.title(), LogWriter.Style.PLAIN)) {
      for (BenchLog.Line line : log.lines()) {
        writer.append(line.entry());
      }
    }

    assertThat(Files.readString(again)).isEqualTo(text.replace("U1./WE", "U1.3"));
  }

  @Test
  void theCaseExampleIsACase() throws IOException {
    Path file = file("case.jsonl", block("case.md", "json"));

    assertThat(LogFile.readCase(file, beatMemory(), false).lines()).hasSize(6);
  }

  @Test
  void everyTypedExampleIsAnEntryAndEveryVerbOfALogIsShown() throws IOException {
    EntryWords words = new EntryWords(beatMemory());
    List<String> lines = block("bench-log.md", "text").lines().toList();

    assertThat(lines)
        .allSatisfy(
            line -> assertThat(words.print(words.parse(line))).isEqualTo(line.replace("/WE", "3")));
    assertThat(lines.stream().map(line -> line.split(" ")[0]).toList())
        .containsAll(words.verbs().stream().filter(verb -> !verb.equals("look")).toList());
  }
}
