package straywire.steps;

import java.util.ArrayList;
import java.util.Collections;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.stream.Collectors;
import straywire.faults.Hypothesis;
import straywire.faults.HypothesisPairs;
import straywire.ranking.Diagnosis.Candidate;
import straywire.steps.Outlook.Suspect;

/**
 * Counts two faults at once with the suspect that leads of them: whoever repairs that one sees what
 * is left, and a list of the same fault with a hundred partners helps nobody.
 */
final class PairFolding {
  private PairFolding() {}

  /**
   * The same suspects, with each pair of faults folded into the more probable suspect that has one
   * of the two as a member; pairs that lead of themselves stay.
   *
   * @param falling most probable first
   */
  static List<Suspect> folded(List<Suspect> falling) {
    Map<String, Integer> leaders = new HashMap<>();
    List<Suspect> kept = new ArrayList<>();
    List<Double> withAnother = new ArrayList<>();
    for (Suspect suspect : falling) {
      List<Hypothesis> members = suspect.members();
      int leader = leader(members.get(0), leaders);
      if (leader >= 0 && members.stream().allMatch(m -> leader(m, leaders) == leader)) {
        withAnother.set(leader, withAnother.get(leader) + suspect.probability());
      } else {
        members.forEach(m -> leaders.putIfAbsent(m.id(), kept.size()));
        kept.add(suspect);
        withAnother.add(0.0);
      }
    }
    for (int i = 0; i < kept.size(); i++) {
      Suspect one = kept.get(i);
      double more = withAnother.get(i);
      kept.set(
          i,
          new Suspect(
              one.probability() + more, one.withAnother() + more, one.members(), one.grounds()));
    }
    return kept;
  }

  /** The members of a group without the pairs of faults of which one is a member by itself. */
  static List<Candidate> alone(List<Candidate> group) {
    if (group.size() == 1) {
      return group;
    }
    Set<String> ids = group.stream().map(c -> c.hypothesis().id()).collect(Collectors.toSet());
    return group.stream()
        .filter(
            c -> {
              List<String> faults = HypothesisPairs.members(c.hypothesis().id());
              return faults.size() == 1 || faults.stream().noneMatch(ids::contains);
            })
        .toList();
  }

  /** Number of the first suspect that one of two faults belongs to; -1 for none or one fault. */
  private static int leader(Hypothesis hypothesis, Map<String, Integer> leaders) {
    List<String> faults = HypothesisPairs.members(hypothesis.id());
    if (faults.size() < 2) {
      return -1;
    }
    List<Integer> found = new ArrayList<>();
    for (String fault : faults) {
      if (leaders.containsKey(fault)) {
        found.add(leaders.get(fault));
      }
    }
    return found.isEmpty() ? -1 : Collections.min(found);
  }
}
