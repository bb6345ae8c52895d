package straywire.casebook;

import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import straywire.advice.RuleBase;
import straywire.faults.FaultExpansion;
import straywire.faults.Hypothesis;
import straywire.faults.HypothesisPairs;
import straywire.faults.Priors;
import straywire.faults.PriorsFile;
import straywire.module.Module;
import straywire.observe.RankingNumbers;
import straywire.observe.ReadingTable;
import straywire.observe.StepSeconds;
import straywire.ranking.Diagnosis;
import straywire.saying.Hearing;
import straywire.sim.Wiring;
import straywire.steps.Outlooks;
import straywire.steps.Questions;
import straywire.symptoms.SymptomCheck;
import straywire.symptoms.SymptomScores;

/** All that is prepared once for a module, before the first entry: what may be wrong with it. */
public final class Workbench {
  /** Of the draws that score symptoms; any number will do, as long as it stays. */
  private static final long SYMPTOM_SEED = 1;

  private final Module module;
  private final RuleBase rules;
  private final List<Hypothesis> hypotheses;
  private final Map<String, Hypothesis> byId = new TreeMap<>();
  private final ReadingTable table;
  private final StepSeconds seconds;
  private final Outlooks outlooks;
  private final SymptomScores symptoms;
  private final Optional<Path> words;

  /** With the tables that ship with the program. */
  public Workbench(Module module, RuleBase rules) {
    this(module, rules, PriorsFile.shipped(), StepSeconds.shipped(), RankingNumbers.shipped());
  }

  /** With tables of one's own. */
  public Workbench(
      Module module, RuleBase rules, Priors priors, StepSeconds seconds, RankingNumbers numbers) {
    this(module, rules, priors, seconds, numbers, Optional.empty());
  }

  /**
   * With words of one's own as well.
   *
   * @param words file in place of the shipped table of words
   */
  public Workbench(
      Module module,
      RuleBase rules,
      Priors priors,
      StepSeconds seconds,
      RankingNumbers numbers,
      Optional<Path> words) {
    this.words = words;
    table = ReadingTable.shipped(numbers);
    this.module = module;
    this.rules = rules;
    this.seconds = seconds;
    hypotheses = FaultExpansion.expandAll(module, rules.propose(module), priors);
    hypotheses.forEach(h -> byId.put(h.id(), h));
    symptoms = new SymptomScores(module, new Wiring(module), table, SYMPTOM_SEED);
    outlooks = new Outlooks(seconds, new Questions(module, rules, symptoms));
  }

  public Module module() {
    return module;
  }

  public RuleBase rules() {
    return rules;
  }

  /** Single faults and "nothing is wrong", which comes first. */
  public List<Hypothesis> hypotheses() {
    return hypotheses;
  }

  public Hypothesis nothingWrong() {
    return hypotheses.get(0);
  }

  public ReadingTable table() {
    return table;
  }

  public StepSeconds seconds() {
    return seconds;
  }

  public Outlooks outlooks() {
    return outlooks;
  }

  /** What answers to questions say of each hypothesis. */
  public SymptomScores symptoms() {
    return symptoms;
  }

  /** Holds answers against the entries they name. */
  public SymptomCheck symptomCheck() {
    return new SymptomCheck(symptoms);
  }

  /** Understands free words about this module. */
  public Hearing hearing() {
    return new Hearing(module, id -> !SymptomScores.computes(id) || symptoms.offers(id, ""), words);
  }

  /** A diagnosis of which nothing was seen yet. */
  public Diagnosis diagnosis() {
    return new Diagnosis(module, hypotheses, table);
  }

  /** The hypothesis of an id, of one fault or of several joined by {@code +}. */
  public Optional<Hypothesis> hypothesis(String id) {
    Optional<Hypothesis> all = Optional.empty();
    for (String part : singles(id)) {
      Optional<Hypothesis> one = Optional.ofNullable(byId.get(part));
      if (one.isEmpty()) {
        return one;
      }
      all =
          all.isEmpty()
              ? one
              : HypothesisPairs.pair(all.get(), one.get(), Math.max(nothingWrong().prior(), 1e-6));
      if (all.isEmpty()) {
        return all;
      }
    }
    return all;
  }

  /** The ids of the single faults that an id joins. */
  public static List<String> singles(String id) {
    return HypothesisPairs.members(id);
  }
}
