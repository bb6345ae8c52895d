package straywire.steps;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import straywire.module.End;
import straywire.module.Entry;
import straywire.module.Point;
import straywire.observe.Instruments;
import straywire.observe.Step;
import straywire.ranking.Diagnosis;

class TakenTest {
  private static final Point U1_7 = new Point(End.pin("U1", 7), true);
  private static final Point U1_9 = new Point(End.pin("U1", 9), true);
  private static final Step MEASURE = new Step.Measure(U1_7, Optional.empty());
  private static final Step MEASURE_HELD = new Step.Measure(U1_7, Optional.of("write"));
  private static final Entry MEASURED = new Entry.Measured(U1_7, 0.2);
  private static final Entry HOLD = new Entry.Hold("write");
  private static final Entry RELEASE = new Entry.Release("write");

  private static boolean repeats(Step step, Entry... log) {
    return new Taken(Arrays.asList(log)).repeats(step);
  }

  @Test
  void theSameReadingWithNothingMovedIsARepeat() {
    assertThat(repeats(MEASURE)).isFalse();
    assertThat(repeats(MEASURE, MEASURED)).isTrue();
    assertThat(repeats(new Step.Measure(U1_9, Optional.empty()), MEASURED)).isFalse();
    assertThat(repeats(new Step.Probe(U1_7, Optional.empty()), MEASURED)).isFalse();
    assertThat(repeats(MEASURE_HELD, MEASURED)).isFalse();
  }

  @Test
  void whateverIsMovedMakesAReadingFresh() {
    for (Entry moved :
        List.of(
            new Entry.Set(Map.of("A0", true)),
            new Entry.Press("write"),
            new Entry.Power(false),
            HOLD)) {
      assertThat(repeats(MEASURE, MEASURED, moved)).as("%s", moved).isFalse();
    }
  }

  @Test
  void aReadingWithAButtonHeldIsRepeatedByHoldingItAgain() {
    assertThat(repeats(MEASURE_HELD, HOLD, MEASURED, RELEASE)).isTrue();
    assertThat(repeats(MEASURE, HOLD, MEASURED, RELEASE)).isFalse();
    assertThat(repeats(MEASURE, HOLD, RELEASE, MEASURED, HOLD, RELEASE)).isTrue();
  }

  @Test
  void aLookAndABeepStayGoodUntilTheNextRepair() {
    Entry look = new Entry.Inspected("part U1", true);
    Entry beep = new Entry.Continuity(U1_7, U1_9, true);
    Entry on = new Entry.Power(true);
    assertThat(repeats(new Step.Inspect("part U1"), look, on)).isTrue();
    assertThat(repeats(new Step.Inspect("part U2"), look, on)).isFalse();
    assertThat(repeats(new Step.Beep(U1_7, U1_9), beep, on)).isTrue();
    assertThat(repeats(new Step.Beep(U1_9, U1_7), beep, on)).isTrue();
  }

  @Test
  void aRoundIsARepeatWhenEachOfItsPointsIs() {
    Step round = new Step.MeasureRound(List.of(U1_7, U1_9));
    assertThat(repeats(round, MEASURED)).isFalse();
    assertThat(repeats(round, MEASURED, new Entry.Measured(U1_9, 3.5))).isTrue();
  }

  @Test
  void noStepIsOfferedThatOnlyRepeatsAReading() {
    Diagnosis diagnosis =
        DiagnosisBench.diagnosis(
            DiagnosisBench.sound(0.5),
            DiagnosisBench.missing("A1-U1.15", 0.3),
            DiagnosisBench.leg("U1.15", 0.2));
    DiagnosisBench.accept(diagnosis, DiagnosisBench.POWER_ON, DiagnosisBench.ADDRESS_FIVE);
    Outlooks outlooks = new Outlooks(DiagnosisBench.SECONDS, Questions.none(DiagnosisBench.MODULE));
    Outlook before = outlooks.of(diagnosis, new Instruments(false, true, false, false));
    List<Step> offered = new ArrayList<>();
    offered.add(before.next().orElseThrow().step());
    before.others().forEach(other -> offered.add(other.step()));
    List<Step.Measure> readings =
        offered.stream()
            .filter(step -> step instanceof Step.Measure m && m.holding().isEmpty())
            .map(Step.Measure.class::cast)
            .toList();
    assertThat(readings).isNotEmpty();
    Step.Measure first = readings.get(0);
    DiagnosisBench.accept(diagnosis, new Entry.Measured(first.point(), 1.9));
    Outlook after = outlooks.of(diagnosis, new Instruments(false, true, false, false));
    assertThat(after.next().map(Outlook.Proposal::step)).isNotEqualTo(Optional.of(first));
    assertThat(after.others()).extracting(Outlook.Proposal::step).doesNotContain(first);
  }
}
