package straywire.casebook;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import straywire.advice.Advice;
import straywire.figures.Trial;
import straywire.module.BenchLog;
import straywire.observe.Instruments;
import straywire.observe.Step;
import straywire.steps.Outlook;

/** Heat and fights: the caution comes before any talk of logic. */
class SafetyFirstTest {
  @ParameterizedTest
  @CsvSource({"chip-warm, SAFE-06", "supply-limited, SAFE-14"})
  void allDarkAndHotMeansSwitchOffFirst(String symptom, String rule) {
    BenchLog log =
        BeatMemory.log(
            "power on",
            "set address 0000 data 00000000 drive high",
            "see memory 00000000 bus 00000000",
            "set address 0000 data 10010110",
            "press write",
            "see memory 00000000",
            "symptom " + symptom + " yes");
    Outlook outlook = BeatMemory.outlook(BeatMemory.weighed(log), Instruments.USUAL);
    Advice advice = BeatMemory.advice(log, outlook, List.of());

    assertThat(advice.cautions().get(0).urgent()).isTrue();
    assertThat(advice.cautions()).extracting("rule").contains(rule);
    assertThat(advice.hints()).as("talk of logic").isEmpty();
    assertThat(advice.normal()).isEmpty();
    assertThat(outlook.next().orElseThrow().step()).isEqualTo(new Step.Inspect("supply"));
  }

  @ParameterizedTest
  @CsvSource({"supply-reversed, SAFE-02", "rails-joined, SAFE-03"})
  void aSuspectedShortOfTheSupplyIsCautionedBeforeItIsNamed(String fault, String rule) {
    for (long seed : BeatMemory.seeds(3)) {
      Trial.Result result = BeatMemory.trial(fault, seed);
      BenchLog log = result.log();
      Advice advice = BeatMemory.advice(log, result.last(), List.of());

      assertThat(result.foundIn(3)).isTrue();
      assertThat(advice.cautions().get(0).urgent()).isTrue();
      assertThat(advice.cautions()).extracting("rule").contains(rule);
    }
  }

  @Test
  void aFightOverTheDirectionPinIsToldWithACaution() {
    for (long seed : BeatMemory.seeds(3)) {
      Trial.Result result = BeatMemory.trial("wrong-rail VCC-U5.1 to GND", seed);
      Advice advice =
          BeatMemory.advice(result.log(), result.last(), List.of("wrong-rail VCC-U5.1 to GND"));

      assertThat(advice.cautions().get(0).urgent()).isTrue();
      assertThat(advice.cautions()).extracting("rule").contains("SAFE-05");
    }
  }
}
