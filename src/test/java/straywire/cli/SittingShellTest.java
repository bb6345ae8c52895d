package straywire.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.BufferedReader;
import java.io.IOException;
import java.io.PrintWriter;
import java.io.StringReader;
import java.io.StringWriter;
import java.nio.file.Path;
import java.util.List;
import java.util.Random;
import java.util.stream.Collectors;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import straywire.advice.RuleBase;
import straywire.casebook.Workbench;
import straywire.faults.Hypothesis;
import straywire.module.Entry;
import straywire.module.EntryWords;
import straywire.module.ModuleFile;
import straywire.parts.ShippedParts;
import straywire.sitting.SimulatedHand;
import straywire.sitting.Sitting;
import straywire.sitting.Situation.Stage;

class SittingShellTest {
  private static final Workbench WORKBENCH =
      new Workbench(
          ModuleFile.readShipped(
              Path.of("cases", "beat-memory", "module.yaml"), new ShippedParts()),
          RuleBase.shipped());

  private final Sitting sitting = Sitting.unrecorded(WORKBENCH);
  private final StringWriter said = new StringWriter();
  private final SittingShell shell =
      new SittingShell(sitting, new PrintWriter(said), Glyphs.LETTERS);

  private String say(String... lines) {
    said.getBuffer().setLength(0);
    for (String line : lines) {
      shell.take(line);
    }
    return said.toString().replace(System.lineSeparator(), "\n");
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      quoteCharacter = '`',
      textBlock =
          """
          mesure U1.3 0.2 | nothing is called mesure; nearest is measure
          set adress 0001 | set: no switch or word of them is labelled adress; nearest is address
          set address 01 | set: address has 4 places, high bit first (A3 A2 A1 A0), got 2 in "01"
          measure U1.3 row | measure: missing: volts
          measure U1.17 0.2 | measure: U1 (74x189) has no pin 17; its pins are 1 to 16
          press drive | press: drive is a switch; set it high or low
          see memory 2222 | see: memory has 8 places, high bit first (R7 R6 R5 R4 R3 R2 R1 R0), got 4 in "2222"
          inspect jumper U1.3 ok | inspect: no jumper is U1.3; known are A0-U1.1, A1-U1.15, A2-U1.14, A3-U1.13, B0-BUS0, B1-BUS1, B2-BUS2, B3-BUS3 and 68 more
          10010 | see: memory has 8 places, high bit first (R7 R6 R5 R4 R3 R2 R1 R0), got 5 in "10010"
          withdraw 7 | there is no entry 7 so far
          undo | there is nothing to undo
          finish | the by-hand exercise is not through; go on, or write the finding yourself: finding IDS : WORDS
          repaired 3 | nothing is suspected now; say what you did: repaired WORDS
          show U9 | no part is labelled U9; nearest is U1
          """)
  void whatIsWrongIsSaidInOneLine(String line, String message) {
    assertThat(say(line)).isEqualTo("  " + message + "\n");
    assertThat(sitting.log().lines()).isEmpty();
  }

  private List<String> standing() {
    EntryWords words = new EntryWords(WORKBENCH.module());
    return sitting.log().standing().stream().map(line -> words.print(line.entry())).toList();
  }

  @Test
  void freeWordsAreShownBackAsAnEntryThatCanBeUndone() {
    assertThat(say("bus never releases"))
        .contains("Heard: bus: the bus is never released. undo takes it back.\n")
        .contains("  1  symptom bus-never-releases bus yes\n");
    say("undo");
    assertThat(sitting.log().standing()).isEmpty();
  }

  @Test
  void whatMayMeanSeveralThingsIsPickedByNumber() {
    assertThat(say("bits are reversed"))
        .startsWith("That may mean one of these; type its number:\n")
        .contains("    2  one half of the word is reversed\n");
    assertThat(sitting.log().lines()).isEmpty();
    assertThat(say("7")).isEqualTo("  expected a number from 1 to 2, got 7\n");
    say("2");
    assertThat(standing()).containsExactly("symptom reversed-nibble yes");
  }

  @Test
  void twoThingsInOneLineAreUndoneTogether() {
    say("the bus never releases, and U2 is hot");
    assertThat(standing())
        .containsExactly("symptom bus-never-releases bus yes", "symptom chip-warm U2 yes");
    say("undo");
    assertThat(standing()).isEmpty();
  }

  @Test
  void signsOfDangerAreHeardInALineOfAnyKind() {
    assertThat(say("note there was smoke from U1")).contains("STOP: Disconnect the supply");
    assertThat(standing()).containsExactly("note there was smoke from U1", "symptom smell U1 yes");
    say("why is U2 hot");
    assertThat(standing()).contains("symptom chip-warm U2 yes");
  }

  @Test
  void anEntryGoneWrongIsNeverTakenForASymptom() {
    assertThat(say("press does nothing"))
        .startsWith("  press: no button is labelled does")
        .contains("Or it means this; type its number:\n")
        .contains("    1  the word stays as it was when written\n");
    assertThat(sitting.log().lines()).isEmpty();
  }

  @Test
  void wordsThatMeanNothingSayWhereToLook() {
    assertThat(say("frobnicate the zither now"))
        .endsWith("; symptoms lists what can be reported\n");
    assertThat(sitting.log().lines()).isEmpty();
  }

  @Test
  void aSittingOpensWithAQuestionThatNeedNotBeAnswered() {
    said.getBuffer().setLength(0);
    shell.greet();
    assertThat(said.toString()).contains("What do you notice?").contains("nothing yet, guide me");
    assertThat(say("nothing yet, guide me")).isEqualTo(say("next"));
  }

  @Test
  void symptomsThatMakeSenseHereArePickedByNumber() {
    String list = say("symptoms");
    assertThat(list).contains("    1  all lamps are dark\n").doesNotContain("counts backwards");
    say("1");
    assertThat(standing()).containsExactly("symptom all-zeros yes");
  }

  @Test
  void aLampWordAnswersALampStep() {
    String shown = say("01100101 00000000");
    assertThat(shown)
        .contains("  1  power on\n")
        .contains("  3  see memory 01100101 bus 00000000\n")
        .contains("  memory     seen       .  #  #  .  .  #  .  #\n")
        .contains("                        R7 R6 R5 R4 R3 R2 R1 R0\n")
        .contains("expect memory 10010110");
  }

  /** A lamp word for lamps, volts for the meter, one word for all else. */
  private static String shortly(Entry reading) {
    String typed = new EntryWords(WORKBENCH.module()).print(reading);
    return reading instanceof Entry.Seen
        ? typed.substring("see ".length())
        : typed.substring(typed.lastIndexOf(' ') + 1);
  }

  @Test
  void aShortAnswerToEachStepLeadsToTheRepair() {
    Hypothesis fault = WORKBENCH.hypothesis("jumper-missing U1.3-U2.3").orElseThrow();
    SimulatedHand hand = new SimulatedHand(WORKBENCH, fault, 4);
    boolean metered = false;
    String shown = "";
    while (sitting.now().stage() != Stage.REPAIRING) {
      List<Entry> readings = hand.read(sitting.now().next().orElseThrow());
      metered |= readings.get(0) instanceof Entry.Measured;
      shown =
          say(readings.stream().map(SittingShellTest::shortly).collect(Collectors.joining(" ")));
    }
    assertThat(metered).as("a bare number was an answer").isTrue();
    assertThat(shown).contains("Beyond doubt:").contains("Then type repaired");
    assertThat(say("repaired"))
        .contains("power on\n")
        .contains("expect memory ")
        .doesNotContain("STOP");
    assertThat(sitting.now().stage()).isEqualTo(Stage.CONFIRMING);
  }

  @Test
  void aQuestionMarkPassesOver() {
    String shown = say("?");
    assertThat(shown).contains("note passed over: power on, set address 0000");
    assertThat(say("undo")).contains("taken back:").contains("    1  ");
  }

  @Test
  void helpShowsFiveExampleLines() {
    List<String> lines = say("help").lines().toList();
    assertThat(lines.get(0)).endsWith("Five examples:");
    for (String example : lines.subList(1, 6)) {
      assertThat(example).startsWith("    ");
      say("undo");
      assertThat(say(example.strip())).as(example).contains(example.strip().split(" ")[0]);
    }
    assertThat(sitting.log().lines()).isNotEmpty();
  }

  @Test
  void wordsPinsAndControlsAreCompleted() {
    assertThat(shell.completions(List.of("me"))).containsExactly("measure");
    assertThat(shell.completions(List.of("le"))).containsExactly("levels");
    assertThat(shell.completions(List.of("measure", "U1.1")))
        .containsExactly("U1.1", "U1.10", "U1.11", "U1.12", "U1.13", "U1.14", "U1.15", "U1.16");
    assertThat(shell.completions(List.of("set", "dr"))).containsExactly("drive");
    assertThat(shell.completions(List.of("levels", "drive", ""))).containsExactly("high", "low");
    assertThat(shell.completions(List.of("show", "U")))
        .containsExactly("U1", "U2", "U3", "U4", "U5");
  }

  @Test
  void everyWordOfTheShellDoesSomething() {
    for (String word : SittingShell.WORDS) {
      if (!word.equals("quit")) {
        assertThat(say(word)).as(word).doesNotContain("nothing is called");
      }
    }
    assertThat(shell.over()).isFalse();
    say("quit");
    assertThat(shell.over()).isTrue();
  }

  @Test
  void aPipedSittingReadsAsAProtocol() throws IOException {
    StringWriter out = new StringWriter();
    BufferedReader in = new BufferedReader(new StringReader("power on\nquit\nnever read\n"));
    SitCommand.run(sitting, in, new PrintWriter(out));
    assertThat(out.toString())
        .startsWith("Beat memory of the chime player. Type help for help.")
        .contains("> power on")
        .contains("> quit")
        .doesNotContain("never read");
  }

  @Test
  void severalLooksFitOneLineUntilSomethingDiffers() {
    say("ok; ok; ok");
    assertThat(sitting.log().lines()).hasSize(9);
    String said = say("ok; but R3; ok");
    assertThat(said).contains("took 2 of 3 answers: the next step is another one now");
    assertThat(sitting.now().stage()).isEqualTo(Stage.SEARCHING);
  }

  @ParameterizedTest
  @ValueSource(longs = {1, 2, 3})
  void everyAnswerOfASittingFitsAScreenOfTwentyFourLines(long seed) {
    List<Hypothesis> faults = WORKBENCH.hypotheses();
    Hypothesis fault = faults.get(new Random(seed).nextInt(faults.size() - 1) + 1);
    SimulatedHand hand = new SimulatedHand(WORKBENCH, fault, seed);
    StringWriter out = new StringWriter();
    SittingShell small = new SittingShell(sitting, new PrintWriter(out), Glyphs.LETTERS, 80, 24);
    small.greet();
    for (int step = 0; step < 20 && sitting.now().next().isPresent(); step++) {
      String shown = out.toString();
      assertThat(shown.lines().count()).as(fault.id() + "\n" + shown).isLessThanOrEqualTo(23);
      assertThat(shown.lines()).allMatch(line -> line.length() <= 80);
      assertThat(shown).as(fault.id()).containsAnyOf("Next (", "STOP: ");
      out.getBuffer().setLength(0);
      sitting.answer(hand.read(sitting.now().next().orElseThrow()));
      small.take("symptom all-zeros memory unknown");
    }
  }
}
