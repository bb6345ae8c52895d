package straywire.properties;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Collection;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Random;
import java.util.TreeMap;
import straywire.advice.RuleBase;
import straywire.casebook.SimulatedBench;
import straywire.faults.FaultExpansion;
import straywire.faults.Hypothesis;
import straywire.faults.HypothesisPairs;
import straywire.faults.Mechanism;
import straywire.faults.PriorsFile;
import straywire.figures.Trial;
import straywire.module.BenchLog;
import straywire.module.Entry;
import straywire.module.Module;
import straywire.module.ModuleFile;
import straywire.observe.Instruments;
import straywire.observe.ReadingTable;
import straywire.observe.StepSeconds;
import straywire.parts.ShippedParts;
import straywire.ranking.Diagnosis;
import straywire.steps.Outlook;
import straywire.steps.Outlooks;
import straywire.steps.Questions;

/** Simulated sittings at the demo module, all from a seed. */
final class Sittings {
  static final Module MODULE =
      ModuleFile.readShipped(Path.of("cases", "beat-memory", "module.yaml"), new ShippedParts());

  /** "Nothing is wrong" first, then every single fault the rules propose. */
  static final List<Hypothesis> HYPOTHESES =
      FaultExpansion.expandAll(MODULE, RuleBase.shipped().propose(MODULE), PriorsFile.shipped());

  static final ReadingTable TABLE = ReadingTable.shipped();
  static final Outlooks OUTLOOKS = new Outlooks(StepSeconds.shipped(), Questions.none(MODULE));
  static final Trial TRIAL = new Trial(MODULE, HYPOTHESES, Instruments.USUAL);

  private Sittings() {}

  static Hypothesis nothingWrong() {
    return HYPOTHESES.get(0);
  }

  /** A hypothesis by its id, of one fault or of two. */
  static Hypothesis hypothesis(String id) {
    List<Hypothesis> singles = new ArrayList<>();
    for (String single : HypothesisPairs.members(id)) {
      singles.add(
          HYPOTHESES.stream()
              .filter(h -> h.id().equals(single))
              .findFirst()
              .orElseThrow(() -> new IllegalArgumentException("No rule proposes " + single)));
    }
    return singles.size() == 1
        ? singles.get(0)
        : HypothesisPairs.pair(singles.get(0), singles.get(1), nothingWrong().prior())
            .orElseThrow();
  }

  /** Faults drawn as often as their priors say, never "nothing is wrong". */
  static List<Hypothesis> drawn(long seed, int count) {
    Random random = new Random(seed);
    double faults = 1 - nothingWrong().prior();
    List<Hypothesis> drawn = new ArrayList<>();
    while (drawn.size() < count) {
      double left = random.nextDouble() * faults;
      int next = 1;
      while (next < HYPOTHESES.size() - 1 && left > HYPOTHESES.get(next).prior()) {
        left -= HYPOTHESES.get(next).prior();
        next++;
      }
      drawn.add(HYPOTHESES.get(next));
    }
    return drawn;
  }

  /** One fault of each mechanism that is proposed. */
  static Collection<Hypothesis> ofEachMechanism(long seed) {
    Random random = new Random(seed);
    Map<Mechanism, List<Hypothesis>> all = new TreeMap<>();
    HYPOTHESES.forEach(h -> all.computeIfAbsent(h.mechanism(), m -> new ArrayList<>()).add(h));
    all.remove(Mechanism.NOTHING_WRONG);
    return all.values().stream().map(list -> list.get(random.nextInt(list.size()))).toList();
  }

  static Diagnosis diagnosis() {
    return new Diagnosis(MODULE, HYPOTHESES, TABLE);
  }

  static Diagnosis diagnosis(Collection<Entry> entries) {
    Diagnosis diagnosis = diagnosis();
    entries.forEach(entry -> diagnosis.accept(entry, h -> 0));
    return diagnosis;
  }

  static List<Entry> entries(BenchLog log) {
    return log.lines().stream().map(BenchLog.Line::entry).toList();
  }

  static SimulatedBench bench(Hypothesis truth, long seed) {
    return new SimulatedBench(MODULE, truth, TABLE, seed);
  }

  /** The first rounds of the by-hand exercise with what is seen at this bench. */
  static List<Entry> exercise(SimulatedBench bench, int steps) {
    List<Entry> entries = new ArrayList<>();
    for (Entry step : MODULE.exercise().subList(0, Math.min(steps, MODULE.exercise().size()))) {
      if (step instanceof Entry.Look look) {
        entries.add(bench.look(look.what()));
      } else {
        bench.act(step);
        entries.add(step);
      }
    }
    return entries;
  }

  static Outlook outlook(Diagnosis diagnosis) {
    return OUTLOOKS.of(diagnosis, Instruments.USUAL);
  }

  /** Whether the truth, or for a pair one of its faults, is in the group. */
  static boolean holds(Outlook.Suspect suspect, Hypothesis truth) {
    List<String> faults = HypothesisPairs.members(truth.id());
    return suspect.members().stream()
        .anyMatch(h -> h.id().equals(truth.id()) || faults.contains(h.id()));
  }

  /** Everything there is to see of a diagnosis, to the last bit of every number. */
  static String printout(Diagnosis diagnosis) {
    StringBuilder text = new StringBuilder();
    text.append(diagnosis.size()).append(' ').append(diagnosis.phaseStart()).append('\n');
    text.append(diagnosis.slips()).append(' ').append(diagnosis.state().controls()).append('\n');
    text.append(diagnosis.state().powered()).append('\n');
    for (Diagnosis.Candidate candidate : diagnosis.candidates()) {
      line(text, candidate.hypothesis().id(), candidate.probability());
    }
    Outlook outlook = outlook(diagnosis);
    text.append(outlook.verdict()).append('\n');
    line(text, "uncertainty", outlook.uncertainty());
    for (Outlook.Suspect suspect : outlook.suspects()) {
      line(text, "group", suspect.probability());
      suspect.members().forEach(member -> text.append(' ').append(member.id()).append('\n'));
      suspect.grounds().forEach(g -> line(text, " ground " + g.entry(), g.logFactor()));
    }
    outlook.next().ifPresent(next -> proposal(text, next));
    outlook.others().forEach(other -> proposal(text, other));
    return text.toString();
  }

  private static void proposal(StringBuilder text, Outlook.Proposal proposal) {
    line(text, proposal.step() + " " + proposal.expected(), proposal.bits());
  }

  private static void line(StringBuilder text, String what, double number) {
    text.append(String.format(Locale.ROOT, "%s %a%n", what, number));
  }
}
