package straywire.ranking;

import java.util.EnumSet;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import straywire.faults.Hypothesis;
import straywire.faults.HypothesisPairs;
import straywire.faults.Mechanism;
import straywire.module.Entry;
import straywire.module.Module;
import straywire.observe.RankingNumber;
import straywire.observe.RankingNumbers;

/**
 * What may be wrong once a cure was carried out: a fault that the cure mends has most of its
 * probability moved to what is left without it, the others keep theirs.
 */
public final class AfterRepair {
  private static final Set<Mechanism> INSIDE_A_PART =
      EnumSet.of(
          Mechanism.OUTPUT_STUCK_LOW,
          Mechanism.OUTPUT_STUCK_HIGH,
          Mechanism.OUTPUT_DEAD,
          Mechanism.INPUT_STUCK_LOW,
          Mechanism.INPUT_STUCK_HIGH,
          Mechanism.WRONG_PART,
          Mechanism.PART_UNLISTED,
          Mechanism.LEG_NOT_IN_ROW,
          Mechanism.TURNED);

  /** Of these, what a part is not to blame for: the same one is put back. */
  private static final Set<Mechanism> PUT_BACK =
      EnumSet.of(Mechanism.LEG_NOT_IN_ROW, Mechanism.TURNED);

  private AfterRepair() {}

  /**
   * Labels of the parts that hold nothing of what they held once faults are mended: another one
   * stands for them, or they were programmed anew.
   *
   * @param mended single faults
   */
  public static Set<String> fromTheDrawer(Module module, List<Hypothesis> mended) {
    Set<String> fresh = new TreeSet<>();
    for (Hypothesis fault : mended) {
      if (fault.mechanism() == Mechanism.CONTENTS_WRONG) {
        fault.edits().forEach(edit -> edit.touches(module).forEach(end -> fresh.add(end.label())));
      } else if (!PUT_BACK.contains(fault.mechanism())) {
        module.parts().keySet().stream()
            .filter(part -> mends(new Entry.Exchanged(part), fault))
            .forEach(fresh::add);
      }
    }
    return fresh;
  }

  /**
   * Prior of each single hypothesis for the log after the cure. What is cured by the very same
   * repair is mended with it.
   *
   * @param singles the first of them "nothing is wrong"
   * @param before all candidates with their probabilities before the cure
   */
  static double[] priors(
      Entry cure,
      List<Hypothesis> singles,
      List<Diagnosis.Candidate> before,
      RankingNumbers numbers) {
    double cures = numbers.of(RankingNumber.CURE_WORKS);
    double again = numbers.of(RankingNumber.NEVER_RULED_OUT);
    Map<String, Integer> indexOf = new HashMap<>();
    int healthy = 0;
    for (int i = 0; i < singles.size(); i++) {
      indexOf.put(singles.get(i).id(), i);
      healthy = singles.get(i).edits().isEmpty() ? i : healthy;
    }
    Set<String> done =
        singles.stream()
            .filter(h -> mends(cure, h))
            .map(Hypothesis::repair)
            .collect(Collectors.toSet());
    double[] priors = new double[singles.size()];
    for (Diagnosis.Candidate candidate : before) {
      List<String> ids = HypothesisPairs.members(candidate.hypothesis().id());
      List<String> left =
          ids.stream().filter(id -> !done.contains(singles.get(indexOf.get(id)).repair())).toList();
      double share = left.size() == ids.size() ? 0 : cures;
      int then = left.isEmpty() ? healthy : indexOf.get(left.get(0));
      priors[then] += candidate.probability() * share;
      // Of a pair that was not mended the first fault stands for both.
      priors[indexOf.get(ids.get(0))] += candidate.probability() * (1 - share);
    }
    for (int i = 0; i < priors.length; i++) {
      // Nothing is ruled out for good.
      priors[i] = (1 - again) * priors[i] + again * singles.get(i).prior();
    }
    return priors;
  }

  /** Whether a repair or an exchange takes this fault away, if it is carried out well. */
  public static boolean mends(Entry cure, Hypothesis hypothesis) {
    if (cure instanceof Entry.Repaired e) {
      return HypothesisPairs.members(e.action()).contains(hypothesis.id());
    }
    return cure instanceof Entry.Exchanged e
        && INSIDE_A_PART.contains(hypothesis.mechanism())
        && hypothesis.id().matches(".*\\b" + Pattern.quote(e.part()) + "\\b.*");
  }
}
