package straywire.advice;

import java.util.ArrayList;
import java.util.List;

/** Lists of places for suggestions that concern whole buses. */
public final class Places {
  private Places() {}

  /**
   * Two lists of (jumper, end) pairs as one list whose reversal reverses each on its own: {@code
   * inner} goes into the middle of {@code outer}. The middle line of an odd {@code outer} is left
   * out, since it stays where it is.
   */
  public static List<String> nested(List<String> outer, List<String> inner) {
    int side = outer.size() / 4 * 2;
    List<String> all = new ArrayList<>(outer.subList(0, side));
    all.addAll(inner);
    all.addAll(outer.subList(outer.size() - side, outer.size()));
    return List.copyOf(all);
  }

  /** The jumpers of a list of (jumper, end) pairs. */
  public static List<String> jumpers(List<String> pairs) {
    List<String> jumpers = new ArrayList<>();
    for (int i = 0; i < pairs.size(); i += 2) {
      jumpers.add(pairs.get(i));
    }
    return List.copyOf(jumpers);
  }
}
