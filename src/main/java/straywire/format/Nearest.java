package straywire.format;

import java.util.Collection;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.TreeSet;

/** Finds the valid name that a wrong one was most likely meant to be. */
public final class Nearest {
  private static final int LISTED_AT_MOST = 8;

  private Nearest() {}

  /**
   * The closest name by letters changed, added, left out or swapped, letter case apart; of equals
   * one as long as the wrong one, then the first in sort order. Empty when more than a third of the
   * letters differ (one letter of two; none of one).
   */
  public static Optional<String> to(String wrong, Collection<String> valid) {
    String small = wrong.toLowerCase(Locale.ROOT);
    int tolerated = wrong.length() == 1 ? 0 : Math.max(1, wrong.length() / 3);
    return valid.stream()
        .filter(name -> !wrong.isEmpty() && distance(small, name) <= tolerated)
        .min(
            Comparator.comparingInt((String name) -> distance(small, name))
                .thenComparingInt(name -> Math.abs(name.length() - wrong.length()))
                .thenComparing(Comparator.naturalOrder()));
  }

  /**
   * The tail of an error line: {@code ; nearest is X}, else {@code ; known are A, B}, else nothing.
   */
  public static String hint(String wrong, Collection<String> valid) {
    Optional<String> nearest = to(wrong, valid);
    if (nearest.isPresent()) {
      return "; nearest is " + nearest.get();
    }
    List<String> sorted = List.copyOf(new TreeSet<>(valid));
    if (sorted.isEmpty()) {
      return "";
    }
    if (sorted.size() <= LISTED_AT_MOST) {
      return "; known are " + String.join(", ", sorted);
    }
    return "; known are "
        + String.join(", ", sorted.subList(0, LISTED_AT_MOST))
        + " and "
        + (sorted.size() - LISTED_AT_MOST)
        + " more";
  }

  /** Edit distance with swaps of neighbouring letters (optimal string alignment). */
  private static int distance(String a, String name) {
    String b = name.toLowerCase(Locale.ROOT);
    int[][] cost = new int[a.length() + 1][b.length() + 1];
    for (int i = 0; i <= a.length(); i++) {
      for (int j = 0; j <= b.length(); j++) {
        if (i == 0 || j == 0) {
          cost[i][j] = i + j;
          continue;
        }
        int change = a.charAt(i - 1) == b.charAt(j - 1) ? 0 : 1;
        cost[i][j] =
            Math.min(cost[i - 1][j - 1] + change, 1 + Math.min(cost[i - 1][j], cost[i][j - 1]));
        if (i > 1
            && j > 1
            && a.charAt(i - 1) == b.charAt(j - 2)
            && a.charAt(i - 2) == b.charAt(j - 1)) {
          cost[i][j] = Math.min(cost[i][j], 1 + cost[i - 2][j - 2]);
        }
      }
    }
    return cost[a.length()][b.length()];
  }
}
