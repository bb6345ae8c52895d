package straywire.figures;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import straywire.advice.RuleBase;
import straywire.casebook.Workbench;
import straywire.figures.Figures.Way;
import straywire.module.ModuleFile;
import straywire.observe.Instruments;
import straywire.parts.ShippedParts;
import straywire.ranking.Diagnosis;

@Tag("slow")
class FiguresTest {
  private static final Workbench WORKBENCH =
      new Workbench(
          ModuleFile.read(Path.of("cases/beat-memory/module.yaml"), new ShippedParts()),
          RuleBase.shipped());

  private static final int FEW = WORKBENCH.hypotheses().size() / 4;

  private static Figures figures() {
    return new Figures(WORKBENCH, Instruments.USUAL, 3, 2, FiguresTest::answering);
  }

  private static WarmTime.Answering answering() {
    Diagnosis diagnosis = WORKBENCH.diagnosis();
    return entry -> diagnosis.accept(entry, hypothesis -> 0);
  }

  @Test
  void everyFaultIsLookedForAndEverySecondOneInEveryWay() {
    Figures figures = figures();

    figures.run(FEW, (done, all) -> true);

    assertThat(figures.tool().sittings()).isEqualTo(5);
    assertThat(figures.compared().keySet()).containsExactly(Way.values());
    assertThat(figures.compared().values()).extracting(FiguresRow::sittings).containsOnly(3);
    assertThat(figures.compared().values())
        .extracting(row -> row.shown().sittings())
        .containsOnly(figures.compared().get(Way.TOOL).shown().sittings());
    assertThat(figures.tool().visible()).isPositive();
    assertThat(figures.tool().first()).isPositive();
    assertThat(figures.tool().handSeconds().mean())
        .isGreaterThan(7 * figures.tool().steps().mean());
    assertThat(figures.calibration()).isNotEmpty();
  }

  @Test
  void theSameSeedGivesTheSameFigures() {
    Figures one = figures();
    Figures other = figures();

    one.run(FEW, (done, all) -> true);
    other.run(FEW, (done, all) -> true);

    for (Way way : Way.values()) {
      assertThat(other.compared().get(way).handSeconds())
          .isEqualTo(one.compared().get(way).handSeconds());
    }
    assertThat(other.calibration()).isEqualTo(one.calibration());
    assertThat(other.stepLoss()).isEqualTo(one.stepLoss());
    assertThat(other.greedyOverBest()).isEqualTo(one.greedyOverBest());
    assertThat(one.stepLoss().count()).isPositive();
    assertThat(one.greedyOverBest().mean()).isGreaterThanOrEqualTo(1);
  }

  @Test
  void whatWasStoppedKeepsWhatItHasAndSaysSo() {
    Figures figures = figures();

    figures.run(FEW, (done, all) -> done < 1);

    assertThat(figures.tool().sittings()).isEqualTo(1);
    String page = FiguresPage.of(figures, "figures", false);
    assertThat(page)
        .contains("Stopped before its end")
        .contains("| single faults simulated, of " + (WORKBENCH.hypotheses().size() - 1) + " | 1 |")
        .contains("| **all** | " + WORKBENCH.hypotheses().size() + " |");
  }

  @Test
  void theTableOfModulesHasARowForEachAndNamesWhatWasMissed() {
    Figures figures = figures();
    figures.run(FEW, (done, all) -> true);

    FiguresTable table = new FiguresTable();
    table.add(figures);
    String page = table.page("figures", true);

    assertThat(page)
        .contains("| beat-memory | 5 of " + (WORKBENCH.hypotheses().size() - 1) + " |")
        .contains("| beat-memory | " + WORKBENCH.hypotheses().size() + " |");
    if (figures.tool().missed().isEmpty()) {
      assertThat(page).contains("None of those looked for.");
    } else {
      assertThat(page).contains(figures.tool().missed().get(0));
    }
  }
}
