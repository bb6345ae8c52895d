package straywire.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.BufferedReader;
import java.io.IOException;
import java.io.PrintWriter;
import java.io.StringReader;
import java.io.StringWriter;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;
import straywire.advice.RuleBase;
import straywire.casebook.Workbench;
import straywire.module.ModuleFile;
import straywire.parts.ShippedParts;
import straywire.sitting.Sitting;

/** The sitting that the README shows is a real one. */
class ReadmeTest {
  private static final String START = "$ ./straywire sit beat-memory\n";

  /** What the lamps showed before the part that is shown. */
  private static final String BEFORE = "01110100 00000000\n";

  private static List<String> shown() throws IOException {
    String page = Files.readString(Path.of("README.md"));
    int from = page.indexOf(START) + START.length();
    return page.substring(from, page.indexOf("```", from)).lines().toList();
  }

  private static List<String> printed(List<String> shown) throws IOException {
    StringBuilder typed = new StringBuilder(BEFORE);
    shown.stream()
        .filter(l -> l.startsWith("> "))
        .forEach(l -> typed.append(l, 2, l.length()).append('\n'));
    Workbench workbench =
        new Workbench(
            ModuleFile.readShipped(
                Path.of("cases", "beat-memory", "module.yaml"), new ShippedParts()),
            RuleBase.shipped());
    StringWriter out = new StringWriter();
    SittingShell shell =
        new SittingShell(
            Sitting.unrecorded(workbench), new PrintWriter(out), Glyphs.of(StandardCharsets.UTF_8));
    shell.greet();
    BufferedReader lines = new BufferedReader(new StringReader(typed.toString()));
    for (String line = lines.readLine(); line != null; line = lines.readLine()) {
      out.append("> ").append(line).append('\n');
      shell.take(line);
    }
    return out.toString().lines().toList();
  }

  @Test
  void everyLineOfTheSittingIsPrintedInThatOrder() throws IOException {
    List<String> shown = shown();
    List<String> left = new ArrayList<>(printed(shown));
    for (String line : shown) {
      if (!line.equals("...")) {
        assertThat(left).contains(line);
        left = left.subList(left.indexOf(line) + 1, left.size());
      }
    }
    assertThat(shown).contains("Beyond doubt:", "> 1.45");
  }
}
