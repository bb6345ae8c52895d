package straywire.cli;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import com.fasterxml.jackson.databind.JsonNode;
import java.io.PrintWriter;
import java.io.StringWriter;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import straywire.advice.Caution;
import straywire.advice.RuleBase;
import straywire.casebook.Workbench;
import straywire.format.BadEntry;
import straywire.module.Entry;
import straywire.module.Module;
import straywire.module.ModuleFile;
import straywire.parts.ShippedParts;
import straywire.sitting.Proposed;
import straywire.sitting.SimulatedHand;
import straywire.sitting.Sitting;
import straywire.sitting.SituationJson;

/** An urgent caution is the next step in every front end, whatever is entered, until answered. */
class StandingCautionTest {
  private static final Workbench WORKBENCH =
      new Workbench(
          ModuleFile.readShipped(
              Path.of("cases", "beat-memory", "module.yaml"), new ShippedParts()),
          RuleBase.shipped());
  private static final Module MODULE = WORKBENCH.module();

  private static final List<String> SIGNS =
      List.of(
          "symptom smell",
          "symptom smell U3",
          "symptom supply-limited",
          "measure U1.16 6.5",
          "measure U2.16 -4.9",
          "note smoke comes out of it");

  /** What a hand may well enter with a caution before its eyes; none of it is an answer. */
  private static final List<String> NO_ANSWERS =
      List.of(
          "set address 0001",
          "set data 10100000 drive low",
          "press write",
          "see memory 11111111",
          "see memory 00000000 bus 00000000",
          "measure U5.20 4.9",
          "inspect jumper U1.3-U2.3 ok",
          "power on",
          "symptom all-zeros memory",
          "note the lamp is green");

  private final StringWriter out = new StringWriter();
  private Sitting sitting = Sitting.unrecorded(WORKBENCH);
  private SittingShell shell = shell();

  private SittingShell shell() {
    return new SittingShell(sitting, new PrintWriter(out, true), Glyphs.LETTERS, 80, 24);
  }

  /** What the shell says to a line. */
  private String said(String line) {
    out.getBuffer().setLength(0);
    shell.take(line);
    return out.toString();
  }

  private void assertStands(String said, String after) {
    Caution caution = sitting.now().caution().orElseThrow(() -> new AssertionError(after));
    JsonNode next = new SituationJson(MODULE).of(sitting.now(), sitting.log()).get("next");
    assertThat(sitting.now().next().orElseThrow().purpose())
        .as(after)
        .isEqualTo(Proposed.Purpose.CAUTION);
    assertThat(next.get("purpose").asText()).as(after).isEqualTo("caution");
    assertThat(next.get("caution").get("text").asText()).as(after).isEqualTo(caution.text());
    assertThat(next.get("read").has("inspected")).as(after).isTrue();
    String last = said.substring(Math.max(0, said.lastIndexOf("STOP: ")));
    assertThat(last).as(after).startsWith("STOP: ").contains("look over", "accept");
    assertThat(last).as(after).doesNotContain("Next (", "Caution: ", "Repair:", "Undecided");
  }

  @ParameterizedTest
  @ValueSource(longs = {1, 2, 3, 4})
  void nothingThatIsNoAnswerMovesACaution(long seed) {
    Random random = new Random(seed);
    for (String sign : SIGNS) {
      sitting = Sitting.unrecorded(WORKBENCH);
      shell = shell();
      said("power on");
      List<String> done = new ArrayList<>(List.of(sign));
      assertStands(said(sign), sign);
      for (int i = 0; i < 3; i++) {
        String entry = NO_ANSWERS.get(random.nextInt(NO_ANSWERS.size()));
        done.add(entry);
        assertStands(said(entry), "seed " + seed + ": " + done);
      }
      assertThat(said("?")).contains("nothing is passed over while a caution stands");
      assertThatThrownBy(sitting::finish).isInstanceOf(BadEntry.class);
      answer(random.nextInt(3), "seed " + seed + ": " + done);
    }
  }

  private void answer(int way, String after) {
    for (int i = 0; i < 4 && sitting.now().caution().isPresent(); i++) {
      switch (way) {
        case 0 -> said("I accept it");
        case 1 -> said("ok");
        default -> {
          assertStands(said("power off"), after + ", power off");
          said("ok");
        }
      }
    }
    assertThat(sitting.now().caution()).as(after + ", answered in way " + way).isEmpty();
    assertThat(sitting.now().next().map(Proposed::purpose))
        .as(after)
        .isNotEqualTo(Optional.of(Proposed.Purpose.CAUTION));
  }

  @ParameterizedTest
  @ValueSource(strings = {"supply-reversed", "turned U1", "rails-joined"})
  void anUrgentCautionOfTheRankingIsTheNextStepAsSoonAsItIsSaid(String fault) {
    SimulatedHand hand = new SimulatedHand(WORKBENCH, WORKBENCH.hypothesis(fault).orElseThrow(), 4);
    boolean urgent = false;
    for (int step = 0; step < 12 && !urgent && sitting.now().next().isPresent(); step++) {
      sitting.answer(hand.read(sitting.now().next().orElseThrow()));
      urgent = sitting.now().advice().cautions().stream().anyMatch(Caution::urgent);
    }
    assertThat(urgent).as("cautioned of " + fault).isTrue();
    if (sitting.now().controls().power()) {
      assertStands(said("next"), fault);
      assertThat(sitting.now().next().orElseThrow().before()).contains(new Entry.Power(false));
    }
  }

  @Test
  void anAcceptedCautionIsInTheLogAndANewSignRaisesItAgain() {
    said("power on");
    said("symptom smell");
    said("accept");
    assertThat(said("log")).contains("note accepted: SAFE-07");
    assertThat(sitting.now().caution()).isEmpty();
    assertThat(said("accept")).contains("no caution stands that could be accepted");
    assertStands(said("symptom smell"), "smelt again");
    said("undo");
    assertThat(sitting.now().caution()).isEmpty();
  }

  @Test
  void theSupplyIsToBeCheckedOnTheFirstScreenBeforeAnythingIsPowered() {
    shell.greet();
    assertThat(out.toString().replaceAll("\\s+", " "))
        .contains("Caution: Before the first power-on", "plus to plus", "250 mA");
    assertThat(said("power on")).doesNotContain("Before the first power-on");
  }

  @Test
  void aRepairWithThePowerOffAnswersTheCautionByItself() {
    said("power on");
    said("symptom smell U3");
    said("repaired put another chip in place of U3");
    assertThat(sitting.now().caution()).isEmpty();
  }
}
