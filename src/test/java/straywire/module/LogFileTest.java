package straywire.module;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import straywire.format.InputError;

class LogFileTest {
  private static final String HEADER =
      "{\"v\":1,\"n\":0,\"log\":\"beat-memory\",\"title\":\"write wire\"}\n";
  private static final String ON = "{\"v\":1,\"n\":1,\"power\":\"on\"}\n";
  private static final String SEEN = "{\"v\":1,\"n\":2,\"seen\":{\"R3\":\"dim\"}}\n";

  @TempDir private Path folder;

  private Path file(String text) throws IOException {
    return Files.writeString(folder.resolve("a.log"), text);
  }

  private BenchLog read(String text) throws IOException {
    return LogFile.read(file(text), BeatMemory.MODULE);
  }

  private static BenchLog parse(String text) {
    return LogFile.parse("a.log", text.getBytes(StandardCharsets.UTF_8), BeatMemory.MODULE);
  }

  @Test
  void aLogIsItsHeaderAndItsEntries() throws IOException {
    BenchLog log = read(HEADER + ON + SEEN);

    assertThat(log)
        .isEqualTo(
            new BenchLog(
                "beat-memory",
                "write wire",
                List.of(
                    new BenchLog.Line(1, new Entry.Power(true)),
                    new BenchLog.Line(2, new Entry.Seen(Map.of("R3", LampState.DIM))))));
  }

  @Test
  void theHeaderAloneTellsTheModule() throws IOException {
    assertThat(LogFile.header(file(HEADER + "never mind")))
        .isEqualTo(new LogFile.Header("beat-memory", "write wire"));
  }

  @Test
  void aLiveSittingHasNoTitle() throws IOException {
    assertThat(read("{\"v\":1,\"n\":0,\"log\":\"beat-memory\"}\n").title()).isEmpty();
  }

  @Test
  void timeChecksumLineEndsAndAMissingLastLineEndAreTaken() throws IOException {
    BenchLog plain = parse(HEADER + ON + SEEN);

    assertThat(
            read(
                HEADER.replace("\n", "\r\n")
                    + "{\"v\":1,\"n\":1,\"t\":\"2026-01-31T17:05:00Z\",\"power\":\"on\"}\n"
                    + "{\"v\":1,\"n\":2,\"seen\":{\"R3\":\"dim\"},\"sum\":\"32b986b7\"}"))
        .isEqualTo(plain);
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      quoteCharacter = '`',
      maxCharsPerColumn = 300,
      textBlock =
          """
          # the third line of a log | complaint
          {"v":2,"n":2,"power":"off"} | format version 2 is unknown; this program reads version 1
          {"n":2,"power":"off"} | the field v is missing
          {"v":1,"power":"off"} | the field n is missing
          {"v":1,"n":3,"power":"off"} | n: expected 2, got 3; numbers go up by 1
          {"v":1,"n":1,"power":"off"} | n: expected 2, got 1; numbers go up by 1
          {"v":1,"n":2,"power":"up"} | power: up is not one of on, off
          {"v":1,"n":2,"pwoer":"on"} | no entry is called pwoer; nearest is power
          {"v":1,"n":2,"power":"on","power":"off"} | not JSON: Duplicate field 'power'
          {"v":1,"n":2,"t":"noon","power":"off"} | t: expected a time such as 2026-01-31T17:05:00Z, got noon
          {"v":1,"n":2,"power":"off","sum":"00000000"} | sum: the line gives 8af7f0b6, not 00000000; it was changed
          {"v":1,"n":2,"sum":"2427ef5c","power":"off"} | sum: comes last, written ,"sum":"2427ef5c"}
          {"v":1,"n":2,"withdrawn":2} | entry 2 does not come before this one, which is 2
          {"v":1,"n":2,"symptom":"all-dark","answer":"yes","entries":[1,5]} | entry 5 does not come before this one, which is 2
          {"v":1,"n":2,"look":["memory"]} | look is a step of an exercise; a log says what was seen
          {"v":1,"n":2} | there is no entry; write one of power, set, press, hold, release, seen, measured, probed, continuity, symptom, inspected, repaired, exchanged, instruments, withdrawn, look, note, finding, expected
          ["v",1] | expected an object in braces, got array
          `` | the line is empty; each line holds one entry
          """)
  void oneLineSaysWhatIsWrong(String line, String complaint) {
    assertThatThrownBy(() -> parse(HEADER + ON + line + "\n"))
        .isInstanceOf(InputError.class)
        .hasMessage("a.log:3: " + complaint);
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      quoteCharacter = '`',
      textBlock =
          """
          {"v":1,"n":1,"power":"on"} | a log starts with its header, such as {"v":1,"n":0,"log":"beat-memory"}
          {"v":1,"n":0,"title":"x"} | a log starts with its header, such as {"v":1,"n":0,"log":"beat-memory"}
          {"v":1,"n":0,"log":"beat-memory","titel":"x"} | unknown field titel; nearest is title
          {"v":1,"n":0,"log":"bell-latch"} | the log is about bell-latch, not about beat-memory
          {"v":9,"n":0,"log":"beat-memory"} | format version 9 is unknown; this program reads version 1
          """)
  void aWrongHeaderIsToldOnItsLine(String header, String complaint) {
    assertThatThrownBy(() -> parse(header + "\n" + ON))
        .isInstanceOf(InputError.class)
        .hasMessage("a.log:1: " + complaint);
  }

  @Test
  void anEmptyOrMissingFileIsTold() {
    assertThatThrownBy(() -> parse("")).hasMessage("a.log: the file is empty");
    assertThatThrownBy(() -> LogFile.header(Path.of("none.log")))
        .hasMessage("none.log: there is no such file");
  }

  @Test
  void bytesThatAreNotUtf8AreToldOnTheirLine() {
    byte[] bytes = (HEADER + "{\"v\":1,\"n\":1,\"note\":\"?\"}\n").getBytes(StandardCharsets.UTF_8);
    bytes[bytes.length - 4] = (byte) 0xff;

    assertThatThrownBy(() -> LogFile.parse("a.log", bytes, BeatMemory.MODULE))
        .hasMessage("a.log:2: the line is not text in UTF-8");
  }

  @Test
  void aTornLastLineIsAnErrorWhenReadAndCutOffWhenResumed() throws IOException {
    String whole = HEADER + ON;
    for (int cut = 1; cut < SEEN.length() - 1; cut++) {
      Path file = file(whole + SEEN.substring(0, cut));

      assertThatThrownBy(() -> LogFile.read(file, BeatMemory.MODULE))
          .isInstanceOf(InputError.class)
          .hasMessageStartingWith(file + ":3: not JSON: ");
      LogFile.Resumed resumed = LogFile.resume(file, BeatMemory.MODULE);
      assertThat(resumed.torn()).contains(SEEN.substring(0, cut));
      assertThat(resumed.goodBytes()).isEqualTo(whole.length());
      assertThat(resumed.log()).isEqualTo(parse(whole));
    }
  }

  @Test
  void aWholeFileIsResumedWhole() throws IOException {
    LogFile.Resumed resumed = LogFile.resume(file(HEADER + ON + SEEN), BeatMemory.MODULE);

    assertThat(resumed.torn()).isEmpty();
    assertThat(resumed.log().lines()).hasSize(2);
  }

  @Test
  void onlyTheLastLineCanBeTorn() {
    assertThatThrownBy(
            () -> LogFile.resume(file(HEADER + "{\"v\":1,\"n\":1,\n" + SEEN), BeatMemory.MODULE))
        .isInstanceOf(InputError.class)
        .hasMessageContaining("a.log:2: not JSON: ");
  }

  @Test
  void aLastLineThatIsWholeButWrongIsNotTakenForTorn() {
    assertThatThrownBy(
            () ->
                LogFile.resume(
                    file(HEADER + ON + "{\"v\":1,\"n\":2,\"power\":\"up\"}\n"), BeatMemory.MODULE))
        .isInstanceOf(InputError.class)
        .hasMessageContaining("a.log:3: power: up is not one of on, off");
  }

  private static final String FINDING =
      "{\"v\":1,\"n\":2,\"finding\":[\"jumper-missing U1.3-U2.3\"],\"words\":\"it was off\"}\n";
  private static final String EXPECTED =
      "{\"v\":1,\"n\":3,\"expected\":[\"jumper-missing U1.3-U2.3\"],\"within-steps\":3}\n";

  @Test
  void aCaseIsALogThatEndsInFindingAndExpectation() throws IOException {
    Path file = file(HEADER + ON + FINDING + EXPECTED);

    assertThat(LogFile.readCase(file, BeatMemory.MODULE, false).lines()).hasSize(3);
    assertThat(LogFile.readCase(file, BeatMemory.MODULE, true).lines()).hasSize(3);
  }

  @Test
  void aCaseWithoutTitleOrEndIsRefused() throws IOException {
    assertThatThrownBy(
            () ->
                LogFile.readCase(
                    file(HEADER.replace(",\"title\":\"write wire\"", "") + ON + FINDING + EXPECTED),
                    BeatMemory.MODULE,
                    true))
        .hasMessageEndingWith("a.log:1: a case has a title in its first line");
    assertThatThrownBy(() -> LogFile.readCase(file(HEADER + ON + FINDING), BeatMemory.MODULE, true))
        .hasMessageEndingWith("a.log:3: a case ends with a finding and an expected line");
    assertThatThrownBy(
            () ->
                LogFile.readCase(
                    file(
                        HEADER
                            + "{\"v\":1,\"n\":1,\"expected\":[],\"within-steps\":3}\n"
                            + FINDING
                            + EXPECTED),
                    BeatMemory.MODULE,
                    true))
        .hasMessageEndingWith("a.log:2: expected stands once, in the last line");
  }
}
