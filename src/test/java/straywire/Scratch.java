package straywire;

import java.nio.file.Path;
import java.util.*;
import straywire.advice.RuleBase;
import straywire.casebook.SimulatedBench;
import straywire.diagnosis.*;
import straywire.faults.*;
import straywire.module.*;
import straywire.module.Module;
import straywire.parts.ShippedParts;

public final class Scratch {
  public static void main(String[] args) {
    long t0 = System.nanoTime();
    Module m = ModuleFile.readShipped(Path.of("cases/beat-memory/module.yaml"), new ShippedParts());
    long t1 = System.nanoTime();
    List<Suggestion> s = RuleBase.shipped().propose(m);
    long t2 = System.nanoTime();
    List<Hypothesis> h = FaultExpansion.expandAll(m, s, PriorsFile.shipped());
    long t3 = System.nanoTime();
    Map<Mechanism, Integer> count = new TreeMap<>();
    h.forEach(x -> count.merge(x.mechanism(), 1, Integer::sum));
    System.out.println(h.size() + " hypotheses " + count);
    Diagnosis d = new Diagnosis(m, h, ReadingTable.shipped());
    long t4 = System.nanoTime();
    System.out.printf(
        "load %d propose %d expand %d build %d ms%n",
        (t1 - t0) / 1000000, (t2 - t1) / 1000000, (t3 - t2) / 1000000, (t4 - t3) / 1000000);
    String want = args.length > 0 ? args[0] : "nothing-wrong";
    Hypothesis truth =
        h.stream()
            .filter(x -> x.id().equals(want))
            .findFirst()
            .orElseThrow(() -> new IllegalArgumentException("no " + want));
    SimulatedBench bench = new SimulatedBench(m, truth, ReadingTable.shipped(), 1);
    SimulatedBench good = new SimulatedBench(m, h.get(0), ReadingTable.shipped(), 1);
    Instruments ins = args.length > 1 ? Instruments.LAMPS_ONLY : Instruments.USUAL;
    int n = 0;
    for (Entry e : m.exercise()) {
      if (e instanceof Entry.Look l) {
        e = bench.look(l.what());
      } else {
        bench.act(e);
        good.act(e);
      }
      long a = System.nanoTime();
      d.accept(e, x -> 0);
      long b = System.nanoTime();
      if (e instanceof Entry.Seen seen) {
        Entry.Seen g = good.look(new ArrayList<>(seen.lamps().keySet()));
        System.out.println(show(seen) + " good " + show(g));
        print(d, ins);
        System.out.printf("   accept %.1f ms choose %.1f%n", (b - a) / 1e6, last);
        if (!args[args.length - 1].equals("all") && n > 0 && !show(seen).equals(show(g))) break;
        n++;
      }
    }
    for (int i = 0; i < 12; i++) {
      List<Diagnosis.Candidate> c = d.candidates();
      List<StepChoice.Worth<Step>> steps = d.steps(ins, StepSeconds.shipped());
      if (steps.isEmpty() || c.get(0).probability() > .98) break;
      Step step = steps.get(0).step();
      System.out.println("STEP " + step);
      for (Entry e : bench.perform(step)) {
        System.out.println("  " + e);
        d.accept(e, x -> 0);
      }
      print(d, ins);
    }
  }

  static double last;

  static String show(Entry.Seen s) {
    StringBuilder b = new StringBuilder();
    s.lamps().forEach((k, v) -> b.append(v.mark()));
    return b.toString();
  }

  static void print(Diagnosis d, Instruments ins) {
    List<Diagnosis.Candidate> c = d.candidates();
    for (int i = 0; i < 4; i++)
      System.out.printf("   %.3f %s%n", c.get(i).probability(), c.get(i).hypothesis().id());
    long a = System.nanoTime();
    List<StepChoice.Worth<Step>> steps = d.steps(ins, StepSeconds.shipped());
    last = (System.nanoTime() - a) / 1e6;
    for (int i = 0; i < Math.min(3, steps.size()); i++)
      System.out.printf(
          "      %.3f bits %.1f s %s%n",
          steps.get(i).bits(), steps.get(i).seconds(), steps.get(i).step());
  }
}
