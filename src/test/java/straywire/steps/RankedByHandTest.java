package straywire.steps;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import org.junit.jupiter.api.Test;
import straywire.faults.Hypothesis;
import straywire.format.TextFile;
import straywire.module.End;
import straywire.module.Entry;
import straywire.module.Point;
import straywire.ranking.Bank;
import straywire.ranking.Posterior;

/** The tables of docs/how-the-ranking-thinks.md are what the ranking reckons. */
class RankedByHandTest {
  private static final Point LEG = new Point(End.pin("U1", 15), true);
  private static final Point ROW = new Point(End.pin("U1", 15), false);

  /** The numbers of the rows that begin with this hypothesis, table by table. */
  private static List<double[]> rows(String hypothesis) {
    List<double[]> rows = new ArrayList<>();
    for (String line : TextFile.read(Path.of("docs/how-the-ranking-thinks.md")).split("\n", -1)) {
      if (line.startsWith("| " + hypothesis + " |")) {
        String[] cells = line.split("\\|", -1);
        rows.add(
            Arrays.stream(cells, 2, cells.length - 1)
                .map(String::strip)
                .mapToDouble(Double::parseDouble)
                .toArray());
      }
    }
    return rows;
  }

  @Test
  void theTablesOfThePageAreWhatTheRankingMakesOfABeepAndALook() {
    List<double[]> sound = rows("nothing is wrong");
    List<double[]> bent = rows("U1 pin 15 bent under");
    List<Entry> entries =
        List.of(new Entry.Continuity(LEG, ROW, false), new Entry.Inspected("leg U1.15", false));
    assertThat(sound).hasSize(entries.size());
    assertThat(bent).hasSize(entries.size());
    Hypothesis nothing = DiagnosisBench.sound(sound.get(0)[0]);
    Hypothesis leg = DiagnosisBench.leg("U1.15", bent.get(0)[0]);
    Bank bank = DiagnosisBench.bank(nothing, leg);
    double[] now = {sound.get(0)[0], bent.get(0)[0]};
    for (int i = 0; i < entries.size(); i++) {
      bank.accept(entries.get(i), new double[2]);
      double[][] page = {sound.get(i), bent.get(i)};
      double[] logs = new double[2];
      double mass = page[0][2] + page[1][2];
      for (int h = 0; h < 2; h++) {
        logs[h] = bank.logLikelihoodOf(i, h);
        assertThat(page[h][0]).as("before").isCloseTo(now[h], within(5e-5));
        assertThat(Math.exp(logs[h])).as("likelihood").isCloseTo(page[h][1], within(1e-9));
        assertThat(page[h][2]).as("product").isCloseTo(page[h][0] * page[h][1], within(1e-9));
        assertThat(page[h][3]).as("posterior").isCloseTo(page[h][2] / mass, within(5e-5));
      }
      now = Posterior.of(now, logs);
      assertThat(now).containsExactly(new double[] {page[0][3], page[1][3]}, within(5e-5));
    }
  }
}
