package straywire.casebook;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.Test;
import straywire.advice.RuleBase;
import straywire.module.EntryWords;
import straywire.module.Module;
import straywire.module.ModuleFile;
import straywire.parts.ShippedParts;
import straywire.ranking.Diagnosis;

/** A counter that nobody cleared starts anywhere and goes on from there. */
class CountedFromAnywhereTest {
  private static final Module COUNTER =
      ModuleFile.readShipped(Path.of("cases", "beat-counter", "module.yaml"), new ShippedParts());
  private static final Workbench BENCH = new Workbench(COUNTER, RuleBase.shipped());

  private static Diagnosis after(String... lines) {
    EntryWords words = new EntryWords(COUNTER);
    Diagnosis diagnosis = BENCH.diagnosis();
    for (String line : lines) {
      diagnosis.accept(words.parse(line), h -> 0);
    }
    return diagnosis;
  }

  private static List<String> leaders(Diagnosis diagnosis) {
    return diagnosis.candidates().stream().limit(3).map(c -> c.hypothesis().id()).toList();
  }

  @Test
  void aSoundCounterThatWasNotClearedIsNotTakenForABrokenOne() {
    Diagnosis diagnosis =
        after(
            "power on",
            "set load high count high cascade high",
            "see number 0101",
            "press beat",
            "see number 0110",
            "press beat",
            "see number 0111",
            "press beat",
            "see number 1000");
    assertThat(leaders(diagnosis).get(0)).isEqualTo("nothing-wrong");
  }

  /** Nothing clocks it, so what it woke up with must stay. */
  @Test
  void aCounterThatIsNotClockedKeepsWhatItWokeUpWith() {
    Diagnosis kept =
        after("power on", "set count low", "see number 0101", "set count high", "see number 0101");
    Diagnosis changed =
        after("power on", "set count low", "see number 0101", "set count high", "see number 0110");
    assertThat(leaders(kept).get(0)).isEqualTo("nothing-wrong");
    assertThat(leaders(changed).get(0)).isNotEqualTo("nothing-wrong");
  }

  @Test
  void pressesThatCountNowOnceAndNowSeveralTimesAreABouncingContact() {
    Diagnosis diagnosis =
        after(
            "power on",
            "set load high count high cascade high",
            "press clear",
            "see number 0000",
            "press beat",
            "see number 0010",
            "press beat",
            "see number 0011",
            "press beat",
            "see number 0110",
            "press clear",
            "see number 0000",
            "press beat",
            "see number 0011");
    assertThat(leaders(diagnosis).get(0)).isEqualTo("contact-bounces beat any");
  }
}
