package straywire.symptoms;

import java.util.List;
import java.util.function.ToDoubleFunction;
import straywire.faults.Hypothesis;
import straywire.module.Entry;

/**
 * Natural log of the probability of one answer under a hypothesis: 0 for every hypothesis when the
 * answer is "don't know", is about logged entries, or is about a symptom that rules weigh.
 */
public final class SymptomWeights implements ToDoubleFunction<Hypothesis> {
  private final SymptomScores scores;
  private final Entry.Symptom entry;

  SymptomWeights(SymptomScores scores, Entry.Symptom entry) {
    this.scores = scores;
    this.entry = entry;
  }

  /** Computes many hypotheses at once; asking for each alone costs an exercise apiece. */
  public void prepare(List<Hypothesis> hypotheses) {
    if (SymptomScores.leavesMemoryUnknown(entry)) {
      scores.yes(hypotheses, entry.symptom(), entry.place());
    }
  }

  @Override
  public double applyAsDouble(Hypothesis hypothesis) {
    if (!SymptomScores.leavesMemoryUnknown(entry)) {
      return 0;
    }
    double yes = scores.yes(List.of(hypothesis), entry.symptom(), entry.place())[0];
    return SymptomScores.log(yes, entry.answer());
  }
}
