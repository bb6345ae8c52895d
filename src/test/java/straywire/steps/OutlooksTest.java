package straywire.steps;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import org.junit.jupiter.api.Test;
import straywire.faults.Hypothesis;
import straywire.module.Entry;
import straywire.module.LampState;
import straywire.observe.Instruments;
import straywire.observe.Step;
import straywire.ranking.Diagnosis;
import straywire.steps.Outlook.Verdict;

class OutlooksTest {
  private static final Hypothesis SOUND = DiagnosisBench.sound(0.5);
  private static final Hypothesis WIRE = DiagnosisBench.missing("D7-U1.12", 0.3);
  private static final Hypothesis LEG = DiagnosisBench.leg("U1.12", 0.2);

  private final Outlooks outlooks =
      new Outlooks(DiagnosisBench.SECONDS, Questions.none(DiagnosisBench.MODULE));

  /** Words written at address 0 in turn; the high half shows each, or bit 7 is lit throughout. */
  private static Diagnosis written(boolean asMeant, Hypothesis... hypotheses) {
    Diagnosis diagnosis = DiagnosisBench.diagnosis(hypotheses);
    DiagnosisBench.accept(diagnosis, DiagnosisBench.POWER_ON);
    for (String word : List.of("1100", "0011", "1010", "0101")) {
      Map<String, Boolean> set = new TreeMap<>();
      Map<String, LampState> seen = new TreeMap<>();
      for (int bit = 0; bit < 4; bit++) {
        boolean one = word.charAt(3 - bit) == '1';
        set.put("D" + (bit + 4), one);
        boolean lit = one || (bit == 3 && !asMeant);
        seen.put("R" + (bit + 4), lit ? LampState.LIT : LampState.DARK);
      }
      DiagnosisBench.accept(
          diagnosis, new Entry.Set(set), new Entry.Press("write"), new Entry.Seen(seen));
    }
    return diagnosis;
  }

  @Test
  void atPowerOnAStepIsProposedAndTheSittingIsOpen() {
    Diagnosis diagnosis = DiagnosisBench.diagnosis(SOUND, WIRE, LEG);
    DiagnosisBench.accept(diagnosis, DiagnosisBench.POWER_ON);
    Outlook outlook = outlooks.of(diagnosis, Instruments.LAMPS_ONLY);
    assertThat(outlook.verdict()).isEqualTo(Verdict.OPEN);
    assertThat(outlook.next().orElseThrow().step()).isInstanceOf(Step.Work.class);
    assertThat(outlook.uncertainty()).isPositive();
  }

  @Test
  void aModuleThatDoesAsMeantIsCalledSound() {
    Outlook outlook = outlooks.of(written(true, SOUND, WIRE, LEG), Instruments.LAMPS_ONLY);
    assertThat(outlook.verdict()).isEqualTo(Verdict.NOTHING_WRONG);
    assertThat(outlook.suspects().get(0).healthy()).isTrue();
    assertThat(outlook.next()).isEmpty();
  }

  @Test
  void withLampsOnlyFaultsThatShowAlikeAreNamedAsOneGroup() {
    Outlook outlook = outlooks.of(written(false, SOUND, WIRE, LEG), Instruments.LAMPS_ONLY);
    assertThat(outlook.verdict()).isEqualTo(Verdict.NAMED);
    assertThat(outlook.suspects().get(0).members())
        .extracting(Hypothesis::id)
        .containsExactly("jumper-missing D7-U1.12", "leg-not-in-row U1.12");
  }

  @Test
  void aMeterSeparatesWhatTheLampsDoNot() {
    Outlook outlook = outlooks.of(written(false, SOUND, WIRE, LEG), Instruments.USUAL);
    assertThat(outlook.verdict()).isEqualTo(Verdict.OPEN);
    assertThat(outlook.suspects().get(0).members()).hasSize(1);
  }

  @Test
  void whereNoStepTellsMoreThatIsSaid() {
    Diagnosis diagnosis = written(false, SOUND, WIRE, LEG);
    Outlook outlook = outlooks.of(diagnosis, Instruments.USUAL, step -> false);
    assertThat(outlook.verdict()).isEqualTo(Verdict.INSEPARABLE);
    assertThat(outlook.next()).isEmpty();
    assertThat(outlook.others()).isEmpty();
  }

  @Test
  void aStepTheHandCannotDoIsNotOffered() {
    Diagnosis diagnosis = written(false, SOUND, WIRE, LEG);
    Step first = outlooks.of(diagnosis, Instruments.USUAL).next().orElseThrow().step();
    Outlook without = outlooks.of(diagnosis, Instruments.USUAL, step -> !step.equals(first));
    assertThat(without.next().orElseThrow().step()).isNotEqualTo(first);
    assertThat(without.others()).extracting(Outlook.Proposal::step).doesNotContain(first);
  }

  @Test
  void withPowerOffNothingIsNamedThatOnlyLooksAlikeForWantOfSteps() {
    Diagnosis diagnosis = DiagnosisBench.diagnosis(SOUND, WIRE, LEG);
    for (Instruments instruments : List.of(Instruments.LAMPS_ONLY, Instruments.USUAL)) {
      Outlook outlook = outlooks.of(diagnosis, instruments);
      assertThat(outlook.verdict()).isNotIn(Verdict.NOTHING_WRONG, Verdict.NAMED);
      assertThat(outlook.suspects().get(0).probability()).isCloseTo(0.5, within(1e-9));
    }
  }

  @Test
  void groundsNameTheEntriesThatSpeak() {
    Outlook outlook = outlooks.of(written(false, SOUND, WIRE, LEG), Instruments.LAMPS_ONLY);
    List<Integer> looks = List.of(3, 6, 9, 12);
    assertThat(outlook.suspects().get(0).grounds())
        .isNotEmpty()
        .allSatisfy(
            ground -> {
              assertThat(ground.entry()).isIn(looks);
              assertThat(ground.logFactor()).isPositive();
            });
  }

  @Test
  void groupsAddUpToOneAndComeMostProbableFirst() {
    Outlook outlook = outlooks.of(written(false, SOUND, WIRE, LEG), Instruments.USUAL);
    assertThat(outlook.suspects().stream().mapToDouble(Outlook.Suspect::probability).sum())
        .isCloseTo(1, within(1e-9));
    assertThat(outlook.suspects())
        .isSortedAccordingTo(
            java.util.Comparator.comparingDouble(Outlook.Suspect::probability).reversed());
  }
}
