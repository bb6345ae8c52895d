package straywire.casebook;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.function.ToDoubleFunction;
import java.util.stream.Stream;
import straywire.advice.Weigh;
import straywire.faults.Hypothesis;
import straywire.module.BenchLog;
import straywire.module.Entry;
import straywire.module.Module;
import straywire.ranking.Diagnosis;

/**
 * A diagnosis that follows a bench log, weighed by the rules. Only what changed is taken in anew:
 * entries that were withdrawn, came back or weigh otherwise cost the replay of what stands after
 * them.
 */
public final class Replay {
  private final Workbench workbench;
  private final Diagnosis diagnosis;
  private final List<Fed> fed = new ArrayList<>();

  /**
   * An entry as taken in, with what the rules made of it then.
   *
   * @param told reported unasked before it since the last repair, when it is a symptom
   */
  private record Fed(BenchLog.Line line, List<Weigh> weights, List<Entry.Symptom> told) {
    /** Natural log weight of each hypothesis by rule. */
    double byRule(Module module, Hypothesis hypothesis) {
      return weights.stream()
          .filter(w -> w.concerns(module, hypothesis))
          .mapToDouble(w -> Math.log(w.factor()))
          .sum();
    }
  }

  public Replay(Workbench workbench) {
    this.workbench = workbench;
    diagnosis = workbench.diagnosis();
  }

  /** Brings the diagnosis to where a log stands. */
  public void follow(BenchLog log) {
    List<Fed> wanted = wanted(log);
    int same = 0;
    while (same < fed.size() && same < wanted.size() && fed.get(same).equals(wanted.get(same))) {
      same++;
    }
    while (fed.size() > same) {
      diagnosis.takeBack();
      fed.remove(fed.size() - 1);
    }
    for (Fed next : wanted.subList(same, wanted.size())) {
      diagnosis.accept(next.line().entry(), logWeights(next));
      fed.add(next);
    }
  }

  /** Natural log weight of each hypothesis from what is not simulated along the log. */
  private ToDoubleFunction<Hypothesis> logWeights(Fed next) {
    Module module = workbench.module();
    if (next.line().entry() instanceof Entry.Symptom answer) {
      return workbench.symptoms().weights(answer, next.told(), h -> next.byRule(module, h));
    }
    return h -> next.byRule(module, h);
  }

  private List<Fed> wanted(BenchLog log) {
    Map<Integer, List<Weigh>> weights = new TreeMap<>();
    workbench
        .rules()
        .advise(workbench.module(), log, List.of(), Map.of())
        .weights()
        .forEach(w -> weights.computeIfAbsent(w.entry(), n -> new ArrayList<>()).add(w));
    List<Fed> wanted = new ArrayList<>();
    List<Entry.Symptom> told = List.of();
    for (BenchLog.Line line : log.standing()) {
      Entry entry = line.entry();
      boolean speaks = entry instanceof Entry.Symptom;
      List<Weigh> byRule = weights.getOrDefault(line.number(), List.of());
      wanted.add(new Fed(line, byRule, speaks ? told : List.of()));
      if (entry instanceof Entry.Repaired || entry instanceof Entry.Exchanged) {
        told = List.of();
      } else if (entry instanceof Entry.Symptom symptom && symptom.volunteered()) {
        told = Stream.concat(told.stream(), Stream.of(symptom)).toList();
      }
    }
    return wanted;
  }

  public Diagnosis diagnosis() {
    return diagnosis;
  }

  /** The entries that count, in the order the diagnosis numbers them from 0. */
  public List<BenchLog.Line> standing() {
    return fed.stream().map(Fed::line).toList();
  }

  /** Those since the last repair, without the repair itself. */
  public List<BenchLog.Line> sinceRepair() {
    return standing().subList(diagnosis.phaseStart(), fed.size());
  }

  /** Number in the log of the entry that the diagnosis calls {@code index}. */
  public int number(int index) {
    return fed.get(index).line().number();
  }

  /** What the rules made of entry {@code number}, with their reasons. */
  public List<Weigh> weights(int number) {
    return fed.stream()
        .filter(f -> f.line().number() == number)
        .findFirst()
        .map(Fed::weights)
        .orElse(List.of());
  }
}
