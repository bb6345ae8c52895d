package straywire.properties;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import straywire.figures.Trial;
import straywire.module.Entry;
import straywire.ranking.Diagnosis;
import straywire.steps.Outlook;

/** A healthy module is called healthy, whatever its memories hold at power-up. */
class QuietTest {
  private static void assertQuiet(long seed, boolean outlooks) {
    List<Entry> exercise =
        Sittings.exercise(Sittings.bench(Sittings.nothingWrong(), seed), Integer.MAX_VALUE);
    Diagnosis diagnosis = Sittings.diagnosis();
    double before = Sittings.nothingWrong().prior();
    for (Entry entry : exercise) {
      diagnosis.accept(entry, h -> 0);
      Diagnosis.Candidate first = diagnosis.candidates().get(0);
      assertThat(first.hypothesis().id())
          .as("seed %d at %s", seed, entry)
          .isEqualTo("nothing-wrong");
      if (outlooks && entry instanceof Entry.Seen) {
        assertThat(Sittings.outlook(diagnosis).suspects().get(0).healthy()).isTrue();
      }
    }
    double after = diagnosis.candidates().get(0).probability();
    assertThat(after).as("a whole exercise without a fault says something").isGreaterThan(before);
    assertThat(diagnosis.slips()).isZero();
  }

  @Test
  void aHealthyModuleLeadsAllAlongTheExerciseForThreeSeeds() {
    for (long seed = 0; seed < 3; seed++) {
      assertQuiet(seed, false);
    }
  }

  @Test
  @Tag("slow")
  void aHealthyModuleLeadsAllAlongTheExerciseForTwentySeeds() {
    for (long seed = 0; seed < 20; seed++) {
      assertQuiet(seed, true);
    }
  }

  @Test
  void aSittingAtAHealthyModuleEndsWithNothingWrong() {
    for (long seed = 0; seed < 3; seed++) {
      Trial.Result result = Sittings.TRIAL.run(Sittings.nothingWrong(), seed);
      assertThat(result.deviated()).isFalse();
      assertThat(result.last().verdict()).isEqualTo(Outlook.Verdict.NOTHING_WRONG);
    }
  }
}
