package straywire.casebook;

import java.util.ArrayList;
import java.util.List;
import straywire.diagnosis.Diagnosis;
import straywire.module.BenchLog;

/**
 * A diagnosis that follows a bench log. Only what changed is taken in anew: entries that were
 * withdrawn, or came back, cost the replay of what stands after them.
 */
public final class Replay {
  private final Diagnosis diagnosis;
  private final List<BenchLog.Line> fed = new ArrayList<>();

  public Replay(Workbench workbench) {
    diagnosis = workbench.diagnosis();
  }

  /** Brings the diagnosis to where a log stands. */
  public void follow(BenchLog log) {
    List<BenchLog.Line> standing = log.standing();
    int same = 0;
    while (same < fed.size()
        && same < standing.size()
        && fed.get(same).equals(standing.get(same))) {
      same++;
    }
    while (fed.size() > same) {
      diagnosis.takeBack();
      fed.remove(fed.size() - 1);
    }
    for (BenchLog.Line line : standing.subList(same, standing.size())) {
      diagnosis.accept(line.entry(), hypothesis -> 0);
      fed.add(line);
    }
  }

  public Diagnosis diagnosis() {
    return diagnosis;
  }

  /** The entries that count, in the order the diagnosis numbers them from 0. */
  public List<BenchLog.Line> standing() {
    return List.copyOf(fed);
  }

  /** Those since the last repair, without the repair itself. */
  public List<BenchLog.Line> sinceRepair() {
    return List.copyOf(fed.subList(diagnosis.phaseStart(), fed.size()));
  }

  /** Number in the log of the entry that the diagnosis calls {@code index}. */
  public int number(int index) {
    return fed.get(index).number();
  }
}
