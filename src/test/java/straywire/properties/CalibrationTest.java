package straywire.properties;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import straywire.faults.Hypothesis;
import straywire.figures.Trial;
import straywire.steps.Outlook;

/** Of the suspects given about 70 % about 70 % are right. */
class CalibrationTest {
  private static final double FROM = 0.6;
  private static final double TO = 0.8;

  /** Suspects given 60 to 80 %: how many, how often right, and what was promised. */
  private static final class Given {
    int count;
    int right;
    double promised;

    /** One that a sitting has counted already is not counted again: its steps are not separate. */
    void take(Outlook outlook, Hypothesis truth) {
      for (Outlook.Suspect suspect : outlook.suspects()) {
        if (suspect.probability() >= FROM && suspect.probability() <= TO) {
          count++;
          right += Sittings.holds(suspect, truth) ? 1 : 0;
          promised += suspect.probability();
        }
      }
    }

    double share() {
      return (double) right / count;
    }

    double expected() {
      return promised / count;
    }
  }

  private static Given sittings(List<Hypothesis> truths, long seed) {
    Given given = new Given();
    long next = seed;
    for (Hypothesis truth : truths) {
      int before = given.count;
      Trial.Result result =
          Sittings.TRIAL.run(
              truth,
              next++,
              (diagnosis, survey) -> {
                if (given.count == before) {
                  given.take(survey.outlook(), truth);
                }
                return Trial.PROPOSED.pick(diagnosis, survey);
              });
      if (given.count == before) {
        given.take(result.last(), truth);
      }
    }
    return given;
  }

  @Test
  @Tag("slow")
  void suspectsGivenAboutSeventyPercentAreRightAboutThatOften() {
    Given given = sittings(Sittings.drawn(5, 600), 5000);
    assertThat(given.count).as("suspects given 60 to 80 %").isGreaterThan(100);
    assertThat(given.share()).isBetween(given.expected() - 0.12, given.expected() + 0.12);
  }
}
