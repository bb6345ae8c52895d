package straywire.ranking;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.function.ToDoubleFunction;
import straywire.faults.ChipEdit;
import straywire.faults.Hypothesis;
import straywire.faults.HypothesisPairs;
import straywire.module.Entry;
import straywire.module.Module;
import straywire.observe.RankingNumber;
import straywire.observe.ReadingTable;
import straywire.sim.BoardState;
import straywire.sim.Wiring;
import straywire.symptoms.SymptomWeights;

/**
 * The posterior over everything that may be wrong, kept along a bench log. A repair starts a new
 * phase: what was learned before becomes the prior of what may be wrong now.
 */
public final class Diagnosis {
  /** Pairs looked at, at most, when no single fault will do. */
  public static final int MOST_PAIRS = 1536;

  /** Singles that pairs are made of. */
  private static final int PARTNERS = 120;

  /** Slips of eye or hand that one entry may be; beyond it two faults are likelier. */
  private static final int SLIPS_BELIEVED = 1;

  /** So many leading faults may be one group that is about to be named. */
  private static final int FEW = 4;

  private final Module module;
  private final Wiring wiring;
  private final ReadingTable table;
  private final List<Phase> phases = new ArrayList<>();
  private int entries;

  /**
   * Nothing seen yet.
   *
   * @param hypotheses single faults and "nothing is wrong", priors adding up to 1
   */
  public Diagnosis(Module module, List<Hypothesis> hypotheses, ReadingTable table) {
    this.module = module;
    this.wiring = new Wiring(module);
    this.table = table;
    double[] priors = hypotheses.stream().mapToDouble(Hypothesis::prior).toArray();
    phases.add(new Phase(0, new Bank(module, wiring, hypotheses, table), priors));
  }

  /** A hypothesis with its probability now. */
  public record Candidate(Hypothesis hypothesis, double probability, Lane lane) {
    /** Most probable first. */
    public static final Comparator<Candidate> FALLING =
        Comparator.comparingDouble(Candidate::probability)
            .reversed()
            .thenComparing(c -> c.hypothesis().id());
  }

  /** Where a hypothesis is simulated. */
  public record Lane(Bank bank, int index) {
    public double logLikelihoodOf(int entry) {
      return bank.logLikelihoodOf(entry, index);
    }

    int slips() {
      return bank.slips(index);
    }
  }

  /** One log between two repairs. */
  private final class Phase {
    final int start;
    final Bank singles;
    final double[] priors;
    final List<Fed> fed = new ArrayList<>();
    final List<Grown> grown = new ArrayList<>();

    /** Only the pairs grown last are simulated; earlier ones are followed again when undone to. */
    private Optional<Bank> bankOfPairs = Optional.empty();

    /** Ranking of what was fed so far; empty until asked for. */
    private List<Candidate> ranking = List.of();

    Phase(int start, Bank singles, double[] priors) {
      this.start = start;
      this.singles = singles;
      this.priors = priors;
    }

    /** Everything in this phase, most probable first; equal ones by id. */
    List<Candidate> candidates() {
      if (ranking.isEmpty()) {
        ranking = ranked();
      }
      return ranking;
    }

    void feed(Fed entry) {
      fed.add(entry);
      entry.into(singles);
      pairs().ifPresent(entry::into);
      if (!spoke(fed.size() - 1)) {
        return;
      }
      ranking = List.of();
      if (fewestSlips() > SLIPS_BELIEVED || namedUnchallenged()) {
        grow();
      }
    }

    /** False when an entry said nothing of any hypothesis: the ranking stays as it is. */
    boolean spoke(int entry) {
      return singles.spoke(entry) || pairs().filter(b -> b.spoke(entry)).isPresent();
    }

    Optional<Bank> pairs() {
      return bankOfPairs;
    }

    /** Simulates pairs along all that was fed so far. */
    private void follow(List<Hypothesis> pairs) {
      Bank bank = new Bank(module, wiring, pairs, table);
      fed.forEach(entry -> entry.into(bank));
      bankOfPairs = Optional.of(bank);
    }

    /** Faults about to be named must first have stood against pairs. */
    private boolean namedUnchallenged() {
      if (!grown.isEmpty()) {
        return false;
      }
      double leaders = 0;
      List<Candidate> falling = candidates();
      for (Candidate candidate : falling.subList(0, Math.min(FEW, falling.size()))) {
        if (candidate.hypothesis().edits().isEmpty()) {
          return false;
        }
        leaders += candidate.probability();
      }
      return leaders >= table.numbers().of(RankingNumber.BEYOND_DOUBT);
    }

    /** Slips that the best candidate which says anything definite has to explain away. */
    private int fewestSlips() {
      return candidates().stream()
          .filter(c -> definite(c.hypothesis()))
          .findFirst()
          .map(c -> c.lane().slips())
          .orElse(0);
    }

    private List<Candidate> ranked() {
      List<Lane> lanes = new ArrayList<>();
      List<Double> weights = new ArrayList<>();
      for (int i = 0; i < singles.hypotheses.size(); i++) {
        lanes.add(new Lane(singles, i));
        weights.add(priors[i]);
      }
      pairs()
          .ifPresent(
              bank -> {
                for (int i = 0; i < bank.hypotheses.size(); i++) {
                  lanes.add(new Lane(bank, i));
                  weights.add(bank.hypotheses.get(i).prior());
                }
              });
      double[] logs = lanes.stream().mapToDouble(l -> l.bank().logLikelihood(l.index())).toArray();
      double[] posterior =
          Posterior.of(weights.stream().mapToDouble(Double::doubleValue).toArray(), logs);
      List<Candidate> candidates = new ArrayList<>();
      for (int i = 0; i < posterior.length; i++) {
        Lane lane = lanes.get(i);
        candidates.add(new Candidate(lane.bank().hypotheses.get(lane.index()), posterior[i], lane));
      }
      candidates.sort(Candidate.FALLING);
      return List.copyOf(candidates);
    }

    private void grow() {
      List<Hypothesis> partners = new ArrayList<>();
      double healthy = 0;
      List<Candidate> falling = candidates();
      for (Candidate candidate : falling) {
        if (candidate.lane().bank() == singles && definite(candidate.hypothesis())) {
          if (candidate.hypothesis().edits().isEmpty()) {
            healthy = candidate.hypothesis().prior();
          } else if (partners.size() < PARTNERS) {
            partners.add(candidate.hypothesis());
          }
        }
      }
      List<Hypothesis> pairs = HypothesisPairs.pairs(partners, Math.max(healthy, 1e-6), MOST_PAIRS);
      if (pairs.isEmpty()) {
        return;
      }
      follow(pairs);
      grown.add(new Grown(fed.size(), pairs));
      ranking = List.of();
    }

    void cutTo(int size) {
      ranking = List.of();
      while (fed.size() > size) {
        fed.remove(fed.size() - 1);
      }
      singles.cutTo(size);
      if (grown.removeIf(g -> g.at() > size)) {
        bankOfPairs = Optional.empty();
        if (!grown.isEmpty()) {
          follow(grown.get(grown.size() - 1).pairs());
        }
      }
      pairs().ifPresent(bank -> bank.cutTo(size));
    }
  }

  /** Pairs that were grown when the phase had {@code at} entries. */
  private record Grown(int at, List<Hypothesis> pairs) {}

  /** An entry with what rules and symptoms say of it: natural log weight of each hypothesis. */
  private record Fed(Entry entry, ToDoubleFunction<Hypothesis> weights) {
    void into(Bank bank) {
      if (weights instanceof SymptomWeights symptom) {
        symptom.prepare(bank.hypotheses);
      }
      double[] logs = bank.hypotheses.stream().mapToDouble(weights).toArray();
      bank.accept(entry, logs);
    }
  }

  private static boolean definite(Hypothesis hypothesis) {
    return hypothesis.edits().stream().noneMatch(e -> e instanceof ChipEdit.Unforeseen);
  }

  private Phase phase() {
    return phases.get(phases.size() - 1);
  }

  /**
   * Takes in the next entry of the log.
   *
   * @param weights natural log weight of each hypothesis from what is not simulated; 0 for nothing
   */
  public void accept(Entry entry, ToDoubleFunction<Hypothesis> weights) {
    if (entry instanceof Entry.Repaired || entry instanceof Entry.Exchanged) {
      double[] priors =
          AfterRepair.priors(entry, phase().singles.hypotheses, candidates(), table.numbers());
      phases.add(new Phase(entries + 1, phase().singles.restarted(), priors));
    } else {
      phase().feed(new Fed(entry, weights));
    }
    entries++;
  }

  /** Takes the last entry back; has no effect on an empty log. */
  public void takeBack() {
    if (entries == 0) {
      return;
    }
    entries--;
    if (phase().start > entries) {
      phases.remove(phases.size() - 1);
    } else {
      phase().cutTo(entries - phase().start);
    }
  }

  /** Entries taken in. */
  public int size() {
    return entries;
  }

  /** Number of the first entry, from 0, that counts since the last repair. */
  public int phaseStart() {
    return phase().start;
  }

  /** Everything that may be wrong, most probable first; equal ones by id. */
  public List<Candidate> candidates() {
    return phase().candidates();
  }

  /** False when an entry, counted from 0 at the last repair, said nothing of any hypothesis. */
  public boolean spoke(int entry) {
    return phase().spoke(entry);
  }

  /**
   * Prior times likelihood of an entry, counted from 0 at the last repair, over everything that may
   * be wrong.
   */
  public double massOf(int entry) {
    return phase().singles.massOf(entry)
        + phase().pairs().map(pairs -> pairs.massOf(entry)).orElse(0.0);
  }

  /** Readings since the last repair that would have to be slips if nothing were wrong. */
  public int slips() {
    return candidates().stream()
        .filter(c -> c.hypothesis().edits().isEmpty())
        .mapToInt(c -> c.lane().slips())
        .findFirst()
        .orElse(0);
  }

  /** What was done and read since the last repair. */
  public List<Entry> sinceRepair() {
    return phase().fed.stream().map(Fed::entry).toList();
  }

  /** Controls and power as the log leaves them. */
  public BoardState state() {
    return phase().singles.state();
  }

  public Module module() {
    return module;
  }

  public Wiring wiring() {
    return wiring;
  }

  public ReadingTable table() {
    return table;
  }
}
