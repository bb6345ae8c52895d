package straywire.diagnosis;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.function.Predicate;
import java.util.stream.Collectors;
import straywire.diagnosis.Diagnosis.Candidate;
import straywire.diagnosis.Outlook.Ground;
import straywire.diagnosis.Outlook.Proposal;
import straywire.diagnosis.Outlook.Suspect;
import straywire.diagnosis.Outlook.Verdict;
import straywire.faults.Hypothesis;
import straywire.faults.HypothesisPairs;

/** Draws up how a sitting stands from the posterior and the steps at hand. */
public final class Outlooks {
  /** A group at least this probable is beyond doubt. */
  static final double BEYOND_DOUBT = 0.98;

  /**
   * A module this probably sound is let go when no step tells much any more; what is untested is
   * listed instead of being hunted one by one.
   */
  private static final double LIKELY_SOUND = 0.8;

  private static final double LITTLE_TO_LEARN = 0.08;

  /** Suspects that an expected reading is given for. */
  private static final int LEADERS = 3;

  /** Steps kept beside the best one. */
  private static final int OTHERS = 5;

  /** An entry that says less than this, as a natural log, is not named as a ground. */
  private static final double LEAST_GROUND = 0.5;

  private final StepSeconds seconds;

  public Outlooks(StepSeconds seconds) {
    this.seconds = seconds;
  }

  /** The outlook now, with the instruments at hand. */
  public Outlook of(Diagnosis diagnosis, Instruments instruments) {
    return of(diagnosis, instruments, step -> true);
  }

  /**
   * The outlook now, when some steps are not to be had.
   *
   * @param offered false for a step that the hand has said it cannot do
   */
  public Outlook of(Diagnosis diagnosis, Instruments instruments, Predicate<Step> offered) {
    List<Candidate> candidates = diagnosis.candidates();
    LiveSet live = new LiveSet(candidates);
    NextStep steps =
        new NextStep(diagnosis.module(), live, instruments, diagnosis.table(), seconds);
    List<Suspect> suspects = suspects(diagnosis, candidates, live, steps.prints());
    List<StepChoice.Worth<Step>> ranked =
        steps.ranked().stream().filter(worth -> offered.test(worth.step())).toList();
    Verdict verdict =
        verdict(
            suspects,
            candidates,
            ranked.stream().mapToDouble(StepChoice.Worth::bits).max().orElse(0));
    double uncertainty =
        Posterior.entropy(candidates.stream().mapToDouble(Candidate::probability).toArray());
    List<Proposal> proposals = new ArrayList<>();
    for (StepChoice.Worth<Step> worth : ranked) {
      if (proposals.size() <= OTHERS) {
        proposals.add(
            new Proposal(
                worth.step(),
                worth.bits(),
                worth.seconds(),
                proposals.isEmpty() ? steps.expected(worth.step(), leaders(suspects)) : List.of()));
      }
    }
    return new Outlook(
        verdict,
        suspects,
        verdict == Verdict.OPEN ? Optional.of(proposals.get(0)) : Optional.empty(),
        proposals.isEmpty() ? List.of() : List.copyOf(proposals.subList(1, proposals.size())),
        uncertainty);
  }

  private static List<Hypothesis> leaders(List<Suspect> suspects) {
    return suspects.stream().limit(LEADERS).map(Suspect::first).toList();
  }

  private static Verdict verdict(
      List<Suspect> suspects, List<Candidate> candidates, double mostBits) {
    Suspect first = suspects.get(0);
    if (first.healthy()
        && (first.probability() >= BEYOND_DOUBT
            || (first.probability() >= LIKELY_SOUND && mostBits < LITTLE_TO_LEARN))) {
      return Verdict.NOTHING_WRONG;
    }
    if (!first.healthy() && present(first, candidates) >= BEYOND_DOUBT) {
      return Verdict.NAMED;
    }
    return mostBits == 0 ? Verdict.INSEPARABLE : Verdict.OPEN;
  }

  /**
   * Probability that the fault is there, alone or with another one: what is left beside it shows
   * after the repair.
   */
  private static double present(Suspect suspect, List<Candidate> candidates) {
    Set<String> members =
        suspect.members().stream().map(Hypothesis::id).collect(Collectors.toSet());
    double probability = suspect.probability();
    for (Candidate candidate : candidates) {
      String id = candidate.hypothesis().id();
      if (!members.contains(id)
          && HypothesisPairs.members(id).stream().anyMatch(members::contains)) {
        probability += candidate.probability();
      }
    }
    return probability;
  }

  private List<Suspect> suspects(
      Diagnosis diagnosis, List<Candidate> candidates, LiveSet live, long[] prints) {
    Map<String, Long> printOf = new HashMap<>();
    for (int h = 0; h < live.size(); h++) {
      printOf.put(live.hypotheses.get(h).id(), prints[h]);
    }
    Map<Object, List<Candidate>> groups = new LinkedHashMap<>();
    for (Candidate candidate : candidates) {
      Object key = candidate.hypothesis().id();
      if (printOf.containsKey(candidate.hypothesis().id())) {
        key = printOf.get(candidate.hypothesis().id());
      }
      groups.computeIfAbsent(key, k -> new ArrayList<>()).add(candidate);
    }
    List<Suspect> suspects = new ArrayList<>();
    for (List<Candidate> group : groups.values()) {
      double probability = group.stream().mapToDouble(Candidate::probability).sum();
      suspects.add(
          new Suspect(
              probability,
              group.stream().map(Candidate::hypothesis).toList(),
              suspects.size() < LEADERS * 2 ? grounds(diagnosis, candidates, group) : List.of()));
    }
    suspects.sort(
        Comparator.comparingDouble(Suspect::probability)
            .reversed()
            .thenComparing(s -> s.first().id()));
    return suspects;
  }

  /** What each entry since the last repair says of a group against all else. */
  private static List<Ground> grounds(
      Diagnosis diagnosis, List<Candidate> candidates, List<Candidate> group) {
    List<Ground> grounds = new ArrayList<>();
    Candidate first = group.get(0);
    int entries = diagnosis.size() - diagnosis.phaseStart();
    for (int entry = 0; entry < entries; entry++) {
      double own = first.lane().logLikelihoodOf(entry);
      double others = 0;
      double weight = 0;
      for (Candidate other : candidates) {
        if (!group.contains(other)) {
          double prior = other.hypothesis().prior();
          others += prior * Math.exp(other.lane().logLikelihoodOf(entry));
          weight += prior;
        }
      }
      double factor = weight > 0 && others > 0 ? own - Math.log(others / weight) : 0;
      if (Math.abs(factor) >= LEAST_GROUND) {
        grounds.add(new Ground(diagnosis.phaseStart() + entry, factor));
      }
    }
    grounds.sort(
        Comparator.comparingDouble((Ground g) -> -Math.abs(g.logFactor()))
            .thenComparingInt(Ground::entry));
    return grounds;
  }
}
