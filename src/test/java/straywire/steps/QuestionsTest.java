package straywire.steps;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import straywire.advice.RuleBase;
import straywire.advice.Weigh;
import straywire.faults.Hypothesis;
import straywire.faults.Mechanism;
import straywire.module.BenchLog;
import straywire.module.Entry;
import straywire.module.LampState;
import straywire.module.Module;
import straywire.observe.Instruments;
import straywire.observe.Question;
import straywire.observe.Step;
import straywire.ranking.Diagnosis;
import straywire.sim.Wiring;
import straywire.symptoms.SymptomScores;

/** Questions about what was noticed are steps among the others. */
class QuestionsTest {
  private static final Module MODULE = DiagnosisBench.MODULE;
  private static List<Hypothesis> hypotheses = List.of();
  private static Questions questions = Questions.none(MODULE);
  private static RuleBase rules = RuleBase.shipped();

  @BeforeAll
  static void prepare() {
    rules = RuleBase.shipped();
    hypotheses = DiagnosisBench.proposed();
    questions =
        new Questions(
            MODULE, rules, new SymptomScores(MODULE, new Wiring(MODULE), DiagnosisBench.TABLE, 1));
  }

  private static Question question(Instruments instruments, String symptom) {
    return questions.offered(instruments).stream()
        .filter(q -> q.step.symptom().equals(symptom))
        .findFirst()
        .orElseThrow();
  }

  private static List<String> offered(Instruments instruments) {
    return questions.offered(instruments).stream().map(q -> q.step.symptom()).toList();
  }

  private static List<StepChoice.Worth<Step>> menu(Instruments instruments, Entry... entries) {
    Diagnosis diagnosis = new Diagnosis(MODULE, hypotheses, DiagnosisBench.TABLE);
    DiagnosisBench.accept(diagnosis, entries);
    return new Outlooks(DiagnosisBench.SECONDS, questions).survey(diagnosis, instruments).steps();
  }

  @Test
  void whatCanBeWorkedOutIsAskedOnlyWhenNothingCanBeMeasured() {
    assertThat(offered(Instruments.USUAL)).contains("hand-near", "chip-warm");
    assertThat(offered(Instruments.USUAL)).doesNotContain("bit-stuck-low");
    assertThat(offered(Instruments.LAMPS_ONLY)).contains("hand-near", "bit-stuck-low");
  }

  /** An answer must then weigh as the rules say, or the choice of the question was a mistake. */
  @Test
  void theChanceOfAYesAgreesWithHowTheRulesWeighTheAnswer() {
    double[] yes = question(Instruments.USUAL, "hand-near").yes(hypotheses);
    int open = indexOf(Mechanism.JUMPER_MISSING);
    int sound = indexOf(Mechanism.NOTHING_WRONG);
    assertThat(yes[open] / yes[sound]).isCloseTo(weighed(open, Entry.Answer.YES), within(1e-9));
    assertThat((1 - yes[open]) / (1 - yes[sound]))
        .isCloseTo(weighed(open, Entry.Answer.NO), within(1e-9));
    assertThat(weighed(open, Entry.Answer.YES)).isGreaterThan(1);
    assertThat(weighed(open, Entry.Answer.NO)).isLessThan(1);
  }

  private static double weighed(int hypothesis, Entry.Answer answer) {
    BenchLog log =
        new BenchLog(MODULE.name(), "", List.of())
            .with(new Entry.Symptom("hand-near", "", answer, List.of()));
    return rules.advise(MODULE, log, List.of(), Map.of()).weights().stream()
        .filter(w -> w.concerns(MODULE, hypotheses.get(hypothesis)))
        .mapToDouble(Weigh::factor)
        .reduce(1, (a, b) -> a * b);
  }

  private static int indexOf(Mechanism mechanism) {
    for (int h = 0; h < hypotheses.size(); h++) {
      if (hypotheses.get(h).mechanism() == mechanism) {
        return h;
      }
    }
    throw new IllegalStateException("No hypothesis " + mechanism);
  }

  @Test
  void withLampsOnlyAQuestionIsAmongTheStepsUntilItIsAnswered() {
    Entry[] halfDark = {
      DiagnosisBench.POWER_ON,
      new Entry.Set(Map.of("A0", false)),
      new Entry.Press("write"),
      new Entry.Seen(
          Map.of(
              "R0", LampState.LIT, "R1", LampState.LIT, "R2", LampState.LIT, "R3", LampState.LIT))
    };
    List<StepChoice.Worth<Step>> menu = menu(Instruments.LAMPS_ONLY, halfDark);
    Step.Ask ask =
        menu.stream()
            .map(StepChoice.Worth::step)
            .filter(Step.Ask.class::isInstance)
            .map(Step.Ask.class::cast)
            .findFirst()
            .orElseThrow();
    Entry[] answered = java.util.Arrays.copyOf(halfDark, halfDark.length + 1);
    answered[halfDark.length] =
        new Entry.Symptom(ask.symptom(), ask.place(), Entry.Answer.UNKNOWN, List.of());
    assertThat(menu(Instruments.LAMPS_ONLY, answered))
        .extracting(StepChoice.Worth::step)
        .isNotEmpty()
        .doesNotContain(ask);
  }

  @Test
  void anAnswerAboutWorkThatWasNotLoggedLeavesTheMemoryUnknown() {
    Entry written = seen(true, false, true, false);
    Entry other = seen(false, true, false, true);
    Entry told = new Entry.Symptom("never-changes-on-write", "memory", Entry.Answer.NO, List.of());
    Entry toldOfEntries =
        new Entry.Symptom("never-changes-on-write", "memory", Entry.Answer.NO, List.of(3));
    Entry set = new Entry.Set(Map.of("D0", true, "D1", false, "D2", true, "D3", false));
    Entry write = new Entry.Press("write");
    assertThat(slips(DiagnosisBench.POWER_ON, set, write, written)).isZero();
    assertThat(slips(DiagnosisBench.POWER_ON, set, write, toldOfEntries, other)).isEqualTo(4);
    assertThat(slips(DiagnosisBench.POWER_ON, set, write, told, other)).isZero();
    assertThat(slips(DiagnosisBench.POWER_ON, set, write, told, write, other)).isEqualTo(4);
  }

  private static Entry seen(boolean r0, boolean r1, boolean r2, boolean r3) {
    return new Entry.Seen(Map.of("R0", lit(r0), "R1", lit(r1), "R2", lit(r2), "R3", lit(r3)));
  }

  private static LampState lit(boolean lit) {
    return lit ? LampState.LIT : LampState.DARK;
  }

  private static int slips(Entry... entries) {
    Diagnosis diagnosis = DiagnosisBench.diagnosis(DiagnosisBench.sound(1));
    DiagnosisBench.accept(diagnosis, entries);
    return diagnosis.slips();
  }
}
