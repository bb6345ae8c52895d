package straywire.ranking;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.Arrays;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;
import straywire.module.End;
import straywire.module.Entry;
import straywire.module.LampState;
import straywire.module.Point;
import straywire.sim.Lanes;
import straywire.sim.Signal;
import straywire.steps.DiagnosisBench;
import straywire.steps.Prediction;

class LiveSetTest {
  private static Diagnosis open() {
    Diagnosis diagnosis =
        new Diagnosis(DiagnosisBench.MODULE, DiagnosisBench.proposed(), DiagnosisBench.TABLE);
    DiagnosisBench.accept(
        diagnosis,
        DiagnosisBench.POWER_ON,
        new Entry.Set(Map.of("D7", true, "A0", true)),
        new Entry.Press("write"),
        new Entry.Seen(Map.of("R7", LampState.DARK)));
    return diagnosis;
  }

  @Test
  void atMostSoManyTakePartAndTheirWeightsAddUpToOne() {
    List<Diagnosis.Candidate> candidates = open().candidates();
    LiveSet live = new LiveSet(candidates);
    assertThat(live.size()).isEqualTo(LiveSet.MOST);
    assertThat(Arrays.stream(live.weights).sum()).isCloseTo(1, within(1e-9));
    assertThat(live.hypotheses)
        .containsExactlyInAnyOrderElementsOf(
            candidates.subList(0, LiveSet.MOST).stream()
                .map(Diagnosis.Candidate::hypothesis)
                .toList());
  }

  @Test
  void twoTakePartEvenWhenOneIsBeyondDoubt() {
    Diagnosis diagnosis =
        DiagnosisBench.diagnosis(
            DiagnosisBench.sound(0.9999),
            DiagnosisBench.missing("A1-U1.15", 0.00006),
            DiagnosisBench.leg("U1.15", 0.00004));
    LiveSet live = new LiveSet(diagnosis.candidates());
    assertThat(live.size()).isEqualTo(2);
    assertThat(live.hypotheses.get(0).id()).isEqualTo("nothing-wrong");
  }

  @Test
  void packedTogetherEachShowsWhatItShowsInItsOwnLane() {
    Diagnosis diagnosis = open();
    List<Diagnosis.Candidate> candidates = diagnosis.candidates();
    LiveSet live = new LiveSet(candidates);
    for (Point point :
        List.of(
            new Point(End.pin("U1", 5), true),
            new Point(End.pin("U3", 8), false),
            new Point(End.pin("U5", 2), true))) {
      Signal[] packed = Prediction.at(live, live.states(), List.of(point))[0];
      for (int h = 0; h < live.size(); h++) {
        String id = live.hypotheses.get(h).id();
        Diagnosis.Lane lane =
            candidates.stream()
                .filter(c -> c.hypothesis().id().equals(id))
                .findFirst()
                .orElseThrow()
                .lane();
        assertThat(packed[h]).as("%s at %s", id, point).isEqualTo(signal(lane, point));
      }
    }
  }

  private static Signal signal(Diagnosis.Lane lane, Point point) {
    Bank bank = lane.bank();
    long[] lanes = bank.boards.signals(bank.state(), Lanes.group(lane.index()), point);
    return Arrays.stream(Signal.values())
        .filter(s -> Lanes.has(lanes[s.ordinal()], lane.index() % Lanes.COUNT))
        .findFirst()
        .orElseThrow();
  }

  @Test
  void movingAControlMovesItForAllAndLeavesThePresentAlone() {
    LiveSet live = new LiveSet(open().candidates());
    assertThat(live.move(live.states(), Map.of("A0", false)))
        .allMatch(state -> !state.controls().get("A0"));
    assertThat(live.state().controls()).containsEntry("A0", true);
  }
}
