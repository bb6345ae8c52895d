package straywire.module;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.time.Instant;
import java.time.InstantSource;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import straywire.format.BadEntry;
import straywire.format.InputError;

class LogWriterTest {
  private static final LogWriter.Style FULL =
      new LogWriter.Style(
          Optional.of(InstantSource.fixed(Instant.parse("2026-01-31T17:05:00Z"))), true);

  @TempDir private Path folder;

  private Path file() {
    return folder.resolve("sitting.log");
  }

  private LogWriter create(LogWriter.Style style) throws IOException {
    return LogWriter.create(file(), BeatMemory.MODULE, "a title", style);
  }

  private LogWriter resume() throws IOException {
    return LogWriter.resume(
        file(),
        BeatMemory.MODULE,
        LogFile.resume(file(), BeatMemory.MODULE),
        LogWriter.Style.PLAIN);
  }

  @Test
  void eachEntryIsALineThatIsThereWhenAppendReturns() throws IOException {
    try (LogWriter writer = create(LogWriter.Style.PLAIN)) {
      assertThat(writer.append(new Entry.Power(true))).isEqualTo(1);
      assertThat(Files.readAllLines(file()))
          .containsExactly(
              "{\"v\":1,\"n\":0,\"log\":\"beat-memory\",\"title\":\"a title\"}",
              "{\"v\":1,\"n\":1,\"power\":\"on\"}");
      assertThat(writer.append(new Entry.Press("write"))).isEqualTo(2);
      assertThat(Files.readAllLines(file())).hasSize(3);
      assertThat(writer.log().lines()).hasSize(2);
    }
  }

  @Test
  void linesMayCarryTimeAndChecksum() throws IOException {
    try (LogWriter writer = create(FULL)) {
      writer.append(new Entry.Power(true));
    }

    assertThat(Files.readAllLines(file()).get(1))
        .isEqualTo(
            "{\"v\":1,\"n\":1,\"t\":\"2026-01-31T17:05:00Z\",\"power\":\"on\",\"sum\":\"c7036f1c\"}");
    assertThat(LogFile.read(file(), BeatMemory.MODULE).lines()).hasSize(1);
  }

  @Test
  void aChangedLineFailsItsChecksum() throws IOException {
    try (LogWriter writer = create(FULL)) {
      writer.append(new Entry.Power(true));
    }
    Files.writeString(file(), Files.readString(file()).replace("\"on\"", "\"off\""));

    assertThatThrownBy(() -> LogFile.read(file(), BeatMemory.MODULE))
        .isInstanceOf(InputError.class)
        .hasMessageMatching(".*sitting.log:2: sum: the line gives .{8}, not .{8}; it was changed");
  }

  @Test
  void randomLogsComeBackEqual() throws IOException {
    for (long seed = 0; seed < 5; seed++) {
      RandomEntries random = new RandomEntries(BeatMemory.MODULE, seed);
      BenchLog written;
      try (LogWriter writer = create(seed % 2 == 0 ? FULL : LogWriter.Style.PLAIN)) {
        writer.append(new Entry.Power(true));
        for (int number = 2; number < 40; number++) {
          writer.append(random.any(number));
        }
        written = writer.log();
      }

      assertThat(LogFile.read(file(), BeatMemory.MODULE)).as("seed %d", seed).isEqualTo(written);
      Files.delete(file());
    }
  }

  @Test
  void aSittingGoesOnAfterATornLine() throws IOException {
    try (LogWriter writer = create(LogWriter.Style.PLAIN)) {
      writer.append(new Entry.Power(true));
    }
    Files.writeString(file(), "{\"v\":1,\"n\":2,\"pre", StandardOpenOption.APPEND);

    try (LogWriter writer = resume()) {
      assertThat(writer.append(new Entry.Press("write"))).isEqualTo(2);
    }
    assertThat(LogFile.read(file(), BeatMemory.MODULE).lines())
        .containsExactly(
            new BenchLog.Line(1, new Entry.Power(true)),
            new BenchLog.Line(2, new Entry.Press("write")));
  }

  @Test
  void aSittingGoesOnAfterALineWithoutItsEnd() throws IOException {
    try (LogWriter writer = create(LogWriter.Style.PLAIN)) {
      writer.append(new Entry.Power(true));
    }
    Files.writeString(file(), Files.readString(file()).stripTrailing());

    try (LogWriter writer = resume()) {
      writer.append(new Entry.Power(false));
    }
    assertThat(LogFile.read(file(), BeatMemory.MODULE).lines()).hasSize(2);
  }

  @Test
  void anEntryThatBelongsInNoLogIsNotWritten() throws IOException {
    try (LogWriter writer = create(LogWriter.Style.PLAIN)) {
      assertThatThrownBy(() -> writer.append(new Entry.Look(List.of("memory"))))
          .isInstanceOf(BadEntry.class)
          .hasMessage("look is a step of an exercise; a log says what was seen");
      assertThatThrownBy(() -> writer.append(new Entry.Withdrawn(1)))
          .isInstanceOf(BadEntry.class)
          .hasMessage("entry 1 does not come before this one, which is 1");
      assertThat(writer.append(new Entry.Power(true))).isEqualTo(1);
    }

    assertThat(Files.readAllLines(file())).hasSize(2);
  }

  @Test
  void aLogThatIsThereIsNotWrittenOver() throws IOException {
    create(LogWriter.Style.PLAIN).close();

    assertThatThrownBy(() -> create(LogWriter.Style.PLAIN))
        .isInstanceOf(InputError.class)
        .hasMessage(file() + ": is there already; name a new file or resume it");
  }

  @Test
  void twoSittingsCannotWriteOneLog() throws IOException {
    try (LogWriter writer = create(LogWriter.Style.PLAIN)) {
      assertThat(writer.log().lines()).isEmpty();
      assertThatThrownBy(this::resume)
          .isInstanceOf(InputError.class)
          .hasMessage(file() + ": is in use by another sitting");
    }
    resume().close();
  }
}
