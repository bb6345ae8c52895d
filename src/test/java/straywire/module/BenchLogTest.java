package straywire.module;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import org.junit.jupiter.api.Test;

class BenchLogTest {
  private static BenchLog log(Entry... entries) {
    BenchLog log = new BenchLog("beat-memory", "", List.of());
    for (Entry entry : entries) {
      log = log.with(entry);
    }
    return log;
  }

  private static List<Integer> standing(BenchLog log) {
    return log.standing().stream().map(BenchLog.Line::number).toList();
  }

  @Test
  void anUndoneEntryNoLongerStands() {
    assertThat(
            standing(log(new Entry.Power(true), new Entry.Press("write"), new Entry.Withdrawn(2))))
        .containsExactly(1);
  }

  @Test
  void undoingAnUndoBringsTheEntryBack() {
    assertThat(
            standing(
                log(
                    new Entry.Power(true),
                    new Entry.Press("write"),
                    new Entry.Withdrawn(2),
                    new Entry.Withdrawn(3))))
        .containsExactly(1, 2);
  }

  @Test
  void undoingThatAgainTakesItAwayAgain() {
    assertThat(
            standing(
                log(
                    new Entry.Power(true),
                    new Entry.Press("write"),
                    new Entry.Withdrawn(2),
                    new Entry.Withdrawn(3),
                    new Entry.Withdrawn(4))))
        .containsExactly(1);
  }
}
