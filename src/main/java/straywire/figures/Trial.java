package straywire.figures;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import straywire.casebook.SimulatedBench;
import straywire.faults.Hypothesis;
import straywire.module.BenchLog;
import straywire.module.Entry;
import straywire.module.Module;
import straywire.observe.Instruments;
import straywire.observe.ReadingTable;
import straywire.observe.Step;
import straywire.observe.StepSeconds;
import straywire.ranking.Diagnosis;
import straywire.steps.Outlook;
import straywire.steps.Outlooks;
import straywire.steps.Outlooks.Survey;
import straywire.steps.Questions;

/**
 * One simulated sitting: the by-hand exercise from power-up until something deviates from a healthy
 * module, then the steps proposed until the tool stops of itself.
 */
public final class Trial {
  /** A sitting that takes more steps than this is given up. */
  public static final int MOST_STEPS = 60;

  private final Module module;
  private final List<Hypothesis> hypotheses;
  private final Instruments instruments;
  private final ReadingTable table = ReadingTable.shipped();
  private final StepSeconds seconds = StepSeconds.shipped();
  private final Outlooks outlooks;

  /**
   * For trials of one module.
   *
   * @param hypotheses single faults, and "nothing is wrong" first
   */
  public Trial(Module module, List<Hypothesis> hypotheses, Instruments instruments) {
    this.module = module;
    this.hypotheses = List.copyOf(hypotheses);
    this.instruments = instruments;
    outlooks = new Outlooks(seconds, Questions.none(module));
  }

  /**
   * How a trial went.
   *
   * @param deviated whether the exercise showed anything a healthy module does not
   * @param found steps after which the truth's group was first for the first time
   * @param right whether it was first when the tool stopped
   * @param steps steps until the tool stopped
   * @param handSeconds expected time of the hand for them
   * @param last how the sitting stood at the end
   * @param opening entries of the log before the first step
   * @param log everything done and read
   */
  public record Result(
      boolean deviated,
      Optional<Integer> found,
      boolean right,
      int steps,
      double handSeconds,
      Outlook last,
      int opening,
      BenchLog log) {
    /** True when the truth's group was first after at most {@code most} steps. */
    public boolean foundIn(int most) {
      return found.isPresent() && found.get() <= most;
    }
  }

  /** Picks the next step when the outlook is open. */
  public interface Policy {
    Step pick(Diagnosis diagnosis, Survey survey);
  }

  /** The step the tool proposes. */
  public static final Policy PROPOSED =
      (diagnosis, survey) -> survey.outlook().next().orElseThrow().step();

  /** Sees how a sitting stands after the opening and after each step. */
  public interface Watcher {
    void stands(Diagnosis diagnosis, Survey survey, Hypothesis truth, boolean deviated);
  }

  /** A sitting at a bench with this fault in it. */
  public Result run(Hypothesis truth, long seed) {
    return run(truth, seed, PROPOSED);
  }

  /** The same with another choice of steps. */
  public Result run(Hypothesis truth, long seed, Policy policy) {
    return run(truth, seed, policy, (diagnosis, survey, now, deviated) -> {});
  }

  /** The same, watched. */
  public Result run(Hypothesis truth, long seed, Policy policy, Watcher watcher) {
    SimulatedBench bench = new SimulatedBench(module, truth, table, seed);
    Diagnosis diagnosis = new Diagnosis(module, hypotheses, table);
    Diagnosis healthy = new Diagnosis(module, hypotheses.subList(0, 1), table);
    BenchLog log = new BenchLog(module.name(), truth.words(), List.of());
    boolean deviated = false;
    for (Entry entry : opening(bench, healthy)) {
      diagnosis.accept(entry, h -> 0);
      log = log.with(entry);
      deviated = healthy.slips() > 0;
    }
    int opening = diagnosis.size();
    Survey survey = outlooks.survey(diagnosis, instruments);
    watcher.stands(diagnosis, survey, bench.truth(), deviated);
    Outlook outlook = survey.outlook();
    Optional<Integer> found = leads(outlook, bench.truth()) ? Optional.of(0) : Optional.empty();
    int steps = 0;
    double spent = 0;
    while (outlook.verdict() == Outlook.Verdict.OPEN && steps < MOST_STEPS) {
      Step step = policy.pick(diagnosis, survey);
      for (Entry entry : bench.perform(step)) {
        diagnosis.accept(entry, h -> 0);
        log = log.with(entry);
      }
      steps++;
      spent += seconds.of(step);
      survey = outlooks.survey(diagnosis, instruments);
      watcher.stands(diagnosis, survey, bench.truth(), deviated);
      outlook = survey.outlook();
      if (found.isEmpty() && leads(outlook, bench.truth())) {
        found = Optional.of(steps);
      }
    }
    boolean right = leads(outlook, bench.truth());
    return new Result(deviated, found, right, steps, spent, outlook, opening, log);
  }

  /** The by-hand exercise with what is seen, up to and including the first deviation. */
  private List<Entry> opening(SimulatedBench bench, Diagnosis healthy) {
    List<Entry> entries = new ArrayList<>();
    for (Entry step : module.exercise()) {
      Entry entry = step;
      if (step instanceof Entry.Look look) {
        entry = bench.look(look.what());
      } else {
        bench.act(step);
      }
      entries.add(entry);
      healthy.accept(entry, h -> 0);
      if (healthy.slips() > 0) {
        break;
      }
    }
    return entries;
  }

  private static boolean leads(Outlook outlook, Hypothesis truth) {
    return outlook.suspects().get(0).members().stream().anyMatch(h -> h.id().equals(truth.id()));
  }
}
