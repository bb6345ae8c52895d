package straywire.advice;

import java.util.ArrayList;
import java.util.List;

/** Joins lists of places for suggestions that concern several buses. */
public final class Places {
  private Places() {}

  /**
   * Two lists of (jumper, end) pairs as one list whose reversal reverses each on its own: {@code
   * inner} goes into the middle of {@code outer}.
   *
   * @throws IllegalArgumentException when {@code outer} has an odd number of pairs
   */
  public static List<String> nested(List<String> outer, List<String> inner) {
    if (outer.size() % 4 != 0) {
      throw new IllegalArgumentException("The outer bus needs an even width, got " + outer);
    }
    List<String> all = new ArrayList<>(outer.subList(0, outer.size() / 2));
    all.addAll(inner);
    all.addAll(outer.subList(outer.size() / 2, outer.size()));
    return List.copyOf(all);
  }
}
