package straywire.properties;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import straywire.casebook.SimulatedBench;
import straywire.faults.Hypothesis;
import straywire.faults.HypothesisPairs;
import straywire.figures.Trial;
import straywire.module.Entry;
import straywire.ranking.Diagnosis;
import straywire.steps.Outlook;

/** After the cure the sitting goes on with what is left. */
class RepairTest {
  private static final int MOST_STEPS = 40;

  /** A diagnosis that stood at its stop, then had the first suspect's fault mended. */
  private static Diagnosis mended(Trial.Result result, String repair) {
    Diagnosis diagnosis = Sittings.diagnosis(Sittings.entries(result.log()));
    diagnosis.accept(new Entry.Power(false), h -> 0);
    diagnosis.accept(new Entry.Repaired(repair), h -> 0);
    return diagnosis;
  }

  private static void follow(Diagnosis diagnosis, List<Entry> entries) {
    entries.forEach(entry -> diagnosis.accept(entry, h -> 0));
  }

  /** The exercise again, at a bench whose controls stand where the log left them. */
  private static SimulatedBench again(Diagnosis diagnosis, Hypothesis left, int steps) {
    SimulatedBench bench = Sittings.bench(left, 77);
    bench.act(new Entry.Set(diagnosis.state().controls()));
    follow(diagnosis, Sittings.exercise(bench, steps));
    return bench;
  }

  private static void assertCured(Hypothesis truth) {
    Trial.Result result = Sittings.TRIAL.run(truth, 7);
    assertThat(result.right()).as(truth.id()).isTrue();
    Diagnosis diagnosis = mended(result, truth.id());
    again(diagnosis, Sittings.nothingWrong(), Integer.MAX_VALUE);
    Diagnosis.Candidate first = diagnosis.candidates().get(0);
    assertThat(first.hypothesis().id()).as(truth.id()).isEqualTo("nothing-wrong");
    assertThat(first.probability()).as(truth.id()).isGreaterThan(0.8);
  }

  @Test
  void afterTheRightRepairTheConfirmingLooksPutNothingWrongFirst() {
    assertCured(Sittings.hypothesis("jumper-missing GND-U1.2"));
    assertCured(Sittings.hypothesis("inverter-bypassed U4.5-U4.6"));
    assertCured(Sittings.hypothesis("supply-jumper-missing GND-U3.7"));
  }

  @Test
  void aRepairThatDidNotHelpLeavesTheFaultFirst() {
    Hypothesis truth = Sittings.hypothesis("inverter-bypassed U4.5-U4.6");
    Trial.Result result = Sittings.TRIAL.run(truth, 7);
    Diagnosis diagnosis = mended(result, truth.id());
    again(diagnosis, truth, 15);
    assertThat(diagnosis.candidates().get(0).hypothesis().id()).isEqualTo(truth.id());
  }

  /** Mends whichever fault of the pair the tool names, and follows the tool to its next stop. */
  private static void assertOtherIsFound(String pair) {
    Trial.Result result = Sittings.TRIAL.run(Sittings.hypothesis(pair), 7);
    Outlook.Suspect named = result.last().suspects().get(0);
    List<String> faults = HypothesisPairs.members(pair);
    String mend =
        faults.stream()
            .filter(
                fault ->
                    named.members().stream()
                        .anyMatch(m -> HypothesisPairs.members(m.id()).contains(fault)))
            .findFirst()
            .orElseThrow(() -> new AssertionError("Neither of " + pair + " in " + named));
    Hypothesis left =
        Sittings.hypothesis(faults.get(0).equals(mend) ? faults.get(1) : faults.get(0));
    Diagnosis diagnosis = mended(result, mend);
    SimulatedBench bench = again(diagnosis, left, Integer.MAX_VALUE);
    Outlook outlook = Sittings.outlook(diagnosis);
    for (int step = 0; step < MOST_STEPS && outlook.verdict() == Outlook.Verdict.OPEN; step++) {
      follow(diagnosis, bench.perform(outlook.next().orElseThrow().step()));
      outlook = Sittings.outlook(diagnosis);
    }
    assertThat(Sittings.holds(outlook.suspects().get(0), left))
        .as("%s left of %s, but %s", left.id(), pair, outlook.suspects().get(0))
        .isTrue();
  }

  @Test
  void ofTwoFaultsTheOtherIsFoundAfterTheFirstIsMended() {
    assertOtherIsFound("jumper-missing GND-U1.2 + inverter-bypassed U4.5-U4.6");
  }

  @Test
  @Tag("slow")
  void ofTwoFaultsTheOtherIsFoundForOtherPairsToo() {
    assertOtherIsFound("jumper-missing A1-U1.15 + inverter-bypassed U3.1-U3.2");
    assertOtherIsFound("jumper-missing write-U1.3 + jumper-missing drive-U5.19");
    assertOtherIsFound("leg-not-in-row U1.15 + contact-stuck drive");
  }

  @Test
  @Tag("slow")
  void afterTheRightRepairNothingWrongIsFirstForAllThatTheExerciseShows() {
    Sittings.drawn(21, 40).stream()
        .filter(truth -> Sittings.TRIAL.run(truth, 7).deviated())
        .forEach(RepairTest::assertCured);
  }
}
