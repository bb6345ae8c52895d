package straywire.casebook;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.stream.LongStream;
import straywire.advice.Advice;
import straywire.advice.Leader;
import straywire.advice.RuleBase;
import straywire.faults.Hypothesis;
import straywire.figures.Trial;
import straywire.module.BenchLog;
import straywire.module.Entry;
import straywire.module.EntryWords;
import straywire.module.Module;
import straywire.module.ModuleFile;
import straywire.observe.Instruments;
import straywire.parts.ShippedParts;
import straywire.ranking.Diagnosis;
import straywire.steps.Outlook;
import straywire.steps.Outlook.Suspect;

/** The demo module at a simulated bench, and logs about it in few words. */
final class BeatMemory {
  static final Path FOLDER = Path.of("cases/beat-memory");
  static final Module MODULE =
      ModuleFile.readShipped(FOLDER.resolve("module.yaml"), new ShippedParts());
  static final RuleBase RULES = RuleBase.shipped();
  static final Workbench WORKBENCH = new Workbench(MODULE, RULES);

  private static final Trial TRIAL = new Trial(MODULE, WORKBENCH.hypotheses(), Instruments.USUAL);
  private static final Trial AT_THE_LAMPS =
      new Trial(MODULE, WORKBENCH.hypotheses(), Instruments.LAMPS_ONLY);
  private static final int LEADERS = 3;

  private BeatMemory() {}

  /** A fault, or several joined by {@code +}, by id. */
  static Hypothesis fault(String id) {
    return WORKBENCH
        .hypothesis(id)
        .orElseThrow(() -> new IllegalArgumentException("No fault is called " + id));
  }

  static Trial.Result trial(String fault, long seed) {
    return TRIAL.run(fault(fault), seed);
  }

  static Trial.Result trialAtTheLamps(String fault, long seed) {
    return AT_THE_LAMPS.run(fault(fault), seed);
  }

  static SimulatedBench bench(String fault, long seed) {
    return new SimulatedBench(MODULE, fault(fault), WORKBENCH.table(), seed);
  }

  static List<Long> seeds(int howMany) {
    return LongStream.range(0, howMany).boxed().toList();
  }

  /** A log of typed lines. */
  static BenchLog log(String... lines) {
    EntryWords words = new EntryWords(MODULE);
    BenchLog log = new BenchLog(MODULE.name(), "", List.of());
    for (String line : lines) {
      log = log.with(words.parse(line));
    }
    return log;
  }

  /** The entries as a person would type them. */
  static List<String> typed(List<Entry> entries) {
    EntryWords words = new EntryWords(MODULE);
    return entries.stream().map(words::print).toList();
  }

  static List<Entry> opening(Trial.Result result) {
    return entries(result.log()).subList(0, result.opening());
  }

  /** What the steps proposed left in the log. */
  static List<Entry> steps(Trial.Result result) {
    List<Entry> entries = entries(result.log());
    return entries.subList(result.opening(), entries.size());
  }

  static List<Entry> entries(BenchLog log) {
    return log.lines().stream().map(BenchLog.Line::entry).toList();
  }

  /** The diagnosis after some entries, without any word of the rules. */
  static Diagnosis after(List<Entry> entries) {
    Diagnosis diagnosis = WORKBENCH.diagnosis();
    entries.forEach(entry -> diagnosis.accept(entry, h -> 0));
    return diagnosis;
  }

  static Outlook outlook(Diagnosis diagnosis, Instruments instruments) {
    return WORKBENCH.outlooks().of(diagnosis, instruments);
  }

  /** The diagnosis of a log, weighed by the rules. */
  static Diagnosis weighed(BenchLog log) {
    Replay replay = new Replay(WORKBENCH);
    replay.follow(log);
    return replay.diagnosis();
  }

  /** Place from 1 of the group that a fault is in; 0 when it is in none. */
  static int place(Outlook outlook, String fault) {
    for (int i = 0; i < outlook.suspects().size(); i++) {
      if (ids(outlook.suspects().get(i)).contains(fault)) {
        return i + 1;
      }
    }
    return 0;
  }

  static List<String> ids(Suspect suspect) {
    return suspect.members().stream().map(Hypothesis::id).toList();
  }

  /**
   * What the rules say after a log.
   *
   * @param fighting ids of the faults under which two outputs fight as the log leaves the controls
   */
  static Advice advice(BenchLog log, Outlook outlook, List<String> fighting) {
    List<Leader> leaders = new ArrayList<>();
    for (Suspect suspect : outlook.suspects().subList(0, LEADERS)) {
      Hypothesis first = suspect.first();
      leaders.add(
          new Leader(
              leaders.size() + 1, first, suspect.probability(), fighting.contains(first.id())));
    }
    return RULES.advise(MODULE, log, leaders, new TreeMap<>(Map.of()));
  }
}
