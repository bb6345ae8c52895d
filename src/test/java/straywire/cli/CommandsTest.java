package straywire.cli;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class CommandsTest {
  private static final String CASE = "cases/beat-memory/write-wire-missing.jsonl";
  private static final String MODULE = "cases/beat-memory/module.yaml";

  @TempDir Path folder;

  /** The lines of the shipped case up to entry {@code last}. */
  private Path opening(int last) throws IOException {
    List<String> lines = Files.readAllLines(Path.of(CASE)).subList(0, last + 1);
    return Files.write(folder.resolve("opening.jsonl"), lines);
  }

  @Test
  void rankingALogTwiceGivesTheSameBytes() throws IOException {
    Path log = opening(11);
    CommandRun first = CommandRun.of("rank", log.toString(), "--json");
    CommandRun second = CommandRun.of("rank", log.toString(), "--json");
    assertThat(first.code()).isZero();
    assertThat(second.out()).isEqualTo(first.out());
    JsonNode state = new ObjectMapper().readTree(first.out());
    assertThat(state.at("/suspects/0/faults/0/id").asText()).isEqualTo("jumper-missing U1.3-U2.3");
    assertThat(first.out().lines()).hasSize(1);
  }

  @Test
  void aRankingInTextNamesSuspectReasonsAndNextStep() throws IOException {
    CommandRun run = CommandRun.of("rank", opening(11).toString());
    assertThat(run.out())
        .contains("Undecided:")
        .contains("The jumper from U1 pin 3 (/WE) to U2 pin 3 (/WE) is missing or broken")
        .contains("for it, entries")
        .contains("Next (about")
        .contains("measure the row of U2 pin 3 (/WE, left row, third from the notch)")
        .contains("expect about 1.5 V, undriven if it is 1");
  }

  @Test
  void wordsInOneLineGiveARanking() throws IOException {
    CommandRun text = CommandRun.of("tell", "beat-memory", "bus", "never", "releases");
    assertThat(text.code()).isZero();
    assertThat(text.out())
        .contains("  1  symptom bus-never-releases bus yes")
        .contains("The switch drive (drive the bus (low drives)) is closed");
    CommandRun json = CommandRun.of("tell", "beat-memory", "--json", "it smells burnt");
    JsonNode state = new ObjectMapper().readTree(json.out());
    assertThat(json.out().lines()).hasSize(1);
    assertThat(state.at("/heard/0/symptom").asText()).isEqualTo("smell");
    assertThat(state.at("/suspects/0/faults/0/id").asText()).isNotEqualTo("nothing-wrong");
  }

  @Test
  void wordsThatMayMeanSeveralThingsAreListedAndPicked() {
    CommandRun list = CommandRun.of("tell", "beat-memory", "bits are reversed");
    assertThat(list.out().lines()).hasSize(3);
    CommandRun picked = CommandRun.of("tell", "beat-memory", "bits are reversed", "--pick", "2");
    assertThat(picked.out()).contains("symptom reversed-nibble yes");
    CommandRun none = CommandRun.of("tell", "beat-memory", "frobnicate the zither");
    assertThat(none.code()).isEqualTo(ExitCode.BAD_INPUT.number());
    assertThat(none.err()).contains("reports nothing known here");
  }

  @Test
  void withoutAMeterNoMeasuringIsAskedFor() throws IOException {
    CommandRun run =
        CommandRun.of("rank", opening(11).toString(), "--json", "--instruments", "lamps");
    JsonNode state = new ObjectMapper().readTree(run.out());
    assertThat(state.get("others")).isNotEmpty();
    assertThat(run.out()).doesNotContain("\"read\":{\"measured\"");
    assertThat(run.out()).doesNotContain("\"read\":{\"inspected\"");
  }

  @Test
  void checkingAModuleWorksOutTheTimesOfItsTimer() {
    CommandRun run = CommandRun.of("module", "check", "cases/tempo-clock/module.yaml");
    assertThat(run.code()).isZero();
    assertThat(run.out()).contains("  U1 runs at 0.988 Hz (").contains("low for 471 ms");
  }

  @Test
  void expectedLevelsStandBesideTheDrawingOfThePart() {
    CommandRun run =
        CommandRun.of("levels", "beat-memory", "--set", "address 0001 drive low", "--part", "U3");
    assertThat(run.code()).isZero();
    // The lamps below depend on what the memory holds; the part is what is checked here.
    String notch = Glyphs.of(Straywire.charset()).notch;
    assertThat(run.out().lines().limit(12).map(l -> l.replace(notch, "n")))
        .containsExactly(
            "Power on, black lead on ground; set address 0001 data 00000000 drive low",
            "",
            "U3  74x04 LS, re-inverts the high half",
            "                     +---n---+",
            "0.2/3.5 ?         1A |1    14| VCC     5.0 high",
            "0.2/3.5 ?         1Y |2    13| 6A      0.0 low",
            "0.2/3.5 ?         2A |3    12| 6Y      3.5 high",
            "0.2/3.5 ?         2Y |4    11| 5A      0.0 low",
            "0.2/3.5 ?         3A |5    10| 5Y      3.5 high",
            "0.2/3.5 ?         3Y |6     9| 4A  0.2/3.5 ?",
            "    0.0 low      GND |7     8| 4Y  0.2/3.5 ?",
            "                     +-------+");
  }

  @Test
  void levelsAfterALogKnowWhatTheMemoryHolds() {
    CommandRun run =
        CommandRun.of("levels", "beat-memory", "--after", CASE, "--set", "address 0001");
    String lit = Glyphs.of(Straywire.charset()).lit;
    String dark = Glyphs.of(Straywire.charset()).dark;
    String word =
        String.join(
            "  ",
            List.of("1 0 1 0 1 1 0 0".split(" ")).stream()
                .map(b -> b.equals("1") ? lit : dark)
                .toList());
    assertThat(run.out()).contains("  memory                " + word);
  }

  @Test
  void theDemoEndsWithTheFoundWire() {
    CommandRun run = CommandRun.of("demo");
    assertThat(run.code()).isZero();
    assertThat(run.out())
        .contains("see memory 10010100")
        .contains("Next (about")
        .contains("Beyond doubt:")
        .contains("Put in a sound jumper from U1 pin 3 (/WE) to U2 pin 3 (/WE)")
        .contains("finding jumper-missing U1.3-U2.3");
  }

  @Test
  void checkedFilesAreSaidToBeFine() {
    assertThat(CommandRun.of("module", "check", MODULE).out())
        .isEqualTo(
            MODULE + ": fine. beat-memory: 5 parts, 40 nets, 76 jumpers, 14 controls, 16 lamps\n");
    assertThat(CommandRun.of("log", "check", CASE).out())
        .startsWith(CASE + ": fine. About beat-memory, ");
  }

  @Test
  void aFolderWithoutCasesIsNoSuccess() {
    CommandRun none = CommandRun.of("case", "run", "nowhere");
    assertThat(none.code()).isEqualTo(3);
    assertThat(none.err()).startsWith("straywire: nowhere: there is no such folder of cases");
    CommandRun empty = CommandRun.of("case", "run", folder.toString());
    assertThat(empty.code()).isEqualTo(3);
    assertThat(empty.err()).contains("there is no case in it");
  }

  @Test
  void aLogOfAModuleThatIsNotThereIsSaidWithItsLine() throws IOException {
    Path log = folder.resolve("log.jsonl");
    Files.writeString(log, "{\"v\":1,\"n\":0,\"log\":\"beat-memori\"}\n");
    assertThat(CommandRun.of("rank", log.toString()).err())
        .startsWith("straywire: " + log + ":1: log: there is no module.yaml beside it")
        .contains("nearest is beat-memory");
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      textBlock =
          """
          rank nowhere.jsonl                  | 3 | straywire: nowhere.jsonl: there is no such file
          rank cases/beat-memory/module.yaml  | 3 | straywire: cases/beat-memory/module.yaml:1: not JSON
          sit beat-memori                     | 3 | straywire: beat-memori: neither a module file nor a module of the case book; nearest is beat-memory
          levels beat-memory --part U9        | 3 | straywire: no part is labelled U9; nearest is U1
          levels beat-memory --set adress_1   | 3 | straywire: set: missing: a value for adress_1
          case add cases/none.jsonl           | 3 | straywire: cases/none.jsonl: there is no such file
          case add cases/none.jsonl --within -3 | 3 | straywire: --within: a case is found within 1 step or more, got -3
          sit beat-memory --tables none       | 3 | straywire: none: there is no such folder
          sit beat-memory --priors none.yaml  | 3 | straywire: none.yaml: there is no such file
          sit beat-memory --journal cases/beat-memory | 3 | straywire: cases/beat-memory: is a folder; name a file in it
          sit beat-memory --journal none/x.jsonl | 4 | straywire: none/x.jsonl: there is no such file or folder
          case record beat-memory jumper-missing --to target/x.jsonl | 3 | straywire: FAULT: no fault is called jumper-missing; there are jumper-missing
          rank                                | 2 | straywire: LOGFILE is missing
          figures --every abc                 | 2 | straywire: --every: expected a whole number, got abc
          case record beat-memory             | 2 | straywire: --to and FAULT are missing
          module new other                    | 2 | straywire: --from or --list is missing
          levels beat-memory --set            | 2 | straywire: --set: expected CONTROLS after it
          rnak                                | 2 | straywire: no such command or option: rnak; nearest is rank
          module                              | 2 | straywire: say what to do: check MODULE
          """)
  void whatIsWrongIsSaidInOneLineWithItsExitCode(String line, int code, String message) {
    CommandRun run = CommandRun.of(line.strip().split("\\s+"));
    assertThat(run.code()).isEqualTo(code);
    assertThat(run.err()).startsWith(message).doesNotContain("\tat ");
    assertThat(run.out()).isEmpty();
  }

  @Test
  void instrumentsThatDoNotExistAreRefused() throws IOException {
    CommandRun run = CommandRun.of("rank", opening(3).toString(), "--instruments", "metre");
    assertThat(run.code()).isEqualTo(3);
    assertThat(run.err())
        .isEqualTo(
            "straywire: --instruments: metre is no instrument; write lamps, or some of"
                + " eyes,meter,logic-probe,spare-parts\n");
  }

  @Test
  void anOwnTableOfSecondsChangesTheStepTimes() throws IOException {
    Path seconds = Files.writeString(folder.resolve("seconds.yaml"), "measure: 1000\n");
    Path log = opening(11);
    String slow =
        CommandRun.of("rank", log.toString(), "--seconds", seconds.toString(), "--json").out();
    JsonNode next = new ObjectMapper().readTree(slow).get("next");
    assertThat(next.get("read").has("measured")).isFalse();
    Files.writeString(seconds, "mesure: 9\n");
    assertThat(CommandRun.of("rank", log.toString(), "--seconds", seconds.toString()).err())
        .isEqualTo("straywire: " + seconds + ":1: unknown field mesure; nearest is measure\n");
    Files.writeString(seconds, "measure: soon\n");
    assertThat(CommandRun.of("rank", log.toString(), "--seconds", seconds.toString()).err())
        .isEqualTo("straywire: " + seconds + ":1: measure: expected a number above 0, got soon\n");
  }

  @Test
  void aFolderOfOwnTablesIsTakenTogether() throws IOException {
    Path log = opening(11);
    Path own = Files.createDirectory(folder.resolve("own"));
    Files.writeString(own.resolve("seconds.yaml"), "measure: 1000\n");
    Files.writeString(own.resolve("ranking.yaml"), "beyond-doubt: {value: 0.2}\n");
    String shipped = CommandRun.of("rank", log.toString(), "--json").out();
    String changed =
        CommandRun.of("rank", log.toString(), "--tables", own.toString(), "--json").out();
    assertThat(changed).isNotEqualTo(shipped);
    Files.writeString(own.resolve("rankings.yaml"), "");
    assertThat(CommandRun.of("rank", log.toString(), "--tables", own.toString()).err())
        .isEqualTo(
            "straywire: "
                + own.resolve("rankings.yaml")
                + ": no table is called so; there are priors.yaml, seconds.yaml, ranking.yaml, words.yaml\n");
  }

  @Test
  void anOwnTableOfPriorsChangesTheRanking() throws IOException {
    Path priors =
        Files.writeString(
            folder.resolve("priors.yaml"),
            "format: straywire-priors/1\nfrequencies:\n  jumper-missing: 1\n");
    Path log = opening(11);
    String shipped = CommandRun.of("rank", log.toString(), "--json").out();
    String own =
        CommandRun.of("rank", log.toString(), "--priors", priors.toString(), "--json").out();
    String first = "/suspects/0/faults/0/id";
    assertThat(new ObjectMapper().readTree(shipped).at(first).asText())
        .isEqualTo("jumper-missing U1.3-U2.3");
    assertThat(new ObjectMapper().readTree(own).at(first).asText())
        .isNotEqualTo("jumper-missing U1.3-U2.3");
  }

  @Test
  void aSittingWithoutAJournalOfItsOwnGetsOneNamedForModuleAndTime() {
    Path sittings = folder.resolve("a").resolve("b");
    assertThat(Journals.fresh(sittings, "beat-memory", Instant.parse("2026-01-31T17:05:09Z")))
        .isEqualTo(sittings.resolve("beat-memory-20260131-170509.jsonl"));
    assertThat(sittings).isDirectory();
  }

  @Test
  void aFinishedSittingBecomesACaseThatReplays() throws IOException {
    Path book = folder.resolve("book");
    CommandRun added =
        CommandRun.of(
            "case", "add", CASE, "--to", book.toString(), "--title", "Mine", "--within", "3");
    assertThat(added.err()).isEmpty();
    Path file = book.resolve("beat-memory").resolve("write-wire-missing.jsonl");
    assertThat(Files.readAllLines(file).get(0)).contains("\"title\":\"Mine\"");
    assertThat(book.resolve("beat-memory").resolve("module.yaml"))
        .hasSameTextualContentAs(Path.of(MODULE));
    CommandRun ran = CommandRun.of("case", "run", book.toString());
    assertThat(ran.code()).isZero();
    assertThat(ran.out())
        .contains("beat-memory/write-wire-missing.jsonl: Mine\n")
        .contains("1 case: true cause first in 1, in the first three in 1;");
    assertThat(CommandRun.of("case", "add", CASE, "--to", book.toString()).err())
        .isEqualTo("straywire: " + file + ": is there already; take another name\n");
  }

  @Test
  void anOpenSittingIsNoCaseYet() throws IOException {
    Path book = folder.resolve("book");
    CommandRun run = CommandRun.of("case", "add", opening(5).toString(), "--to", book.toString());
    assertThat(run.code()).isEqualTo(3);
    assertThat(run.err()).endsWith(": the sitting has no finding yet; finish it first\n");
    assertThat(book.resolve("beat-memory").resolve("opening.jsonl")).doesNotExist();
  }

  @Test
  void aCaseThatIsNotFoundInTimeIsMissed() throws IOException {
    Path book = Files.createDirectories(folder.resolve("beat-memory"));
    Files.copy(Path.of(MODULE), book.resolve("module.yaml"));
    Files.writeString(
        book.resolve("hopeless.jsonl"),
        """
        {"v":1,"n":0,"log":"beat-memory","title":"Nothing seen"}
        {"v":1,"n":1,"power":"on"}
        {"v":1,"n":2,"finding":["jumper-missing A2-U1.14"],"words":"A wire was missing"}
        {"v":1,"n":3,"expected":["jumper-missing A2-U1.14"],"within-steps":0}
        """);
    CommandRun run = CommandRun.of("case", "run", folder.toString());
    assertThat(run.code()).isEqualTo(1);
    assertThat(run.out()).contains("beat-memory/hopeless.jsonl: Nothing seen  MISSED");
  }

  @Test
  void aCaseOfAnOpeningIsGoneOnWithByASimulatedBench() throws IOException {
    Path book = Files.createDirectories(folder.resolve("beat-memory"));
    Files.copy(Path.of(MODULE), book.resolve("module.yaml"));
    Files.writeString(
        book.resolve("opening.jsonl"),
        """
        {"v":1,"n":0,"log":"beat-memory","title":"The write wire, opening only"}
        {"v":1,"n":1,"power":"on"}
        {"v":1,"n":2,"seen":{"memory":"01110100","bus":"00000000"}}
        {"v":1,"n":3,"set":{"data":"10010110"}}
        {"v":1,"n":4,"press":"write"}
        {"v":1,"n":5,"seen":{"memory":"10010100"}}
        {"v":1,"n":6,"finding":["jumper-missing U1.3-U2.3"],"words":"The wire was missing"}
        {"v":1,"n":7,"expected":["jumper-missing U1.3-U2.3"],"within-steps":3}
        """);
    CommandRun run = CommandRun.of("case", "run", folder.toString());
    assertThat(run.out()).doesNotContain("MISSED");
    assertThat(run.code()).isZero();
  }

  @Test
  void aModuleThatIsRightOnPaperReviewsClean() {
    CommandRun run = CommandRun.of("module", "review", "beat-memory");
    assertThat(run.code()).isEqualTo(ExitCode.OK.number());
    assertThat(run.out())
        .startsWith("beat-memory: nothing wrong on paper; notes explained: 3\n")
        .contains("meant  U5 (DRV-11): while drive is high")
        .contains("Supply about ")
        .contains("First test: 5 V with the current limited to about ");
    assertThat(run.out().lines()).allMatch(line -> line.length() <= 100);
  }

  @Test
  void aModuleWithALampStraightOnAnOutputTellsWhatItCosts() throws IOException {
    String yaml = Files.readString(Path.of(MODULE));
    Path bare =
        Files.writeString(
            folder.resolve("bare.yaml"),
            yaml.replace("R7: {title: memory 7, to: GND, ohms: 2200}", "R7: {to: GND, ohms: 0}"));
    CommandRun run = CommandRun.of("module", "review", bare.toString());
    assertThat(run.code()).isEqualTo(ExitCode.FINDINGS.number());
    assertThat(run.out())
        .startsWith("beat-memory: 1 wrong\n")
        .contains("wrong  R7 (LOAD-04)\n       R7 has no resistor and takes ")
        .contains("       So: It holds the high at 2.1 V, and U5.9 needs 2.0 V")
        .contains("       Do: Put 1 to 2.2 kohm in series");

    JsonNode json =
        new ObjectMapper()
            .readTree(CommandRun.of("module", "review", bare.toString(), "--json").out());
    assertThat(json.get("clean").asBoolean()).isFalse();
    assertThat(json.at("/findings/0/finding").asText()).isEqualTo("LOAD-04");
    assertThat(json.at("/findings/0/severity").asText()).isEqualTo("wrong");
    assertThat(json.get("explained")).hasSize(3);
    assertThat(json.at("/supply/usual-milliamps").asInt()).isBetween(100, 400);
  }

  @Test
  void aModuleThatWouldBurnIsStopped() throws IOException {
    String yaml = Files.readString(Path.of(MODULE));
    Path bad =
        Files.writeString(
            folder.resolve("bad.yaml"),
            yaml.replace("U3.14, U4.14,", "U3.7, U4.14,").replace("U3.7, U4.7,", "U3.14, U4.7,"));
    CommandRun run = CommandRun.of("module", "review", bad.toString());
    assertThat(run.code()).isEqualTo(ExitCode.FINDINGS.number());
    assertThat(run.out())
        .startsWith("beat-memory: 2 stop. Do not switch on\n")
        .contains("stop   U3.7 (SUP-04)")
        .contains("Care   Do not switch on");
  }

  @Test
  void aModuleThatCannotBeReadGivesOneClearLine() throws IOException {
    String yaml = Files.readString(Path.of(MODULE));
    Path bad =
        Files.writeString(folder.resolve("bad.yaml"), yaml.replace("{VCC: 47u,", "{VCC: 47 uF,"));
    CommandRun run = CommandRun.of("module", "review", bad.toString());
    assertThat(run.code()).isEqualTo(ExitCode.BAD_INPUT.number());
    assertThat(run.out()).isEmpty();
    assertThat(run.err().lines()).hasSize(1);
    assertThat(run.err()).contains("bad.yaml:", "capacitors-to-ground.VCC");
  }

  @Test
  void aFaultOfAWholeBusIsToldOnceWithItsPlaces() throws IOException {
    String yaml = Files.readString(Path.of(MODULE));
    Path bare =
        Files.writeString(
            folder.resolve("bare.yaml"),
            yaml.replaceAll("(R\\d: \\{title: memory \\d, to: GND, ohms: )2200", "$10"));
    CommandRun run = CommandRun.of("module", "review", bare.toString());
    assertThat(run.out())
        .startsWith("beat-memory: 8 wrong\n")
        .contains("wrong  R0 (LOAD-04)")
        .contains("       The same at R1, R2, R3, R4, R5, R6, R7.\n");
    assertThat(run.out().lines().count()).isLessThan(25);
  }

  @Test
  void faultsAreListedByWhatTheySpeakOf() throws IOException {
    CommandRun run = CommandRun.of("module", "faults", "beat-memory", "U1.1", "bridged");
    assertThat(run.code()).isZero();
    assertThat(run.out())
        .startsWith("beat-memory: 1 fault\n")
        .contains("bridged U1.1 U1.2\n    U1 pin 1 (A0) is joined to U1 pin 2 (/CS).\n");
    JsonNode faults =
        new ObjectMapper()
            .readTree(CommandRun.of("module", "faults", "beat-memory", "--json").out())
            .get("faults");
    assertThat(faults).hasSizeGreaterThan(1000);
    assertThat(faults.get(0).has("repair")).isTrue();
    CommandRun none = CommandRun.of("module", "faults", "beat-memory", "U9");
    assertThat(none.code()).isEqualTo(3);
    assertThat(none.err()).isEqualTo("straywire: WORD: no fault of beat-memory speaks of U9\n");
  }
}
