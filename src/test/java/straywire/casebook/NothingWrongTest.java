package straywire.casebook;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import straywire.advice.Normal;
import straywire.faults.Mechanism;
import straywire.figures.Trial;
import straywire.module.BenchLog;
import straywire.module.Entry;
import straywire.observe.Instruments;
import straywire.observe.Step;
import straywire.ranking.Diagnosis;
import straywire.steps.Outlook;
import straywire.steps.Unseen;
import straywire.steps.Unseen.Hidden;

/** What looks wrong and is not, and what is wrong and cannot be seen. */
class NothingWrongTest {
  private static final List<String> ALL_DARK =
      List.of(
          "power on",
          "set address 0000 data 00000000 drive high",
          "see memory 00000000 bus 00000000");

  @Test
  void aJumbleAfterPowerUpIsNormal() {
    for (long seed : BeatMemory.seeds(20)) {
      SimulatedBench bench = BeatMemory.bench(Faults.NONE, seed);
      BenchLog log = BeatMemory.log("power on", "set address 0000 data 00000000 drive high");
      BeatMemory.entries(log).forEach(bench::act);
      log = log.with(bench.look(List.of("memory", "bus")));
      Outlook outlook = BeatMemory.outlook(BeatMemory.weighed(log), Instruments.USUAL);

      assertThat(outlook.suspects().get(0).healthy()).as("seed %d", seed).isTrue();
      assertThat(BeatMemory.advice(log, outlook, List.of()).normal())
          .extracting(Normal::rule)
          .contains("NORM-02");
    }
  }

  @Test
  void allDarkAtAnAddressNeverWrittenIsLeftUndecidedAndTriedElsewhere() {
    BenchLog log = BeatMemory.log(ALL_DARK.toArray(String[]::new));
    Outlook outlook = BeatMemory.outlook(BeatMemory.weighed(log), Instruments.USUAL);

    assertThat(outlook.verdict()).isEqualTo(Outlook.Verdict.OPEN);
    Step next = outlook.next().orElseThrow().step();
    assertThat(next).isInstanceOf(Step.Work.class);
    Step.Work work = (Step.Work) next;
    assertThat(
            work.press().isPresent()
                || work.set().keySet().stream().anyMatch(a -> a.startsWith("A")))
        .as("another address or a write")
        .isTrue();
    assertThat(BeatMemory.advice(log, outlook, List.of()).normal())
        .extracting(Normal::rule)
        .contains("NORM-03");
  }

  @Test
  void darkLampsWhileTheWriteButtonIsHeldAreNormal() {
    for (long seed : BeatMemory.seeds(20)) {
      SimulatedBench bench = BeatMemory.bench(Faults.NONE, seed);
      BenchLog log =
          BeatMemory.log(
              "power on",
              "set address 0000 data 10010110 drive high",
              "press write",
              "see memory 10010110",
              "hold write");
      BeatMemory.entries(log).forEach(bench::act);
      Entry.Seen seen = bench.look(List.of("memory"));
      assertThat(BeatMemory.typed(List.of(seen))).containsExactly("see memory 00000000");
      log = log.with(seen);
      Outlook outlook = BeatMemory.outlook(BeatMemory.weighed(log), Instruments.USUAL);

      assertThat(outlook.suspects().get(0).healthy()).isTrue();
      assertThat(BeatMemory.advice(log, outlook, List.of()).normal())
          .extracting(Normal::rule)
          .contains("NORM-09");
    }
  }

  @ParameterizedTest
  @ValueSource(strings = {Faults.NONE, Faults.REVERSED_BOTH, Faults.ADDRESSES_SWAPPED})
  void theWholeExerciseWithoutADeviationEndsInNothingWrong(String fault) {
    assertSound(fault, 3);
  }

  @Tag("slow")
  @ParameterizedTest
  @ValueSource(strings = {Faults.NONE, Faults.REVERSED_BOTH, Faults.ADDRESSES_SWAPPED})
  void theWholeExerciseEndsInNothingWrongForTwentyFillingsOfTheMemory(String fault) {
    assertSound(fault, 20);
  }

  private static void assertSound(String fault, int seeds) {
    for (long seed : BeatMemory.seeds(seeds)) {
      Trial.Result result = BeatMemory.trial(fault, seed);
      assertThat(result.deviated()).isFalse();
      assertThat(result.last().verdict()).isEqualTo(Outlook.Verdict.NOTHING_WRONG);
      assertThat(result.last().suspects().get(0).healthy()).isTrue();
    }
  }

  @ParameterizedTest
  @ValueSource(strings = {Faults.REVERSED_BOTH, Faults.ADDRESSES_SWAPPED})
  void whatExchangesLinesOnBothSidesIsInvisibleAndSaidToBeSo(String fault) {
    Trial.Result result = BeatMemory.trial(fault, 0);
    Diagnosis diagnosis = BeatMemory.after(BeatMemory.entries(result.log()));
    Hidden hidden =
        Unseen.of(diagnosis).stream()
            .filter(h -> h.hypothesis().id().equals(fault))
            .findFirst()
            .orElseThrow();
    assertThat(hidden.invisible()).isTrue();
    Step check = hidden.check().orElseThrow();
    assertThat(BeatMemory.bench(fault, 0).perform(check))
        .as("the check shows it")
        .isNotEqualTo(BeatMemory.bench(Faults.NONE, 0).perform(check));
  }

  @Test
  void whatTheExerciseLeavesUntestedOrInvisibleIsListed() {
    Trial.Result result = BeatMemory.trial(Faults.NONE, 0);
    List<Hidden> hidden = Unseen.of(BeatMemory.after(BeatMemory.entries(result.log())));

    assertThat(hidden).anyMatch(h -> h.invisible() && h.check().isPresent());
    assertThat(hidden).as("untested").anyMatch(h -> !h.invisible());
    assertThat(hidden)
        .as("a fault that the exercise shows is not left")
        .noneMatch(h -> h.hypothesis().mechanism() == Mechanism.INVERTER_BYPASSED);
  }
}
