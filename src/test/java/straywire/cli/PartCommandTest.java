package straywire.cli;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import straywire.parts.SampleGate;

class PartCommandTest {
  @TempDir private Path folder;

  @Test
  void aPartIsShownWithDrawingPinsFunctionAndMistakes() {
    CommandRun run = CommandRun.of("part", "show", "74LS138");
    assertThat(run.code()).isZero();
    String notch = Glyphs.of(Straywire.charset()).notch;
    assertThat(run.out().lines().limit(12).map(line -> line.replace(notch, "n")))
        .containsExactly(
            "74x138: 3-to-8 decoder, active-low outputs",
            "",
            "        +---n---+",
            "     A -|1    16|- VCC",
            "     B -|2    15|- /Y0",
            "     C -|3    14|- /Y1",
            "  /G2A -|4    13|- /Y2",
            "  /G2B -|5    12|- /Y3",
            "    G1 -|6    11|- /Y4",
            "   /Y7 -|7    10|- /Y5",
            "   GND -|8     9|- /Y6",
            "        +-------+");
    assertThat(run.out())
        .contains("Supply at pin 16 (VCC), ground at pin 8 (GND).")
        .contains("   4  /G2A  input, active low\n")
        .contains("  H  L    L    LLL   | LHHHHHHH\n")
        .contains("An open input:\n  /G2A or /G2B open: all outputs 1.")
        .contains("  - An enable left open, so that all outputs stay high.\n")
        .contains("Where makers and drawings differ:\n  none known\n")
        .contains("  - function: TI SN54HC138 data sheet SCLS107G (2021), function table\n");
  }

  @Test
  void aPartIsShownAsJsonOnOneLine() throws IOException {
    CommandRun run = CommandRun.of("part", "show", "157", "--json");
    assertThat(run.out().lines()).hasSize(1);
    JsonNode part = new ObjectMapper().readTree(run.out());
    assertThat(part.at("/type").asText()).isEqualTo("74x157");
    assertThat(part.at("/group").asText()).isEqualTo("multiplexer");
    assertThat(part.at("/pins")).hasSize(16);
    assertThat(part.at("/pins/15/kind").asText()).isEqualTo("supply");
    assertThat(part.at("/disagreements/0").asText()).contains("swapped between makers");
  }

  @Test
  void aNumberThatIsNotThereIsOneLineWithTheNearest() {
    CommandRun run = CommandRun.of("part", "show", "74x188");
    assertThat(run.code()).isEqualTo(ExitCode.BAD_INPUT.number());
    assertThat(run.err())
        .isEqualTo(
            "straywire: 74x188: no part has this number; nearest is 74x189"
                + " (16 x 4 static RAM, 3-state, complement outputs)\n");
  }

  @Test
  void theListHasAllPartsByGroupAndTheFamilies() throws IOException {
    CommandRun run = CommandRun.of("part", "list");
    assertThat(run.out().lines().filter(line -> line.matches("  \\S+ +\\d+ pins .*"))).hasSize(109);
    assertThat(run.out())
        .startsWith("Gates and inverters (gate)\n  74x00    14 pins  Quad 2-input NAND\n")
        .contains("\n\nCounters (counter)\n")
        .endsWith("\nFamilies: 4000B, 74, AC, ACT, ALS, F, HC, HCT, LS, S\n");
    JsonNode json = new ObjectMapper().readTree(CommandRun.of("part", "list", "--json").out());
    assertThat(json.get("parts")).hasSize(109);
  }

  @Test
  void aGroupIsListedAlone() {
    assertThat(CommandRun.of("part", "list", "timer").out())
        .isEqualTo(
            """
            Timers and one-shots (timer)
              74x121   14 pins  Monostable (not retriggerable)
              74x123   16 pins  Dual retriggerable monostable with clear
              555       8 pins  Timer
            """);
    assertThat(CommandRun.of("part", "list", "timers").err())
        .isEqualTo("straywire: timers: no such group of parts; nearest is timer\n");
  }

  @Test
  void searchingPrintsOneLineAPart() {
    assertThat(CommandRun.of("part", "search", "gray", "LT").code())
        .isEqualTo(ExitCode.BAD_INPUT.number());
    assertThat(CommandRun.of("part", "search", "full", "adder").out())
        .isEqualTo("74x83    16 pins  4-bit full adder\n74x283   16 pins  4-bit full adder\n");
  }

  @Test
  void aFamilyIsShownWithItsSources() {
    CommandRun run = CommandRun.of("part", "family", "ls");
    assertThat(run.out())
        .startsWith("Family LS at 5 V:\n")
        .contains("  an open input reads        high\n")
        .contains("Fairchild DM74LS00");
    assertThat(CommandRun.of("part", "family", "XX").err())
        .isEqualTo(
            "straywire: XX: no such family;"
                + " known are 4000B, 74, AC, ACT, ALS, F, HC, HCT, LS, S\n");
    assertThat(CommandRun.of("part", "family", "HC", "--json").out())
        .startsWith("{\"family\":\"HC\",\"input-low-max\":1.5,");
  }

  @Test
  void aPartFileOfOnesOwnIsCheckedShownAndFound() throws IOException {
    Path file = Files.writeString(folder.resolve("gate.yaml"), SampleGate.YAML);
    assertThat(CommandRun.of("part", "check", file.toString()).out())
        .isEqualTo(file + ": fine. strike-gate does what its function table says.\n");
    String place = folder.toString();
    assertThat(CommandRun.of("part", "--parts", place, "show", "strike-gate").out())
        .startsWith("strike-gate: Gate of the striker\n");
    assertThat(CommandRun.of("part", "--parts", place, "search", "striker").out())
        .startsWith("strike-gate");
  }

  @Test
  void aPartFileThatDoesNotDoWhatItsTableSaysIsRefused() throws IOException {
    Path file =
        Files.writeString(
            folder.resolve("gate.yaml"), SampleGate.YAML.replace("H H | L", "H H | H"));
    CommandRun run = CommandRun.of("part", "check", file.toString());
    assertThat(run.code()).isEqualTo(ExitCode.BAD_INPUT.number());
    assertThat(run.err()).contains("gate.yaml:16: table: Y should show H, the logic gives L");
    Files.writeString(file, SampleGate.YAML.replace("function:", "group: gates\nfunction:"));
    assertThat(CommandRun.of("part", "check", file.toString()).err())
        .contains("gate.yaml:4: group: expected one of gate, buffer");
  }

  @Test
  void thePagesAreWrittenByOneCommand() throws IOException {
    CommandRun run = CommandRun.of("part", "pages", "--write", folder.resolve("pages").toString());
    assertThat(run.out()).isEqualTo("Wrote 220 files to " + folder.resolve("pages") + "\n");
    assertThat(Files.readString(folder.resolve("pages/74x189.md")))
        .isEqualTo(Files.readString(Path.of("docs/parts/74x189.md")));
  }
}
