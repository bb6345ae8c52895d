package straywire.casebook;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import straywire.faults.Hypothesis;
import straywire.module.BenchLog;
import straywire.module.Entry;
import straywire.module.Module;
import straywire.observe.Instruments;
import straywire.steps.Outlook;
import straywire.steps.Outlook.Suspect;

/**
 * Replays one case. When the log ends before the true cause is first, a simulated bench with the
 * true cause goes on with the steps proposed, as many as the case allows.
 */
final class CaseReplay {
  private final Workbench workbench;
  private final Module module;
  private final BenchLog log;
  private final Entry.Expected expected;
  private final Replay replay;
  private BenchLog until;
  private Instruments instruments = Instruments.USUAL;

  /** Faults that are still on the board. */
  private final List<String> left = new ArrayList<>();

  private boolean deviated;
  private int steps;
  private Optional<Integer> found = Optional.empty();
  private int rank;

  CaseReplay(Workbench workbench, BenchLog log) {
    this.workbench = workbench;
    this.log = log;
    module = workbench.module();
    List<BenchLog.Line> lines = log.lines();
    expected = (Entry.Expected) lines.get(lines.size() - 1).entry();
    left.addAll(expected.faults());
    replay = new Replay(workbench);
    until = new BenchLog(log.module(), log.title(), List.of());
  }

  CaseScore score(Path file) {
    for (BenchLog.Line line : log.standing()) {
      Entry entry = line.entry();
      if (entry instanceof Entry.Instruments i) {
        instruments = Instruments.of(i.atHand());
      }
      if (cures(entry) && !left.isEmpty()) {
        left.removeIf(id -> mends(entry, id));
        deviated &= left.isEmpty();
      }
      if (left.isEmpty() && !expected.faults().isEmpty()) {
        // What follows only confirms.
        break;
      }
      take(entry);
    }
    if (found.isEmpty()) {
      goOn();
    }
    return new CaseScore(file, log.title(), rank, found, expected.withinSteps());
  }

  private static boolean cures(Entry entry) {
    return entry instanceof Entry.Repaired || entry instanceof Entry.Exchanged;
  }

  private boolean mends(Entry cure, String id) {
    return workbench
        .hypothesis(id)
        .map(h -> straywire.ranking.AfterRepair.mends(cure, h))
        .orElse(false);
  }

  private void take(Entry entry) {
    until = until.with(entry);
    replay.follow(until);
    if (!reads(entry)) {
      return;
    }
    steps += deviated ? 1 : 0;
    deviated |= replay.diagnosis().slips() > 0;
    if (deviated || expected.faults().isEmpty()) {
      judge();
    }
  }

  private static boolean reads(Entry entry) {
    return entry instanceof Entry.Seen
        || entry instanceof Entry.Measured
        || entry instanceof Entry.Probed
        || entry instanceof Entry.Continuity
        || entry instanceof Entry.Inspected
        || entry instanceof Entry.Symptom;
  }

  private Outlook judge() {
    Outlook outlook = workbench.outlooks().of(replay.diagnosis(), instruments);
    rank = 0;
    for (int i = 0; i < outlook.suspects().size() && rank == 0; i++) {
      rank = holds(outlook.suspects().get(i)) ? i + 1 : 0;
    }
    if (rank != 1) {
      found = Optional.empty();
    } else if (found.isEmpty()) {
      found = Optional.of(steps);
    }
    return outlook;
  }

  /** One of what is left, or all of it together; nothing wrong when nothing is expected. */
  private boolean holds(Suspect suspect) {
    if (left.isEmpty()) {
      return suspect.healthy();
    }
    return suspect.members().stream()
        .filter(h -> !h.edits().isEmpty())
        .map(Hypothesis::id)
        .anyMatch(id -> left.containsAll(Workbench.singles(id)));
  }

  private void goOn() {
    Optional<Hypothesis> truth =
        left.isEmpty()
            ? Optional.of(workbench.nothingWrong())
            : workbench.hypothesis(String.join(straywire.faults.HypothesisPairs.PLUS, left));
    if (truth.isEmpty()) {
      return;
    }
    SimulatedBench bench = new SimulatedBench(module, truth.get(), workbench.table(), 1);
    until.standing().forEach(line -> bench.follow(line.entry()));
    Outlook outlook = judge();
    while (found.isEmpty()
        && steps < expected.withinSteps()
        && outlook.verdict() == Outlook.Verdict.OPEN) {
      for (Entry entry : bench.perform(outlook.next().orElseThrow().step())) {
        until = until.with(entry);
      }
      replay.follow(until);
      steps++;
      outlook = judge();
    }
  }
}
