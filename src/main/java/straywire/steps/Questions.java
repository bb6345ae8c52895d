package straywire.steps;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import straywire.advice.RuleBase;
import straywire.advice.SymptomEntry;
import straywire.advice.SymptomTable;
import straywire.advice.Weigh;
import straywire.faults.Hypothesis;
import straywire.module.BenchLog;
import straywire.module.Entry;
import straywire.module.Module;
import straywire.observe.Instruments;
import straywire.observe.Question;
import straywire.observe.Step;
import straywire.symptoms.SymptomScores;

/**
 * The questions that may be asked at one module. What rules weigh is always among them; what the
 * simulation computes only when neither meter nor logic probe is at hand, since with them a step
 * that is logged tells more and leaves the memory known. Made when first needed.
 */
public final class Questions {
  /** Share of yes to something that speaks for no fault in particular; engineering estimate. */
  private static final double USUAL_YES = 0.05;

  private static final double LEAST = 0.02;
  private static final double MOST = 0.98;

  private final Module module;
  private final Optional<RuleBase> rules;
  private final Optional<SymptomScores> scores;
  private Optional<List<Question>> weighed = Optional.empty();
  private Optional<List<Question>> computed = Optional.empty();

  private Questions(Module module, Optional<RuleBase> rules, Optional<SymptomScores> scores) {
    this.module = module;
    this.rules = rules;
    this.scores = scores;
  }

  public Questions(Module module, RuleBase rules, SymptomScores scores) {
    this(module, Optional.of(rules), Optional.of(scores));
  }

  /** For a search among steps of the hand alone. */
  public static Questions none(Module module) {
    return new Questions(module, Optional.empty(), Optional.empty());
  }

  List<Question> offered(Instruments instruments) {
    if (weighed.isEmpty()) {
      weighed = Optional.of(rules.map(this::weighed).orElse(List.of()));
    }
    if (instruments.meter() || instruments.logicProbe()) {
      return weighed.orElseThrow();
    }
    if (computed.isEmpty()) {
      computed = Optional.of(scores.map(Questions::computed).orElse(List.of()));
    }
    List<Question> all = new ArrayList<>(weighed.orElseThrow());
    all.addAll(computed.orElseThrow());
    return all;
  }

  private static List<Question> computed(SymptomScores scores) {
    return scores.questions().stream()
        .map(
            q ->
                new Question(
                    new Step.Ask(q.symptom(), q.place(), q.seconds()),
                    hypotheses -> scores.yes(hypotheses, q.symptom(), q.place())))
        .toList();
  }

  private List<Question> weighed(RuleBase base) {
    List<SymptomEntry> entries =
        SymptomTable.shipped().entries().stream()
            .filter(e -> e.kind() == SymptomEntry.Kind.WEIGHED)
            .toList();
    Map<Integer, List<Weigh>> yes = weights(base, entries, Entry.Answer.YES);
    Map<Integer, List<Weigh>> no = weights(base, entries, Entry.Answer.NO);
    List<Question> questions = new ArrayList<>();
    for (int i = 0; i < entries.size(); i++) {
      List<Weigh> ifYes = yes.getOrDefault(i + 1, List.of());
      List<Weigh> ifNo = no.getOrDefault(i + 1, List.of());
      if (!ifYes.isEmpty() || !ifNo.isEmpty()) {
        double usual = usual(ifYes, ifNo);
        questions.add(
            new Question(
                new Step.Ask(entries.get(i).id(), "", entries.get(i).seconds()),
                all -> all.stream().mapToDouble(h -> chance(h, ifYes, ifNo, usual)).toArray()));
      }
    }
    return questions;
  }

  /** What the rules make of the same answer to every question, by number of the question from 1. */
  private Map<Integer, List<Weigh>> weights(
      RuleBase base, List<SymptomEntry> entries, Entry.Answer answer) {
    BenchLog log = new BenchLog(module.name(), "", List.of());
    for (SymptomEntry entry : entries) {
      log = log.with(new Entry.Symptom(entry.id(), "", answer, List.of()));
    }
    Map<Integer, List<Weigh>> weights = new TreeMap<>();
    base.advise(module, log, List.of(), Map.of())
        .weights()
        .forEach(w -> weights.computeIfAbsent(w.entry(), n -> new ArrayList<>()).add(w));
    return weights;
  }

  /**
   * Share of yes without any fault that the rules name. When they weigh both answers it follows
   * from the factors: yes has probability {@code y * u} and no {@code n * (1 - u)} under such a
   * fault, which add up to 1.
   */
  private static double usual(List<Weigh> ifYes, List<Weigh> ifNo) {
    double y = ifYes.stream().mapToDouble(Weigh::factor).max().orElse(1);
    double n = ifNo.stream().mapToDouble(Weigh::factor).min().orElse(1);
    return y > 1 && n < 1 ? (1 - n) / (y - n) : USUAL_YES;
  }

  private double chance(Hypothesis hypothesis, List<Weigh> ifYes, List<Weigh> ifNo, double usual) {
    double y = factor(hypothesis, ifYes);
    double chance = y == 1 ? 1 - factor(hypothesis, ifNo) * (1 - usual) : y * usual;
    return Math.max(LEAST, Math.min(MOST, chance));
  }

  private double factor(Hypothesis hypothesis, List<Weigh> weights) {
    return weights.stream()
        .filter(w -> w.concerns(module, hypothesis))
        .mapToDouble(Weigh::factor)
        .reduce(1, (a, b) -> a * b);
  }
}
