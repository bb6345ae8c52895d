package straywire.symptoms;

import java.util.List;
import java.util.Optional;
import java.util.function.ToDoubleFunction;
import straywire.faults.Hypothesis;
import straywire.module.Entry;
import straywire.observe.RankingNumber;

/**
 * Natural log of the weight of one symptom under a hypothesis, with what the rules say of it.
 *
 * <p>An answer to a question is weighed by how likely that answer is. What nobody asked about is
 * weighed as chosen: out of all that could have been reported under the hypothesis this was. It is
 * a state, not a vote: reported again it adds nothing, and named more closely it counts as if it
 * had been named so at first. A sound module seldom draws a complaint.
 */
public final class SymptomWeights implements ToDoubleFunction<Hypothesis> {
  private final SymptomScores scores;
  private final Entry.Symptom entry;
  private final List<Entry.Symptom> before;
  private final ToDoubleFunction<Hypothesis> byRule;
  private final boolean computed;
  private final boolean complains;

  SymptomWeights(
      SymptomScores scores,
      Entry.Symptom entry,
      List<Entry.Symptom> before,
      ToDoubleFunction<Hypothesis> byRule) {
    this.scores = scores;
    this.entry = entry;
    this.before = List.copyOf(before);
    this.byRule = byRule;
    computed = SymptomScores.leavesMemoryUnknown(entry);
    complains = entry.volunteered() && abnormal(entry);
  }

  /** Whether a report of it is a complaint: it is not normal for any module. */
  static boolean abnormal(Entry.Symptom symptom) {
    return SymptomPredicate.of(symptom.symptom()).filter(SymptomPredicate::normal).isEmpty();
  }

  /** Computes many hypotheses at once; asking for each alone costs an exercise apiece. */
  public void prepare(List<Hypothesis> hypotheses) {
    if (computed && complains) {
      scores.told(hypotheses, entry, others());
    } else if (computed) {
      scores.yes(hypotheses, entry.symptom(), entry.place());
    }
  }

  @Override
  public double applyAsDouble(Hypothesis hypothesis) {
    if (complains) {
      return complaint(hypothesis);
    }
    if (entry.volunteered() && earlier().isPresent()) {
      return 0;
    }
    double logs = byRule.applyAsDouble(hypothesis);
    if (computed) {
      double yes = scores.yes(List.of(hypothesis), entry.symptom(), entry.place())[0];
      logs += SymptomScores.log(yes, entry.answer());
    }
    return logs;
  }

  /** The same symptom as reported last. */
  private Optional<Entry.Symptom> earlier() {
    return before.stream()
        .filter(s -> s.symptom().equals(entry.symptom()))
        .reduce((first, second) -> second);
  }

  private double complaint(Hypothesis hypothesis) {
    List<Entry.Symptom> same =
        before.stream().filter(s -> s.symptom().equals(entry.symptom())).toList();
    boolean again =
        same.stream().anyMatch(s -> s.place().equals(entry.place()) || entry.place().isEmpty());
    if (again) {
      return 0;
    }
    boolean closer = same.stream().anyMatch(s -> s.place().isEmpty());
    double logs = byRule.applyAsDouble(hypothesis);
    if (computed) {
      // A report without its place is part of the one that names it.
      double counted = closer ? logTold(hypothesis, unplaced()) : 0;
      return logs + logTold(hypothesis, entry) - counted;
    }
    if (hypothesis.edits().isEmpty() && !closer) {
      boolean first = before.stream().noneMatch(SymptomWeights::abnormal);
      RankingNumber share = first ? RankingNumber.SOUND_COMPLAINT : RankingNumber.MISTAKEN_REPORT;
      logs += Math.log(scores.numbers().of(share));
    }
    return logs;
  }

  private Entry.Symptom unplaced() {
    return new Entry.Symptom(entry.symptom(), "", entry.answer(), entry.entries());
  }

  private double logTold(Hypothesis hypothesis, Entry.Symptom said) {
    return Math.log(scores.told(List.of(hypothesis), said, others())[0]);
  }

  private List<Entry.Symptom> others() {
    return before.stream().filter(s -> !s.symptom().equals(entry.symptom())).toList();
  }
}
