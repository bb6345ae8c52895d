package straywire.properties;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.atomic.AtomicInteger;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import straywire.casebook.SimulatedBench;
import straywire.faults.Hypothesis;
import straywire.module.Entry;
import straywire.observe.Instruments;
import straywire.ranking.Diagnosis;
import straywire.steps.Outlook;

/** Taking entries back, replaying them, and what an entry costs. */
class UndoTest {
  private static final Hypothesis PAIR =
      Sittings.hypothesis("jumper-missing GND-U1.2 + inverter-bypassed U4.5-U4.6");

  /** A log that grows pairs, then a repair, an exchange and a look after each. */
  private static List<Entry> longLog() {
    SimulatedBench bench = Sittings.bench(PAIR, 1);
    List<Entry> log = new ArrayList<>(Sittings.exercise(bench, 12));
    Hypothesis left = Sittings.hypothesis("inverter-bypassed U4.5-U4.6");
    SimulatedBench mended = Sittings.bench(left, 2);
    log.add(new Entry.Power(false));
    log.add(new Entry.Repaired("jumper-missing GND-U1.2"));
    log.addAll(Sittings.exercise(mended, 6));
    log.add(new Entry.Power(false));
    log.add(new Entry.Exchanged("U4"));
    log.addAll(Sittings.exercise(mended, 3));
    return log;
  }

  private static boolean pairs(Diagnosis diagnosis) {
    return diagnosis.candidates().stream().anyMatch(c -> c.hypothesis().id().contains(" + "));
  }

  @Test
  void anEntryTakenBackLeavesNoTraceAlsoAcrossRepairsAndPairs() {
    List<Entry> log = longLog();
    List<String> printouts = new ArrayList<>();
    Diagnosis diagnosis = Sittings.diagnosis();
    boolean grew = false;
    printouts.add(Sittings.printout(diagnosis));
    for (Entry entry : log) {
      diagnosis.accept(entry, h -> 0);
      printouts.add(Sittings.printout(diagnosis));
      grew |= pairs(diagnosis);
    }
    assertThat(grew).as("pairs were grown, so that taking them back is tried").isTrue();
    assertThat(diagnosis.phaseStart()).isPositive();
    for (int size = log.size() - 1; size >= 0; size--) {
      diagnosis.takeBack();
      assertThat(Sittings.printout(diagnosis)).isEqualTo(printouts.get(size));
    }
    diagnosis.takeBack();
    assertThat(diagnosis.size()).isZero();
  }

  @Test
  void aLogTakenBackAndGivenAgainEndsTheSame() {
    List<Entry> log = longLog();
    Diagnosis diagnosis = Sittings.diagnosis(log);
    String end = Sittings.printout(diagnosis);
    for (int i = 0; i < 14; i++) {
      diagnosis.takeBack();
    }
    diagnosis.accept(new Entry.Exchanged("U5"), h -> 0);
    diagnosis.accept(new Entry.Power(true), h -> 0);
    diagnosis.takeBack();
    diagnosis.takeBack();
    log.subList(log.size() - 14, log.size()).forEach(entry -> diagnosis.accept(entry, h -> 0));
    assertThat(Sittings.printout(diagnosis)).isEqualTo(end);
  }

  @Test
  void theSameLogTwiceGivesTheSameBytes() {
    List<Entry> log = longLog();
    assertThat(Sittings.printout(Sittings.diagnosis(log)))
        .isEqualTo(Sittings.printout(Sittings.diagnosis(log)));
  }

  @Test
  @Tag("slow")
  void takingBackAWholeSittingGivesEveryEarlierOutlook() {
    for (Hypothesis truth : Sittings.drawn(11, 10)) {
      List<Entry> log = Sittings.entries(Sittings.TRIAL.run(truth, 11).log());
      List<String> printouts = new ArrayList<>();
      Diagnosis diagnosis = Sittings.diagnosis();
      for (Entry entry : log) {
        printouts.add(Sittings.printout(diagnosis));
        diagnosis.accept(entry, h -> 0);
      }
      for (int size = log.size() - 1; size >= 0; size--) {
        diagnosis.takeBack();
        assertThat(Sittings.printout(diagnosis)).as(truth.id()).isEqualTo(printouts.get(size));
      }
    }
  }

  /** Each hypothesis that takes an entry in asks for its weight once, so asking is counted. */
  @Test
  void anAddedEntryCostsTheSameHoweverLongTheLogIsAndTakingBackCostsNothing() {
    SimulatedBench bench = Sittings.bench(Sittings.nothingWrong(), 1);
    List<Entry> log = Sittings.exercise(bench, Integer.MAX_VALUE);
    AtomicInteger asked = new AtomicInteger();
    Diagnosis diagnosis = Sittings.diagnosis();
    for (Entry entry : log) {
      int before = asked.get();
      diagnosis.accept(
          entry,
          h -> {
            asked.incrementAndGet();
            return 0;
          });
      assertThat(asked.get() - before).isEqualTo(Sittings.HYPOTHESES.size());
    }
    int before = asked.get();
    for (int i = 0; i < 30; i++) {
      diagnosis.takeBack();
    }
    assertThat(asked.get()).isEqualTo(before);
  }

  @Test
  void pairsReplayTheLogOnceWhenTheyComeInAndThenFollowIt() {
    AtomicInteger asked = new AtomicInteger();
    Diagnosis diagnosis = Sittings.diagnosis();
    List<Entry> log = Sittings.exercise(Sittings.bench(PAIR, 1), 40);
    int replays = 0;
    int singles = Sittings.HYPOTHESES.size();
    int entries = 0;
    for (Entry entry : log) {
      int pairsBefore = diagnosis.candidates().size() - singles;
      int before = asked.get();
      diagnosis.accept(
          entry,
          h -> {
            asked.incrementAndGet();
            return 0;
          });
      entries++;
      int cost = asked.get() - before;
      int pairs = diagnosis.candidates().size() - singles;
      if (cost != singles + pairsBefore) {
        replays++;
        assertThat(cost).isEqualTo(singles + pairsBefore + entries * pairs);
      }
    }
    assertThat(replays).isBetween(1, 3);
  }

  @Test
  void anOutlookIsTheSameHoweverOftenItIsAskedFor() {
    Diagnosis diagnosis = Sittings.diagnosis(Sittings.exercise(Sittings.bench(PAIR, 1), 8));
    Outlook first = Sittings.OUTLOOKS.of(diagnosis, Instruments.USUAL);
    Sittings.OUTLOOKS.of(diagnosis, Instruments.LAMPS_ONLY);
    assertThat(Sittings.OUTLOOKS.of(diagnosis, Instruments.USUAL)).isEqualTo(first);
  }
}
