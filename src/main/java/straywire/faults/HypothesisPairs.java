package straywire.faults;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.HashSet;
import java.util.IdentityHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.PriorityQueue;
import java.util.Set;

/** Two faults at once: the union of the edits of two hypotheses. */
public final class HypothesisPairs {
  /** Stands between the two ids of a pair. */
  public static final String PLUS = " + ";

  private HypothesisPairs() {}

  /** Ids of the single hypotheses in an id: one, or the two of a pair. */
  public static List<String> members(String id) {
    int plus = id.indexOf(PLUS);
    return plus < 0
        ? List.of(id)
        : List.of(id.substring(0, plus), id.substring(plus + PLUS.length()));
  }

  /**
   * Both at once, or empty when they contradict each other (the same jumper end, leg, output, lamp
   * or control in two states, a part exchanged twice) or one of them is "nothing is wrong". The
   * pair is the same whichever comes first. Its mechanism is that of the first id.
   *
   * <p>Faults are taken as independent: with {@code p} the priors and {@code p0} that of nothing
   * wrong, the pair's odds against nothing wrong are the product of the two single odds, {@code p =
   * p1 * p2 / p0}.
   *
   * @param nothingWrong prior of nothing wrong on the same scale as the two priors, above 0
   */
  public static Optional<Hypothesis> pair(Hypothesis one, Hypothesis other, double nothingWrong) {
    boolean inOrder = ORDER.compare(one, other) <= 0;
    Hypothesis a = inOrder ? one : other;
    Hypothesis b = inOrder ? other : one;
    if (a.mechanism() == Mechanism.NOTHING_WRONG || contradict(a, b)) {
      return Optional.empty();
    }
    List<Edit> edits = new ArrayList<>(a.edits());
    edits.addAll(b.edits());
    return Optional.of(
        new Hypothesis(
            a.id() + PLUS + b.id(),
            a.mechanism(),
            edits,
            a.prior() * b.prior() / nothingWrong,
            a.rule().equals(b.rule()) ? a.rule() : a.rule() + ", " + b.rule(),
            a.reason().equals(b.reason()) ? a.reason() : a.reason() + " " + b.reason(),
            a.words() + "; also: " + b.words(),
            a.repair() + " " + withoutSameCaution(a.repair(), b.repair())));
  }

  /**
   * The likeliest pairs by prior, falling; of equal ones that of the earlier singles first. A pair
   * whose edits are those of a single, or of a pair already listed, is left out.
   *
   * @param singles hypotheses to join, most wanted first; nothing wrong among them is passed over
   * @param nothingWrong prior of nothing wrong on the scale of the singles, above 0
   * @param cap most pairs to give, 0 or more
   */
  public static List<Hypothesis> pairs(List<Hypothesis> singles, double nothingWrong, int cap) {
    if (cap < 0) {
      throw new IllegalArgumentException("The cap on pairs is 0 or more, got " + cap);
    }
    List<Hypothesis> falling =
        singles.stream()
            .filter(h -> h.mechanism() != Mechanism.NOTHING_WRONG)
            .sorted(Comparator.comparingDouble(Hypothesis::prior).reversed())
            .toList();
    EditNumbers numbers = new EditNumbers();
    Set<Set<Integer>> known = new HashSet<>();
    singles.forEach(h -> known.add(numbers.of(h.edits())));
    // Each first partner waits with its best second one; the next comes in when that is taken, so
    // that no more pairs are made than are looked at.
    PriorityQueue<Partners> waiting =
        new PriorityQueue<>(
            Comparator.comparingDouble(Partners::product)
                .reversed()
                .thenComparingInt(Partners::first)
                .thenComparingInt(Partners::second));
    for (int i = 0; i + 1 < falling.size(); i++) {
      waiting.add(Partners.of(falling, i, i + 1));
    }
    List<Hypothesis> pairs = new ArrayList<>();
    while (pairs.size() < cap && !waiting.isEmpty()) {
      Partners next = waiting.remove();
      if (next.second() + 1 < falling.size()) {
        waiting.add(Partners.of(falling, next.first(), next.second() + 1));
      }
      pair(falling.get(next.first()), falling.get(next.second()), nothingWrong)
          .filter(p -> known.add(numbers.of(p.edits())))
          .ifPresent(pairs::add);
    }
    return pairs;
  }

  /**
   * A number for each edit, equal ones alike: sets of numbers compare faster than sets of edits.
   */
  private static final class EditNumbers {
    private final Map<Edit, Integer> numbers = new HashMap<>();
    private final IdentityHashMap<Edit, Integer> seen = new IdentityHashMap<>();

    Set<Integer> of(List<Edit> edits) {
      Set<Integer> set = new HashSet<>();
      for (Edit edit : edits) {
        set.add(
            seen.computeIfAbsent(edit, e -> numbers.computeIfAbsent(e, fresh -> numbers.size())));
      }
      return set;
    }
  }

  private static final Comparator<Hypothesis> ORDER =
      Comparator.comparing(Hypothesis::mechanism).thenComparing(Hypothesis::id);

  private record Partners(int first, int second, double product) {
    static Partners of(List<Hypothesis> singles, int first, int second) {
      return new Partners(first, second, singles.get(first).prior() * singles.get(second).prior());
    }
  }

  private static boolean contradict(Hypothesis a, Hypothesis b) {
    return a.edits().stream()
        .anyMatch(x -> b.edits().stream().anyMatch(y -> x.claim().contradicts(y.claim())));
  }

  private static String withoutSameCaution(String before, String repair) {
    for (String caution : List.of(Draft.POWER_OFF, Draft.MAY_BE_HOT)) {
      if (before.startsWith(caution) && repair.startsWith(caution)) {
        return repair.substring(caution.length());
      }
    }
    return repair;
  }
}
