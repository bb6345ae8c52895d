package straywire.sitting;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.BufferedReader;
import java.io.IOException;
import java.io.PrintWriter;
import java.io.StringReader;
import java.io.Writer;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import straywire.casebook.Workbench;
import straywire.faults.Hypothesis;
import straywire.format.BadEntry;
import straywire.format.InputError;
import straywire.module.Entry;
import straywire.module.EntryWords;
import straywire.module.Labels;
import straywire.module.LogFile;
import straywire.module.LogWriter;
import straywire.module.Module;
import straywire.module.Point;
import straywire.sitting.Situation.Stage;
import straywire.steps.Outlook.Verdict;

class SittingTest {
  private static final Workbench WORKBENCH = BeatBench.WORKBENCH;
  private static final Module MODULE = BeatBench.MODULE;

  private static final Point ONE_POINT = new Labels(MODULE).point("U1.3");
  private static final Point OTHER_POINT = new Labels(MODULE).point("U2.3");

  @TempDir Path folder;

  private static Entry entry(String line) {
    return new EntryWords(MODULE).parse(line);
  }

  private static Sitting typed(String... lines) {
    Sitting sitting = Sitting.unrecorded(WORKBENCH);
    for (String line : lines) {
      sitting.enter(entry(line));
    }
    return sitting;
  }

  private static String bytes(Sitting sitting) {
    return new SituationJson(MODULE).of(sitting.now(), sitting.log()).toString();
  }

  private Sitting journaled(Path file) {
    return Sitting.open(WORKBENCH, file, LogWriter.Style.PLAIN);
  }

  @Test
  void anEntryIsOnTheDiskBeforeItsAnswerIsShown() throws IOException {
    Path file = folder.resolve("journal.jsonl");
    List<String> onDisk = new ArrayList<>();
    Writer reader =
        new Writer() {
          @Override
          public void write(char[] text, int from, int count) throws IOException {
            // The first character of an answer is enough to look at what is on the disk.
            onDisk.add(Files.readString(file));
          }

          @Override
          public void flush() {}

          @Override
          public void close() {}
        };
    try (Sitting sitting = journaled(file)) {
      String lines = "{\"entry\":{\"power\":\"on\"}}\n{\"entry\":{\"press\":\"write\"}}\n";
      new Dialogue(sitting)
          .run(new BufferedReader(new StringReader(lines)), new PrintWriter(reader));
    }
    assertThat(onDisk).hasSize(3);
    assertThat(onDisk.get(0)).isEqualTo("{\"v\":1,\"n\":0,\"log\":\"beat-memory\"}\n");
    assertThat(onDisk.get(1)).endsWith("{\"v\":1,\"n\":1,\"power\":\"on\"}\n");
    assertThat(onDisk.get(2)).endsWith("{\"v\":1,\"n\":2,\"press\":\"write\"}\n");
  }

  @Test
  void aSittingResumesWithTheSameOutlookToTheByte() throws IOException {
    Path file = folder.resolve("journal.jsonl");
    String before;
    try (Sitting sitting = journaled(file)) {
      sitting.enter(entry("power on"));
      sitting.enter(entry("see memory 01100101 bus 00000000"));
      sitting.enter(entry("set data 10010110"));
      sitting.enter(entry("press write"));
      sitting.enter(entry("see memory 10010000"));
      sitting.skip();
      sitting.undo();
      sitting.skip();
      before = bytes(sitting);
    }
    try (Sitting sitting = journaled(file)) {
      assertThat(bytes(sitting)).isEqualTo(before);
    }
  }

  @Test
  void aLogReplayedAtOnceGivesTheBytesOfTheSittingThatWroteIt() {
    Sitting sitting = Sitting.unrecorded(WORKBENCH);
    Hypothesis fault = WORKBENCH.hypothesis("jumper-missing U4.4-U5.3").orElseThrow();
    SimulatedHand hand = new SimulatedHand(WORKBENCH, fault, 4);
    while (sitting.now().stage() != Stage.REPAIRING) {
      sitting.answer(hand.read(sitting.now().next().orElseThrow()));
      assertThat(bytes(Sitting.over(WORKBENCH, sitting.log()))).isEqualTo(bytes(sitting));
    }
  }

  @Test
  void aJournalTornByACrashIsGoneOnWith() throws IOException {
    Path file = folder.resolve("journal.jsonl");
    try (Sitting sitting = journaled(file)) {
      sitting.enter(entry("power on"));
      sitting.enter(entry("press write"));
    }
    String whole = Files.readString(file);
    Files.writeString(file, whole.substring(0, whole.length() - 6));
    try (Sitting sitting = journaled(file)) {
      assertThat(sitting.log().lines()).hasSize(1);
      assertThat(sitting.enter(entry("press write"))).isEqualTo(2);
    }
    assertThat(Files.readString(file)).isEqualTo(whole);
  }

  @Test
  void twoSittingsCannotShareAJournal() throws IOException {
    Path file = folder.resolve("journal.jsonl");
    try (Sitting first = journaled(file)) {
      assertThatThrownBy(() -> journaled(file))
          .isInstanceOf(InputError.class)
          .hasMessage(file + ": is in use by another sitting");
      assertThat(first.log().lines()).isEmpty();
    }
  }

  @Test
  void undoingAnUndoBringsTheEntryBack() {
    Sitting sitting = typed("power on", "see memory 00000000 bus 11111111");
    String seen = bytes(sitting);
    assertThat(sitting.undo()).containsExactly(2);
    assertThat(sitting.log().standing()).hasSize(1);
    sitting.enter(new Entry.Withdrawn(3));
    assertThat(sitting.log().standing()).hasSize(2);
    assertThat(bytes(sitting).replace("\"entries\":4", "\"entries\":2")).isEqualTo(seen);
  }

  @Test
  void anEarlyEntryTakenBackLeavesWhatTheRestSays() {
    Sitting slip =
        typed("power on", "measure U2.8 3.0", "set data 10010110", "press write", "withdraw 2");
    Sitting without = typed("power on", "set data 10010110", "press write");
    assertThat(slip.now().outlook().suspects()).isEqualTo(without.now().outlook().suspects());
  }

  @Test
  void undoTakesAWholeAnswerBack() {
    Sitting sitting = typed("power on", "see memory 01100101 bus 00000000");
    int before = sitting.log().standing().size();
    List<Integer> written = sitting.answer("10010110");
    assertThat(written).hasSizeGreaterThan(1);
    assertThat(sitting.undo()).containsExactlyInAnyOrderElementsOf(written);
    assertThat(sitting.log().standing()).hasSize(before);
    assertThat(sitting.undo()).as("then one entry at a time").containsExactly(2);
  }

  @Test
  void aSymptomThatNobodyKnowsIsRefused() {
    assertThatThrownBy(() -> typed("symptom bit-stuck-hgh memory yes"))
        .isInstanceOf(BadEntry.class)
        .hasMessage("no symptom is called bit-stuck-hgh; nearest is bit-stuck-high");
  }

  @Test
  void undoTakesAHeldReadingBackAsOne() {
    Sitting sitting = typed("power on", "hold write", "measure U1.3 0.0", "release write");
    assertThat(sitting.undo()).containsExactly(4, 3, 2);
    assertThat(sitting.undo()).containsExactly(1);
    assertThatThrownBy(sitting::undo)
        .isInstanceOf(BadEntry.class)
        .hasMessage("there is nothing to undo");
  }

  @Test
  void whatDoesNotStandCannotBeWithdrawn() {
    Sitting sitting = typed("power on");
    sitting.undo();
    assertThatThrownBy(() -> sitting.enter(new Entry.Withdrawn(1)))
        .hasMessage("entry 1 is withdrawn already");
    assertThatThrownBy(() -> sitting.enter(new Entry.Withdrawn(9)))
        .hasMessage("there is no entry 9 so far");
    assertThat(sitting.log().lines()).hasSize(2);
  }

  @Test
  void theExerciseIsAskedForUntilSomethingDiffers() {
    Sitting sitting = Sitting.unrecorded(WORKBENCH);
    assertThat(sitting.now().stage()).isEqualTo(Stage.EXERCISING);
    Proposed first = sitting.now().next().orElseThrow();
    assertThat(first.before()).first().isEqualTo(new Entry.Power(true));
    sitting.answer("01100101 00000000");
    assertThat(sitting.now().stage()).isEqualTo(Stage.EXERCISING);
    assertThat(sitting.now().next().orElseThrow().expected()).containsExactly("memory 10010110");
    sitting.answer("10010000");
    assertThat(sitting.now().stage()).isEqualTo(Stage.SEARCHING);
    assertThat(sitting.now().outlook().verdict()).isEqualTo(Verdict.OPEN);
  }

  @Test
  void dontKnowAsksSomethingElseUntilTheControlsMove() {
    Sitting sitting =
        typed(
            "power on",
            "see memory 01100101 bus 00000000",
            "set data 10010110",
            "press write",
            "see memory 10010000");
    Proposed first = sitting.now().next().orElseThrow();
    sitting.skip();
    Proposed second = sitting.now().next().orElseThrow();
    assertThat(second).isNotEqualTo(first);
    sitting.skip();
    assertThat(sitting.now().next()).isNotEqualTo(java.util.Optional.of(first));
    assertThat(sitting.now().next()).isNotEqualTo(java.util.Optional.of(second));
  }

  @Test
  void aRoundPassedOverIsFollowedByTheNextRound() {
    Sitting sitting = Sitting.unrecorded(WORKBENCH);
    sitting.skip();
    assertThat(sitting.now().next().orElseThrow().expected()).containsExactly("memory 10010110");
  }

  @Test
  void twoReadingsThatDifferWithNothingTouchedBetweenAreNamed() {
    Sitting sitting =
        typed("power on", "see R3 lit", "measure U1.3 4.9", "measure U1.3 0.2", "see R3 dark");
    assertThat(sitting.now().contradictions())
        .contains(
            "entries 3 and 4 differ: U1.3 was 4.90 V, then 0.20 V, with nothing touched between",
            "entries 2 and 5 differ: R3 was lit, then dark, with nothing touched between");
  }

  @Test
  void theSameReadingsAreNoContradictionOnceAButtonWasPressed() {
    Sitting sitting = typed("power on", "see R3 lit", "press write", "see R3 dark");
    assertThat(sitting.now().contradictions()).isEmpty();
  }

  @Test
  void aSittingIsNotFinishedBeforeItsRepairIsConfirmed() {
    Sitting sitting = typed("power on");
    assertThatThrownBy(sitting::finish)
        .hasMessage(
            "the by-hand exercise is not through; go on, or write the finding yourself:"
                + " finding IDS : WORDS");
    sitting.enter(entry("repaired exchanged all jumpers"));
    assertThatThrownBy(sitting::finish)
        .hasMessage(
            "the repair is not confirmed; go on with the steps, or write the finding yourself:"
                + " finding IDS : WORDS");
  }

  @Test
  void aClosedSittingTakesNothingButAnUndo() {
    Sitting sitting = typed("power on", "finding nothing : all well");
    assertThat(sitting.now().stage()).isEqualTo(Stage.CLOSED);
    assertThatThrownBy(() -> sitting.enter(entry("press write")))
        .hasMessage("the sitting is closed by its finding; undo the finding to go on");
    sitting.undo();
    assertThat(sitting.enter(entry("press write"))).isEqualTo(4);
  }

  @Test
  void aHealthyModuleComesThroughTheWholeExerciseAsHealthy() {
    Sitting sitting = Sitting.unrecorded(WORKBENCH);
    SimulatedHand hand = new SimulatedHand(WORKBENCH, WORKBENCH.nothingWrong(), 5);
    assertThat(hand.finish(sitting, 40)).isPresent();
    assertThat(finding(sitting)).isEqualTo(new Entry.Finding(List.of(), "Nothing was wrong"));
  }

  @Test
  void aFindingSaysWhatWasAskedForAndNotLookedAt() {
    Sitting sitting = Sitting.unrecorded(WORKBENCH);
    sitting.skip();
    SimulatedHand hand = new SimulatedHand(WORKBENCH, WORKBENCH.nothingWrong(), 5);
    assertThat(hand.finish(sitting, 40)).isPresent();
    assertThat(finding(sitting).words())
        .startsWith("Nothing was wrong. Not checked: power on, set address 0000")
        .doesNotContain("passed over");
  }

  @Test
  void twoFaultsAreFoundAndRepairedOneAfterTheOther() {
    Hypothesis both =
        WORKBENCH.hypothesis("jumper-missing GND-U1.2 + inverter-bypassed U4.5-U4.6").orElseThrow();
    Sitting sitting = Sitting.unrecorded(WORKBENCH);
    assertThat(new SimulatedHand(WORKBENCH, both, 3).finish(sitting, 30)).isPresent();
    assertThat(finding(sitting).faults())
        .containsExactlyInAnyOrder("jumper-missing GND-U1.2", "inverter-bypassed U4.5-U4.6");
  }

  @ParameterizedTest
  @ValueSource(
      strings = {"symptom smell", "symptom chip-warm U1", "measure U1.16 6.5", "measure U1.16 -5"})
  void aSignOfDangerIsAnsweredWithPowerOffAndALook(String sign) {
    Sitting sitting = typed("power on", sign);
    Proposed next = sitting.now().next().orElseThrow();
    assertThat(next.before()).containsExactly(new Entry.Power(false));
    assertThat(next.wanted()).isInstanceOf(Wanted.AsMeant.class);

    sitting.enter(entry("power off"));
    Proposed cold = sitting.now().next().orElseThrow();
    assertThat(cold.before()).isEmpty();
    assertThat(cold.wanted()).isInstanceOf(Wanted.AsMeant.class);

    sitting.enter(entry("power on"));
    assertThat(sitting.now().next().orElseThrow().before())
        .as("a power-on is no answer")
        .containsExactly(new Entry.Power(false));
    sitting.enter(entry("power off"));
    for (int looks = 0; looks < 3 && sitting.now().caution().isPresent(); looks++) {
      sitting.answer("ok");
    }
    sitting.enter(entry("power on"));
    assertThat(sitting.now().caution()).isEmpty();
    assertThat(sitting.now().next().orElseThrow().before()).doesNotContain(new Entry.Power(false));
  }

  @Test
  void aNoteOfHeatIsHeard() {
    assertThat(typed("power on", "note U1 is hot").now().advice().cautions())
        .anyMatch(c -> c.urgent() && c.rule().equals("SAFE-17"));
  }

  @Test
  void aBeepWithThePowerOnSaysNothing() {
    Sitting on = typed("power on", "joined U1.3 U2.3 no");
    assertThat(on.now().outlook().suspects())
        .isEqualTo(typed("power on").now().outlook().suspects());
  }

  @Test
  void lampsMayBeTypedAsTheStepPrintsThemOrWithGaps() {
    Wanted.Lamps lamps = new Wanted.Lamps(List.of("memory", "bus"));
    List<Entry> plain = lamps.read("10010110 00000000", MODULE);
    assertThat(lamps.read("memory 10010110, bus 00000000", MODULE)).isEqualTo(plain);
    assertThat(lamps.read("1001 0110 0000 0000", MODULE)).isEqualTo(plain);
    Wanted.Round round = new Wanted.Round(List.of(ONE_POINT, OTHER_POINT));
    assertThat(round.read("0,2 V 300 mV", MODULE)).isEqualTo(round.read("0.2 0.3", MODULE));
  }

  @Test
  void okIsAnAnswerWhereOnePictureIsExpectedAndOnlyLampsThatDifferNeedBeTyped() {
    Sitting sitting = Sitting.unrecorded(WORKBENCH);
    sitting.answer("ok");
    assertThat(lastLamps(sitting))
        .as("what may be either was not looked at")
        .isEqualTo(entry("see memory -------- bus 00000000"));
    sitting.answer("ok");
    assertThat(lastLamps(sitting)).isEqualTo(entry("see memory 10010110"));
    sitting.undo();
    assertThatThrownBy(() -> sitting.answer("but B3"))
        .hasMessageStartingWith("the step asks for no lamp B3");
    sitting.answer("ok but R3 dim, R0");
    assertThat(lastLamps(sitting)).isEqualTo(entry("see memory 1001d111"));
  }

  @Test
  void okIsNoAnswerWhereSuspectsExpectDifferentPictures() {
    Wanted.Lamps look = new Wanted.Lamps(List.of("memory"));
    List<String> both = List.of("memory 10010110", "memory 00000000");
    assertThatThrownBy(() -> look.read("ok", MODULE, both))
        .hasMessageStartingWith("no one picture is expected here");
    assertThatThrownBy(() -> look.read("but R3", MODULE, List.of("memory 1001?110")))
        .hasMessage("R3 may be either; say which, such as R3 lit");
  }

  @ParameterizedTest
  @ValueSource(strings = {"10010110", "0x96", "0X96", "=150", "memory 0x96", "1001 0110"})
  void aValueMayBeWrittenInBinaryHexOrDecimal(String value) {
    assertThat(new Wanted.Lamps(List.of("memory")).read(value, MODULE))
        .containsExactly(entry("see memory 10010110"));
    assertThatThrownBy(() -> entry("set address =16"))
        .hasMessage("set: address has 4 places, for 0 to 15, got =16");
  }

  private static Entry lastLamps(Sitting sitting) {
    List<Entry> entries =
        sitting.log().standing().stream().map(straywire.module.BenchLog.Line::entry).toList();
    return entries.get(entries.size() - 1);
  }

  private static Entry.Finding finding(Sitting sitting) {
    List<Entry> entries =
        sitting.log().standing().stream().map(straywire.module.BenchLog.Line::entry).toList();
    return (Entry.Finding) entries.get(entries.size() - 1);
  }

  @Test
  void theRoundsThatConfirmARepairWouldShowTheFaultIfItWereStillThere() {
    for (String id :
        List.of(
            "jumper-missing U1.3-U2.3",
            "jumper-missing drive-U5.19",
            "inverter-bypassed U4.3-U4.4")) {
      Hypothesis fault = WORKBENCH.hypothesis(id).orElseThrow();
      Sitting sitting = Sitting.unrecorded(WORKBENCH);
      sitting.enter(entry("repaired " + id));
      SimulatedHand hand = new SimulatedHand(WORKBENCH, fault, 2);
      while (sitting.now().stage() == Stage.CONFIRMING) {
        sitting.answer(hand.read(sitting.now().next().orElseThrow()));
      }
      assertThat(sitting.now().stage()).as(id).isNotEqualTo(Stage.CONFIRMED);
    }
  }

  @Test
  void stepsAreSaidInWords() {
    Sitting sitting = Sitting.unrecorded(WORKBENCH);
    StepWords words = new StepWords(MODULE);
    assertThat(words.line(sitting.now().next().orElseThrow(), sitting.now().controls()))
        .isEqualTo("power on, set address 0000 data 00000000 drive high, look at memory and bus");
    assertThat(words.reading(new Wanted.Volts(new straywire.module.Labels(MODULE).point("U1.3"))))
        .isEqualTo("measure the leg of U1 pin 3 (/WE, left row, third from the notch)");
  }

  @Test
  void aJournalIsABenchLogLikeAnyOther() throws IOException {
    Path file = folder.resolve("journal.jsonl");
    try (Sitting sitting = journaled(file)) {
      sitting.answer("01100101 00000000");
    }
    assertThat(LogFile.read(file, MODULE).lines()).hasSize(3);
  }
}
