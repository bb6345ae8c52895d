package straywire.steps;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import straywire.faults.Hypothesis;
import straywire.module.End;
import straywire.module.Entry;
import straywire.module.Point;
import straywire.observe.Instruments;
import straywire.observe.Step;
import straywire.ranking.Diagnosis;
import straywire.ranking.LiveSet;

class NextStepTest {
  private static final Hypothesis SOUND = DiagnosisBench.sound(0.5);
  private static final Hypothesis WIRE = DiagnosisBench.missing("A1-U1.15", 0.3);
  private static final Hypothesis LEG = DiagnosisBench.leg("U1.15", 0.2);

  private static NextStep steps(Instruments instruments, Entry... entries) {
    Diagnosis diagnosis = DiagnosisBench.diagnosis(SOUND, WIRE, LEG);
    DiagnosisBench.accept(diagnosis, entries);
    return new NextStep(
        DiagnosisBench.MODULE,
        new LiveSet(diagnosis.candidates()),
        instruments,
        DiagnosisBench.TABLE,
        DiagnosisBench.SECONDS,
        List.of());
  }

  private static List<Step> offered(Instruments instruments, Entry... entries) {
    return steps(instruments, entries).ranked().stream().map(StepChoice.Worth::step).toList();
  }

  @Test
  void aWireThatMayBeMissingAndALegThatMayBeBentAreToldApartByLookingOrTouching() {
    long[] prints = steps(Instruments.USUAL, DiagnosisBench.POWER_ON).prints();
    assertThat(prints).doesNotHaveDuplicates();
    long[] blind = steps(Instruments.LAMPS_ONLY, DiagnosisBench.POWER_ON).prints();
    assertThat(blind[1]).isEqualTo(blind[2]);
  }

  @Test
  void everyStepOfferedTellsSomethingAndComesBestFirst() {
    List<StepChoice.Worth<Step>> ranked =
        steps(new Instruments(true, true, true, true), DiagnosisBench.POWER_ON).ranked();
    assertThat(ranked).isNotEmpty();
    assertThat(ranked).allSatisfy(worth -> assertThat(worth.bits()).isGreaterThanOrEqualTo(0.004));
    for (int i = 1; i < ranked.size(); i++) {
      assertThat(ranked.get(i).rate()).isLessThanOrEqualTo(ranked.get(i - 1).rate());
    }
    assertThat(ranked.stream().map(StepChoice.Worth::step)).doesNotHaveDuplicates();
  }

  @Test
  void aLookABeepAndAnExchangeAreOfferedOnlyWithWhatTheyNeed() {
    Step look = new Step.Inspect("jumper A1-U1.15");
    Step beep =
        new Step.Beep(new Point(End.pin("U1", 15), true), new Point(End.pin("U1", 15), false));
    Step exchange = new Step.Exchange("U1");
    assertThat(offered(Instruments.USUAL, DiagnosisBench.POWER_ON)).contains(look, beep, exchange);
    assertThat(offered(new Instruments(true, false, false, false), DiagnosisBench.POWER_ON))
        .contains(look)
        .doesNotContain(beep, exchange);
    assertThat(offered(new Instruments(false, true, false, false), DiagnosisBench.POWER_ON))
        .contains(beep)
        .doesNotContain(look, exchange);
    assertThat(offered(new Instruments(false, false, false, true), DiagnosisBench.POWER_ON))
        .contains(exchange)
        .doesNotContain(look, beep);
    assertThat(offered(Instruments.LAMPS_ONLY, DiagnosisBench.POWER_ON))
        .allMatch(Step.Work.class::isInstance);
  }

  @Test
  void withPowerOffNothingIsWorkedOrTouched() {
    assertThat(offered(Instruments.USUAL))
        .isNotEmpty()
        .noneMatch(
            step ->
                step instanceof Step.Work
                    || step instanceof Step.Measure
                    || step instanceof Step.MeasureRound
                    || step instanceof Step.Probe);
  }

  @Test
  void theExpectedReadingIsGivenForEachLeader() {
    NextStep steps = steps(Instruments.USUAL, DiagnosisBench.POWER_ON);
    Step leg = new Step.Measure(new Point(End.pin("U1", 15), true), Optional.empty());
    assertThat(steps.expected(leg, List.of(SOUND, WIRE, DiagnosisBench.leg("U2.1", 1))))
        .satisfiesExactly(
            sound -> assertThat(sound).startsWith("about 0.0 V"),
            wire -> assertThat(wire).isNotEmpty().doesNotStartWith("about 0.0"),
            notLive -> assertThat(notLive).isEmpty());
    assertThat(steps.expected(new Step.Inspect("jumper A1-U1.15"), List.of(SOUND, WIRE)))
        .containsExactly("as meant", "not as meant");
    assertThat(steps.expected(new Step.Exchange("U1"), List.of(WIRE, LEG)))
        .containsExactly("no change", "cured");
  }
}
