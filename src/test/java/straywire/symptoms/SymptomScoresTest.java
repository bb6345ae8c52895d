package straywire.symptoms;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;
import static straywire.symptoms.SymptomBench.BEAT_MEMORY;
import static straywire.symptoms.SymptomBench.fault;
import static straywire.symptoms.SymptomBench.joined;
import static straywire.symptoms.SymptomBench.missing;
import static straywire.symptoms.SymptomBench.moved;
import static straywire.symptoms.SymptomBench.open;
import static straywire.symptoms.SymptomBench.scores;
import static straywire.symptoms.SymptomBench.shortedTo;
import static straywire.symptoms.SymptomBench.sound;

import java.util.ArrayList;
import java.util.List;
import java.util.TreeSet;
import java.util.stream.Stream;
import org.junit.jupiter.api.DynamicTest;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestFactory;
import straywire.faults.ChipEdit;
import straywire.faults.Edit;
import straywire.faults.Hypothesis;
import straywire.faults.SupplyEdit;
import straywire.faults.VariationOf;
import straywire.faults.WireEdit;
import straywire.module.Entry;
import straywire.sim.Boards;
import straywire.sim.Wiring;

class SymptomScoresTest {
  private static final SymptomScores SCORES = scores(BEAT_MEMORY);

  private static final List<Edit> WRITE_OPEN = List.of(missing("write-U1.3"));
  private static final List<Edit> HIGH_SELECT_OPEN = List.of(missing("GND-U1.2"));
  private static final List<Edit> A0_OPEN = List.of(missing("A0-U1.1"));
  private static final List<Edit> ONE_PAST_INVERTER = List.of(moved("U3.8-U5.9", "U3.8", "U3.9"));
  private static final List<Edit> PLAIN_HIGH_RAM =
      List.of(new ChipEdit.PartReplaced("U1", "74x219", "LS"));
  private static final List<Edit> BOTH_PLAIN_RAMS =
      List.of(
          new ChipEdit.PartReplaced("U1", "74x219", "LS"),
          new ChipEdit.PartReplaced("U2", "74x219", "LS"));
  private static final List<Edit> HIGH_REVERSED =
      List.of(
          moved("D7-U1.12", "U1.12", "U1.4"),
          moved("D6-U1.10", "U1.10", "U1.6"),
          moved("D5-U1.6", "U1.6", "U1.10"),
          moved("D4-U1.4", "U1.4", "U1.12"));
  private static final List<Edit> ALL_REVERSED =
      List.of(
          moved("D7-U1.12", "U1.12", "U2.4"),
          moved("D6-U1.10", "U1.10", "U2.6"),
          moved("D5-U1.6", "U1.6", "U2.10"),
          moved("D4-U1.4", "U1.4", "U2.12"),
          moved("D3-U2.12", "U2.12", "U1.4"),
          moved("D2-U2.10", "U2.10", "U1.6"),
          moved("D1-U2.6", "U2.6", "U1.10"),
          moved("D0-U2.4", "U2.4", "U1.12"));
  private static final List<Edit> TWO_SWAPPED =
      List.of(moved("D7-U1.12", "U1.12", "U1.10"), moved("D6-U1.10", "U1.10", "U1.12"));
  private static final List<Edit> TWO_BRIDGED = List.of(joined("U5.2", "U5.3"));
  private static final List<Edit> LOW_INVERTER_INPUT_OPEN = List.of(open("U4.1"));
  private static final List<Edit> BUFFER_INPUT_OPEN = List.of(open("U5.9"));
  private static final List<Edit> ENABLE_OPEN = List.of(missing("drive-U5.19"));
  private static final List<Edit> ENABLE_LOW = List.of(shortedTo("GND", "U5.19"));
  private static final List<Edit> DIRECTION_LOW =
      List.of(
          new WireEdit.JumperRemoved(SymptomBench.jumper(BEAT_MEMORY, "VCC-U5.1")),
          shortedTo("GND", "U5.1"));
  private static final List<Edit> WRITE_HELD_LOW = List.of(shortedTo("GND", "U1.3"));
  private static final List<Edit> WRITES_WITH_D4 = List.of(joined("U1.3", "U1.4"));
  private static final List<Edit> INVERTER_ON_ITSELF = List.of(joined("U3.3", "U3.4"));
  private static final List<Edit> REVERSED_SUPPLY = List.of(new SupplyEdit.SupplyReversed());
  private static final List<Edit> A0_OPEN_AT_LOW_RAM = List.of(open("U2.1"));
  private static final List<Edit> WRITE_OPEN_AT_LOW_RAM = List.of(open("U2.3"));
  private static final List<Edit> ADDRESSES_SWAPPED =
      List.of(moved("A0-U1.1", "U1.1", "U1.15"), moved("A1-U1.15", "U1.15", "U1.1"));
  private static final List<Edit> UNLISTED = List.of(new ChipEdit.PartUnlisted("U1"));

  /** How likely a yes must be. */
  private enum Yes {
    SURE,
    EITHER,
    SELDOM
  }

  /** The symptom, the place, how often a yes with the fault. */
  private record Row(List<Edit> edits, String symptom, String place, Yes yes) {}

  private static final List<Row> ROWS =
      List.of(
          new Row(WRITE_HELD_LOW, "all-zeros", "memory", Yes.SURE),
          new Row(REVERSED_SUPPLY, "all-zeros", "bus", Yes.SURE),
          new Row(HIGH_SELECT_OPEN, "all-zeros", "memory", Yes.SELDOM),
          new Row(List.of(), "all-zeros", "memory", Yes.SELDOM),
          new Row(HIGH_SELECT_OPEN, "half-dead", "memory", Yes.SURE),
          new Row(HIGH_SELECT_OPEN, "half-dead", "bus", Yes.SURE),
          new Row(WRITE_OPEN_AT_LOW_RAM, "half-dead", "memory", Yes.SELDOM),
          new Row(List.of(), "random-at-power-up", "memory", Yes.SURE),
          new Row(WRITE_OPEN, "random-at-power-up", "memory", Yes.SURE),
          new Row(WRITE_HELD_LOW, "random-at-power-up", "memory", Yes.SELDOM),
          new Row(List.of(), "changes-each-power-up", "memory", Yes.EITHER),
          new Row(REVERSED_SUPPLY, "changes-each-power-up", "memory", Yes.SELDOM),
          new Row(INVERTER_ON_ITSELF, "changes-untouched", "memory", Yes.EITHER),
          new Row(UNLISTED, "changes-untouched", "memory", Yes.EITHER),
          new Row(WRITE_OPEN, "changes-untouched", "memory", Yes.SELDOM),
          new Row(WRITE_OPEN, "never-changes-on-write", "memory", Yes.SURE),
          new Row(WRITE_OPEN_AT_LOW_RAM, "never-changes-on-write", "memory", Yes.EITHER),
          new Row(A0_OPEN, "never-changes-on-write", "memory", Yes.SELDOM),
          new Row(WRITES_WITH_D4, "writes-unasked", "memory", Yes.SURE),
          new Row(WRITE_OPEN, "writes-unasked", "memory", Yes.SELDOM),
          new Row(WRITE_OPEN, "writes-elsewhere", "memory", Yes.SELDOM),
          new Row(ADDRESSES_SWAPPED, "writes-elsewhere", "memory", Yes.SELDOM),
          new Row(A0_OPEN, "addresses-share", "memory", Yes.SURE),
          new Row(A0_OPEN_AT_LOW_RAM, "addresses-share", "memory", Yes.EITHER),
          new Row(WRITE_OPEN, "addresses-share", "memory", Yes.SELDOM),
          new Row(WRITE_HELD_LOW, "addresses-share", "memory", Yes.SELDOM),
          new Row(LOW_INVERTER_INPUT_OPEN, "bit-stuck-low", "memory", Yes.SURE),
          new Row(LOW_INVERTER_INPUT_OPEN, "bit-stuck-low", "R0", Yes.SURE),
          new Row(LOW_INVERTER_INPUT_OPEN, "bit-stuck-low", "R1", Yes.SELDOM),
          new Row(HIGH_SELECT_OPEN, "bit-stuck-low", "memory", Yes.EITHER),
          new Row(BUFFER_INPUT_OPEN, "bit-stuck-high", "bus", Yes.SURE),
          new Row(BUFFER_INPUT_OPEN, "bit-stuck-high", "B7", Yes.SURE),
          new Row(BUFFER_INPUT_OPEN, "bit-stuck-high", "memory", Yes.SELDOM),
          new Row(BOTH_PLAIN_RAMS, "complemented-all", "memory", Yes.SURE),
          new Row(PLAIN_HIGH_RAM, "complemented-all", "memory", Yes.SELDOM),
          new Row(PLAIN_HIGH_RAM, "complemented-nibble", "memory", Yes.SURE),
          new Row(ONE_PAST_INVERTER, "complemented-nibble", "memory", Yes.SELDOM),
          new Row(ONE_PAST_INVERTER, "complemented-one", "memory", Yes.SURE),
          new Row(ONE_PAST_INVERTER, "complemented-one", "R7", Yes.SURE),
          new Row(ONE_PAST_INVERTER, "complemented-one", "R6", Yes.SELDOM),
          new Row(PLAIN_HIGH_RAM, "complemented-one", "memory", Yes.SELDOM),
          new Row(ALL_REVERSED, "reversed-all", "memory", Yes.SURE),
          new Row(ALL_REVERSED, "writes-elsewhere", "memory", Yes.SELDOM),
          new Row(HIGH_REVERSED, "reversed-all", "memory", Yes.SELDOM),
          new Row(HIGH_REVERSED, "reversed-nibble", "memory", Yes.SURE),
          new Row(HIGH_REVERSED, "two-swapped", "memory", Yes.SELDOM),
          new Row(TWO_SWAPPED, "two-swapped", "memory", Yes.SURE),
          new Row(TWO_SWAPPED, "two-swapped", "R7", Yes.SURE),
          new Row(TWO_SWAPPED, "two-swapped", "R0", Yes.SELDOM),
          new Row(TWO_BRIDGED, "two-swapped", "memory", Yes.SELDOM),
          new Row(TWO_BRIDGED, "two-equal", "memory", Yes.SURE),
          new Row(TWO_BRIDGED, "two-equal", "R1", Yes.SURE),
          new Row(TWO_SWAPPED, "two-equal", "memory", Yes.SELDOM),
          new Row(ENABLE_OPEN, "bus-never-drives", "bus", Yes.SURE),
          new Row(ENABLE_LOW, "bus-never-drives", "bus", Yes.SELDOM),
          new Row(ENABLE_LOW, "bus-never-releases", "bus", Yes.SURE),
          new Row(ENABLE_OPEN, "bus-never-releases", "bus", Yes.SELDOM),
          new Row(DIRECTION_LOW, "bus-fights", "bus", Yes.EITHER),
          new Row(ENABLE_OPEN, "bus-fights", "bus", Yes.SELDOM));

  @TestFactory
  Stream<DynamicTest> aFaultShowsItsSymptomAndNoOther() {
    return ROWS.stream()
        .map(
            row ->
                DynamicTest.dynamicTest(
                    row.symptom() + " at " + row.place() + " with " + words(row.edits()),
                    () -> {
                      Hypothesis fault = fault(row.edits().toString(), row.edits());
                      double yes = SCORES.yes(List.of(fault), row.symptom(), row.place())[0];
                      switch (row.yes()) {
                        case SURE -> assertThat(yes).isGreaterThan(0.85);
                        case EITHER -> assertThat(yes).isBetween(0.2, 0.85);
                        case SELDOM -> assertThat(yes).isLessThan(0.15);
                      }
                    }));
  }

  private static String words(List<Edit> edits) {
    return edits.isEmpty() ? "nothing wrong" : edits.get(0).words(BEAT_MEMORY);
  }

  @Test
  void theSoundModuleSaysNoToEveryQuestionButThoseAboutPowerUp() {
    for (SymptomQuestion question : SCORES.questions()) {
      double yes = SCORES.yes(List.of(sound()), question.symptom(), question.place())[0];
      if (question.symptom().endsWith("power-up")) {
        assertThat(yes).as(question.symptom()).isGreaterThan(0.2);
      } else {
        assertThat(yes).as(question.symptom()).isEqualTo(0.02, within(1e-6));
      }
    }
  }

  @Test
  void everyComputedSymptomButThoseOfCountingAndReckoningIsAskedOfTheDemoModule() {
    TreeSet<String> asked = new TreeSet<>();
    SCORES.questions().forEach(question -> asked.add(question.symptom()));
    List<String> computed = new ArrayList<>();
    for (SymptomPredicate predicate : SymptomPredicate.values()) {
      if (predicate.compareTo(SymptomPredicate.BUS_FIGHTS) <= 0) {
        computed.add(predicate.id());
      }
    }
    computed.add(SymptomPredicate.FROZEN.id());
    assertThat(asked).containsExactlyInAnyOrderElementsOf(computed);
    assertThat(SCORES.questions())
        .filteredOn(question -> question.symptom().startsWith("bus-"))
        .allMatch(question -> question.place().equals("bus"));
  }

  @Test
  void theSameSeedGivesTheSameScores() {
    List<Hypothesis> faults = List.of(sound(), fault("a", A0_OPEN), fault("u", UNLISTED));
    SymptomScores again = scores(BEAT_MEMORY);
    again.yes(List.of(fault("first", WRITE_OPEN)), "all-zeros", "memory");
    for (SymptomQuestion question : SCORES.questions()) {
      assertThat(again.yes(faults, question.symptom(), question.place()))
          .as(question.symptom())
          .isEqualTo(SCORES.yes(faults, question.symptom(), question.place()));
    }
  }

  @Test
  void lanesOfOneBoardDoNotInfluenceEachOther() {
    List<Hypothesis> many = new ArrayList<>();
    for (Row row : ROWS) {
      many.add(fault("lane " + many.size(), row.edits()));
    }
    many.addAll(many.subList(0, 20));
    Wiring wiring = new Wiring(BEAT_MEMORY);
    VariationOf compiler = new VariationOf(wiring);
    Boards boards = new Boards(wiring, many.stream().map(compiler::compile).toList());
    assertThat(boards.groups()).isGreaterThan(1);
    SymptomScores fresh = scores(BEAT_MEMORY);
    for (String symptom : List.of("two-equal", "changes-each-power-up", "addresses-share")) {
      double[] together = fresh.yes(boards, symptom, "memory");
      for (int lane = 0; lane < many.size(); lane += 7) {
        Hypothesis alone = fault("alone " + lane, many.get(lane).edits());
        assertThat(together[lane]).isEqualTo(SCORES.yes(List.of(alone), symptom, "memory")[0]);
      }
    }
  }

  @Test
  void anAnswerWeighsAsItsProbability() {
    Wiring wiring = new Wiring(BEAT_MEMORY);
    VariationOf compiler = new VariationOf(wiring);
    Boards boards =
        new Boards(
            wiring, List.of(compiler.compile(sound()), compiler.compile(fault("w", WRITE_OPEN))));
    String symptom = "never-changes-on-write";
    assertThat(SCORES.logWeights(boards, symptom, "memory", Entry.Answer.YES))
        .containsExactly(new double[] {Math.log(0.02), Math.log(0.98)}, within(1e-5));
    assertThat(SCORES.logWeights(boards, symptom, "memory", Entry.Answer.NO))
        .containsExactly(new double[] {Math.log(0.98), Math.log(0.02)}, within(1e-5));
    assertThat(SCORES.logWeights(boards, symptom, "memory", Entry.Answer.UNKNOWN))
        .containsExactly(0, 0);
  }

  @Test
  void weightsAreTheSamePreparedOrNot() {
    Entry.Symptom entry =
        new Entry.Symptom("complemented-one", "R7", Entry.Answer.YES, List.of(), true);
    Hypothesis bypassed = fault("bypassed", ONE_PAST_INVERTER);
    SymptomWeights prepared = SCORES.weights(entry);
    prepared.prepare(List.of(sound(), bypassed));
    SymptomWeights alone = scores(BEAT_MEMORY).weights(entry);
    assertThat(prepared.applyAsDouble(bypassed)).isEqualTo(alone.applyAsDouble(bypassed));
    assertThat(prepared.applyAsDouble(bypassed)).isEqualTo(Math.log(0.98), within(1e-5));
    assertThat(prepared.applyAsDouble(sound())).isEqualTo(Math.log(0.02), within(1e-5));
  }

  @Test
  void anAnswerAboutLoggedEntriesHasNoWeightAndForgetsNothing() {
    Entry.Symptom entry = new Entry.Symptom("all-zeros", "memory", Entry.Answer.YES, List.of(3));
    assertThat(SCORES.weights(entry).applyAsDouble(sound())).isZero();
    assertThat(SymptomScores.leavesMemoryUnknown(entry)).isFalse();
  }

  @Test
  void onlyAnAnswerAboutWorkNotLoggedLeavesTheMemoryUnknown() {
    assertThat(forgets("all-zeros", Entry.Answer.YES)).isTrue();
    assertThat(forgets("all-zeros", Entry.Answer.NO)).isTrue();
    assertThat(forgets("all-zeros", Entry.Answer.UNKNOWN)).isFalse();
    assertThat(forgets("chip-warm", Entry.Answer.YES)).isFalse();
    assertThat(SymptomScores.leavesMemoryUnknown(new Entry.Press("write"))).isFalse();
  }

  private static boolean forgets(String symptom, Entry.Answer answer) {
    return SymptomScores.leavesMemoryUnknown(
        new Entry.Symptom(symptom, "memory", answer, List.of()));
  }

  @Test
  void withNoPlaceAnyWordWillDo() {
    Hypothesis open = fault("buffer", BUFFER_INPUT_OPEN);
    assertThat(SCORES.yes(List.of(open), "bit-stuck-high", "")[0]).isGreaterThan(0.9);
    assertThat(SCORES.yes(List.of(open), "bit-stuck-high", "U5")[0]).isGreaterThan(0.9);
  }

  @Test
  void whatMakesNoSenseAtAPlaceSaysNothing() {
    assertThat(SCORES.offers("bus-fights", "bus")).isTrue();
    assertThat(SCORES.offers("bus-fights", "memory")).isFalse();
    assertThat(SCORES.yes(List.of(sound()), "bus-fights", "memory")).containsExactly(0.5);
  }

  @Test
  void aSymptomThatRulesWeighIsRefused() {
    assertThat(SymptomScores.computes("chip-warm")).isFalse();
    assertThatThrownBy(() -> SCORES.yes(List.of(sound()), "chip-warm", "U1"))
        .isInstanceOf(IllegalArgumentException.class)
        .hasMessageContaining("chip-warm");
  }

  @Test
  void aPartThatMayDoAnythingIsNeverRuledOutByOneAnswer() {
    Hypothesis unlisted = fault("unlisted", UNLISTED);
    for (SymptomQuestion question : SCORES.questions()) {
      assertThat(SCORES.yes(List.of(unlisted), question.symptom(), question.place())[0])
          .as(question.symptom())
          .isBetween(0.09, 0.91);
    }
  }
}
