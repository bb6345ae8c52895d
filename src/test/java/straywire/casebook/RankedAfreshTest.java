package straywire.casebook;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import straywire.advice.RuleBase;
import straywire.figures.Trial;
import straywire.module.BenchLog;
import straywire.module.ModuleFile;
import straywire.observe.Instruments;
import straywire.parts.ShippedParts;
import straywire.ranking.Diagnosis;
import straywire.steps.Outlook;

/** What is kept from one entry to the next, to be fast, must not show. */
@Tag("slow")
class RankedAfreshTest {
  private static final Workbench WORKBENCH =
      new Workbench(
          ModuleFile.read(Path.of("cases/beat-memory/module.yaml"), new ShippedParts()),
          RuleBase.shipped());

  @ParameterizedTest
  @ValueSource(
      strings = {
        "jumper-missing U1.3-U2.3",
        "output-stuck-low U5.7",
        "jumper-missing U1.3-U2.3 + led-dead R7"
      })
  void anOutlookAlongALogIsThatOfTheWholeLogFedAfresh(String fault) {
    BenchLog log = log(fault);
    Diagnosis along = WORKBENCH.diagnosis();
    List<Outlook> outlooks = new ArrayList<>();
    for (int size = 1; size <= log.standing().size(); size++) {
      along.accept(log.standing().get(size - 1).entry(), h -> 0);
      outlooks.add(outlook(along));
      if (size % 5 == 0) {
        assertThat(outlooks.get(size - 1)).isEqualTo(outlook(afresh(log, size)));
      }
    }
    for (int size = log.standing().size() - 1; size > 0; size--) {
      along.takeBack();
      assertThat(outlook(along)).isEqualTo(outlooks.get(size - 1));
    }
  }

  private static BenchLog log(String fault) {
    return new Trial(WORKBENCH.module(), WORKBENCH.hypotheses(), Instruments.USUAL)
        .run(WORKBENCH.hypothesis(fault).orElseThrow(), 1)
        .log();
  }

  private static Diagnosis afresh(BenchLog log, int size) {
    Diagnosis diagnosis = WORKBENCH.diagnosis();
    log.standing().subList(0, size).forEach(line -> diagnosis.accept(line.entry(), h -> 0));
    return diagnosis;
  }

  private static Outlook outlook(Diagnosis diagnosis) {
    return WORKBENCH.outlooks().of(diagnosis, Instruments.USUAL);
  }
}
