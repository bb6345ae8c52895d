package straywire.figures;

import java.util.ArrayList;
import java.util.Collections;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Random;
import java.util.TreeMap;
import java.util.function.Supplier;
import straywire.casebook.Workbench;
import straywire.faults.Hypothesis;
import straywire.faults.Mechanism;
import straywire.module.BenchLog;
import straywire.observe.Instruments;
import straywire.observe.Step;
import straywire.observe.StepSeconds;
import straywire.ranking.Diagnosis;
import straywire.steps.HalfSplit;
import straywire.steps.Outlook.Suspect;
import straywire.steps.Outlook.Verdict;
import straywire.steps.Outlooks.Survey;
import straywire.steps.ReadingTree;
import straywire.steps.StepChoice;

/**
 * Measures how well and how fast faults of one module are found, over simulated benches. Can be
 * stopped between two faults; what was measured so far stands.
 */
public final class Figures {
  /** A sitting of the tool in this many has its step choices held against a full search. */
  private static final int FULL_SEARCH_EVERY = 16;

  /** Sittings whose logs are kept for measuring time; the first few warm up. */
  private static final int LOGS = 48;

  private static final int WARM_UP = 16;

  /** Moves of a control for measuring the simulation; the same number before that to warm up. */
  private static final int MOVES = 400;

  /** Suspects less probable than this are not held against the truth. */
  private static final double LEAST_STATED = 0.01;

  /** Ways of choosing the next step. Every one stops where the tool would. */
  public enum Way {
    TOOL("most bits per second of the hand (the tool)"),
    RANDOM("a useful step at random"),
    HALF_SPLIT("half-split on the signal path");

    private final String words;

    Way(String words) {
      this.words = words;
    }

    public String words() {
      return words;
    }
  }

  private final Workbench workbench;
  private final Instruments instruments;
  private final long seed;
  private final int baselineEvery;
  private final Supplier<WarmTime.Answering> sittings;
  private final Trial trial;
  private final FiguresRow tool = new FiguresRow();
  private final Map<Way, FiguresRow> compared = new EnumMap<>(Way.class);
  private final Calibration calibration = new Calibration();
  private final List<Double> losses = new ArrayList<>();
  private final List<Double> treeRatios = new ArrayList<>();
  private final List<BenchLog> logs = new ArrayList<>();

  /**
   * For one module.
   *
   * @param seed of what memories hold at power-up and of the random steps
   * @param baselineEvery one fault in so many is looked for in every way, 1 or more
   * @param sittings gives a fresh sitting over the module, whose answers are timed
   */
  public Figures(
      Workbench workbench,
      Instruments instruments,
      long seed,
      int baselineEvery,
      Supplier<WarmTime.Answering> sittings) {
    this.workbench = workbench;
    this.instruments = instruments;
    this.seed = seed;
    this.baselineEvery = baselineEvery;
    this.sittings = sittings;
    trial = new Trial(workbench.module(), workbench.hypotheses(), instruments);
    for (Way way : Way.values()) {
      compared.put(way, new FiguresRow());
    }
  }

  /**
   * Looks for every n-th single fault, in an order drawn from the seed, so that a part of them is a
   * fair sample; an observer hears of each and may stop it.
   */
  public void run(int every, Progress progress) {
    List<Hypothesis> faults =
        workbench.hypotheses().stream().filter(h -> !h.edits().isEmpty()).toList();
    List<Integer> chosen = new ArrayList<>();
    for (int i = 0; i < faults.size(); i += every) {
      chosen.add(i);
    }
    Collections.shuffle(chosen, new Random(seed));
    for (int i = 0; i < chosen.size() && progress.goOn(i, chosen.size()); i++) {
      lookFor(faults.get(chosen.get(i)), i, seed + chosen.get(i));
    }
  }

  /** Hears how far it has got. */
  public interface Progress {
    /** False to stop here. */
    boolean goOn(int done, int all);
  }

  private void lookFor(Hypothesis truth, int number, long seedHere) {
    boolean search = number % FULL_SEARCH_EVERY == 0;
    Trial.Result result =
        trial.run(
            truth,
            seedHere,
            Trial.PROPOSED,
            (diagnosis, survey, now, deviated) -> {
              if (deviated) {
                stated(survey, now, truth.prior());
              }
              if (search && survey.outlook().verdict() == Verdict.OPEN) {
                searchFully(diagnosis, survey);
              }
            });
    tool.add(truth, result);
    if (logs.size() < LOGS) {
      logs.add(result.log());
    }
    if (number % baselineEvery == 0) {
      compared.get(Way.TOOL).add(truth, result);
      Random random = new Random(seedHere);
      compared
          .get(Way.RANDOM)
          .add(truth, trial.run(truth, seedHere, (d, survey) -> any(survey, random)));
      compared
          .get(Way.HALF_SPLIT)
          .add(truth, trial.run(truth, seedHere, (d, survey) -> HalfSplit.pick(d, survey.steps())));
    }
  }

  private static Step any(Survey survey, Random random) {
    return survey.steps().get(random.nextInt(survey.steps().size())).step();
  }

  /** The sittings in which something showed, each as often as its fault comes up. */
  private void stated(Survey survey, Hypothesis truth, double often) {
    for (Suspect suspect : survey.outlook().suspects()) {
      if (suspect.probability() >= LEAST_STATED) {
        calibration.add(
            suspect.probability(),
            suspect.members().stream().anyMatch(h -> h.id().equals(truth.id())),
            often);
      }
    }
  }

  private void searchFully(Diagnosis diagnosis, Survey survey) {
    List<StepChoice.Worth<Step>> full = workbench.outlooks().fullSearch(diagnosis, instruments);
    Step chosen = survey.outlook().next().orElseThrow().step();
    if (!full.isEmpty()) {
      double rate =
          full.stream()
              .filter(w -> w.step().equals(chosen))
              .mapToDouble(StepChoice.Worth::rate)
              .findFirst()
              .orElse(0);
      losses.add(1 - rate / full.get(0).rate());
    }
    ReadingTree.of(diagnosis, instruments, StepSeconds.shipped())
        .filter(cost -> cost.best() > 0)
        .ifPresent(cost -> treeRatios.add(cost.greedy() / cost.best()));
  }

  /** Hypotheses by mechanism, in the order of the mechanisms. */
  public Map<Mechanism, Integer> byMechanism() {
    Map<Mechanism, Integer> counts = new TreeMap<>();
    workbench.hypotheses().forEach(h -> counts.merge(h.mechanism(), 1, Integer::sum));
    return counts;
  }

  public Workbench workbench() {
    return workbench;
  }

  /** The tool over all faults looked for. */
  public FiguresRow tool() {
    return tool;
  }

  /** All ways over the same faults. */
  public Map<Way, FiguresRow> compared() {
    return compared;
  }

  public List<Calibration.Bin> calibration() {
    return calibration.bins();
  }

  /**
   * What the chosen step's bits per second fall short of the best of a search over all hypotheses,
   * as a share of it, 0 to 1.
   */
  public Quantiles stepLoss() {
    return Quantiles.of(losses);
  }

  /** How often the chosen step was the best of the full search, 0 to 1. */
  public double stepLossFree() {
    return losses.isEmpty()
        ? 0
        : (double) losses.stream().filter(l -> l < 1e-9).count() / losses.size();
  }

  /** Hand seconds of the greedy way of reading over those of the cheapest, at least 1. */
  public Quantiles greedyOverBest() {
    return Quantiles.of(treeRatios);
  }

  /** Replays sittings for their time; the first ones only warm up. */
  public WarmTime warmTime() {
    WarmTime time = new WarmTime(sittings);
    int warmUp = Math.min(WARM_UP, logs.size() / 2);
    logs.subList(0, warmUp).forEach(time::warmUp);
    logs.subList(warmUp, logs.size()).forEach(time::measure);
    return time;
  }

  /** Lanes times moves of a control per second of processor time. */
  public double lanesTimesMoves() {
    SimulationSpeed speed = new SimulationSpeed(workbench.module(), workbench.hypotheses());
    speed.lanesTimesMoves(MOVES);
    return speed.lanesTimesMoves(MOVES);
  }
}
