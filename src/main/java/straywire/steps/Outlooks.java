package straywire.steps;

import java.util.ArrayList;
import java.util.Collection;
import java.util.Comparator;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Predicate;
import straywire.faults.Hypothesis;
import straywire.observe.Instruments;
import straywire.observe.RankingNumber;
import straywire.observe.RankingNumbers;
import straywire.observe.Step;
import straywire.observe.StepSeconds;
import straywire.ranking.Diagnosis;
import straywire.ranking.Diagnosis.Candidate;
import straywire.ranking.LiveSet;
import straywire.ranking.Posterior;
import straywire.steps.Outlook.Ground;
import straywire.steps.Outlook.Proposal;
import straywire.steps.Outlook.Suspect;
import straywire.steps.Outlook.Verdict;

/** Draws up how a sitting stands from the posterior and the steps at hand. */
public final class Outlooks {
  /** Suspects that an expected reading is given for. */
  private static final int LEADERS = 3;

  /** Steps kept beside the best one. */
  private static final int OTHERS = 5;

  /** A group less probable than this share of those of the same cure stands for itself. */
  private static final double LEAST_JOINED = 0.02;

  private static final Comparator<Suspect> FALLING =
      Comparator.comparingDouble(Suspect::probability)
          .reversed()
          .thenComparing(s -> s.first().id());

  private final StepSeconds seconds;
  private final Questions questions;

  public Outlooks(StepSeconds seconds, Questions questions) {
    this.seconds = seconds;
    this.questions = questions;
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
    return survey(diagnosis, instruments, offered).outlook();
  }

  /**
   * An outlook with the whole menu it was drawn up from.
   *
   * @param steps every step worth taking, best first by bits per second
   */
  public record Survey(Outlook outlook, List<StepChoice.Worth<Step>> steps) {
    public Survey {
      steps = List.copyOf(steps);
    }
  }

  /** The outlook now, and every step worth taking. */
  public Survey survey(Diagnosis diagnosis, Instruments instruments) {
    return survey(diagnosis, instruments, step -> true);
  }

  /**
   * Every step worth taking that does not repeat another, best first, worked out on all hypotheses
   * instead of those that still matter: slow, to measure what leaving the others out costs.
   */
  public List<StepChoice.Worth<Step>> fullSearch(Diagnosis diagnosis, Instruments instruments) {
    NextStep all = steps(diagnosis, LiveSet.whole(diagnosis.candidates()), instruments);
    return worthTaking(all, diagnosis, step -> true);
  }

  /** The ranked steps that are to be had and have not been taken since the last repair. */
  private static List<StepChoice.Worth<Step>> worthTaking(
      NextStep steps, Diagnosis diagnosis, Predicate<Step> offered) {
    Taken taken = new Taken(diagnosis.sinceRepair());
    return steps.ranked().stream()
        .filter(worth -> offered.test(worth.step()) && !taken.repeats(worth.step()))
        .toList();
  }

  private NextStep steps(Diagnosis diagnosis, LiveSet live, Instruments instruments) {
    return new NextStep(
        diagnosis.module(),
        live,
        instruments,
        diagnosis.table(),
        seconds,
        questions.offered(instruments));
  }

  private Survey survey(Diagnosis diagnosis, Instruments instruments, Predicate<Step> offered) {
    List<Candidate> candidates = diagnosis.candidates();
    LiveSet live = new LiveSet(candidates);
    NextStep steps = steps(diagnosis, live, instruments);
    List<Suspect> suspects = suspects(diagnosis, candidates, live, steps.prints());
    List<StepChoice.Worth<Step>> ranked = worthTaking(steps, diagnosis, offered);
    Verdict verdict =
        verdict(
            diagnosis.table().numbers(),
            suspects,
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
    Outlook outlook =
        new Outlook(
            verdict,
            suspects,
            verdict == Verdict.OPEN ? Optional.of(proposals.get(0)) : Optional.empty(),
            proposals.isEmpty() ? List.of() : List.copyOf(proposals.subList(1, proposals.size())),
            uncertainty);
    return new Survey(outlook, ranked);
  }

  private static List<Hypothesis> leaders(List<Suspect> suspects) {
    return suspects.stream().limit(LEADERS).map(Suspect::first).toList();
  }

  /**
   * A module probably sound is let go when no step tells much any more; what is untested is listed
   * instead of being hunted one by one.
   */
  private static Verdict verdict(RankingNumbers numbers, List<Suspect> suspects, double mostBits) {
    double beyondDoubt = numbers.of(RankingNumber.BEYOND_DOUBT);
    Suspect first = suspects.get(0);
    if (first.healthy()
        && (first.probability() >= beyondDoubt
            || (first.probability() >= numbers.of(RankingNumber.LIKELY_SOUND)
                && mostBits < numbers.of(RankingNumber.LITTLE_TO_LEARN)))) {
      return Verdict.NOTHING_WRONG;
    }
    if (!first.healthy() && first.probability() >= beyondDoubt) {
      return Verdict.NAMED;
    }
    return mostBits == 0 ? Verdict.INSEPARABLE : Verdict.OPEN;
  }

  private List<Suspect> suspects(
      Diagnosis diagnosis, List<Candidate> candidates, LiveSet live, long[] prints) {
    Map<String, Long> printOf = new HashMap<>();
    // With power off most steps are not to be had, so that what looks alike need not be.
    for (int h = 0; live.state().powered() && h < live.size(); h++) {
      printOf.put(live.hypotheses.get(h).id(), prints[h]);
    }
    Map<Object, List<Candidate>> alike = new LinkedHashMap<>();
    for (Candidate candidate : candidates) {
      Object key = candidate.hypothesis().id();
      if (printOf.containsKey(candidate.hypothesis().id())) {
        key = printOf.get(candidate.hypothesis().id());
      }
      alike.computeIfAbsent(key, k -> new ArrayList<>()).add(candidate);
    }
    double prior = prior(candidates);
    List<Suspect> suspects = new ArrayList<>();
    for (List<Candidate> group : oneCure(alike.values())) {
      List<Candidate> alone = PairFolding.alone(group);
      double probability = total(group);
      suspects.add(
          new Suspect(
              probability,
              Math.max(0, probability - total(alone)),
              alone.stream().map(Candidate::hypothesis).toList(),
              suspects.size() < LEADERS * 2 ? grounds(diagnosis, group, prior) : List.of()));
    }
    suspects.sort(FALLING);
    return PairFolding.folded(suspects).stream().sorted(FALLING).toList();
  }

  /**
   * The groups, with those of one and the same cure joined: which of its outputs is dead matters to
   * nobody who has to exchange the chip. What is all but ruled out does not hide behind the rest.
   */
  private static Collection<List<Candidate>> oneCure(Collection<List<Candidate>> groups) {
    Map<Object, List<Candidate>> joined = new LinkedHashMap<>();
    for (List<Candidate> group : groups) {
      String cure = group.get(0).hypothesis().repair();
      boolean one =
          !cure.isEmpty() && group.stream().allMatch(c -> c.hypothesis().repair().equals(cure));
      List<Candidate> others = joined.get(cure);
      boolean counts = others == null || total(group) >= LEAST_JOINED * total(others);
      joined
          .computeIfAbsent(one && counts ? cure : new Object(), k -> new ArrayList<>())
          .addAll(group);
    }
    joined.values().forEach(g -> g.sort(Candidate.FALLING));
    return joined.values();
  }

  /** What each entry since the last repair says of a group against all else. */
  private static List<Ground> grounds(Diagnosis diagnosis, List<Candidate> group, double prior) {
    double own = prior(group);
    List<Ground> grounds = new ArrayList<>();
    int entries = diagnosis.size() - diagnosis.phaseStart();
    for (int entry = 0; entry < entries; entry++) {
      if (diagnosis.spoke(entry)) {
        double said = group.get(0).lane().logLikelihoodOf(entry);
        double others = diagnosis.massOf(entry);
        for (Candidate member : group) {
          others -= member.hypothesis().prior() * Math.exp(member.lane().logLikelihoodOf(entry));
        }
        double rest = prior - own;
        double factor = rest > 0 && others > 0 ? said - Math.log(others / rest) : 0;
        if (Math.abs(factor) >= diagnosis.table().numbers().of(RankingNumber.LEAST_GROUND)) {
          grounds.add(new Ground(diagnosis.phaseStart() + entry, factor));
        }
      }
    }
    grounds.sort(
        Comparator.comparingDouble((Ground g) -> -Math.abs(g.logFactor()))
            .thenComparingInt(Ground::entry));
    return grounds;
  }

  private static double total(List<Candidate> candidates) {
    return candidates.stream().mapToDouble(Candidate::probability).sum();
  }

  private static double prior(List<Candidate> candidates) {
    return candidates.stream().mapToDouble(c -> c.hypothesis().prior()).sum();
  }
}
