package straywire.faults;

import java.util.List;

/**
 * The physical thing an edit decides about, as a path from the whole to the detail: {@code jumper,
 * U1.3-U2.3, U2.3} is one end of a jumper. Two edits contradict each other when one's path starts
 * with the other's; the empty path decides about everything.
 */
public record Claim(List<String> path) {
  public Claim {
    path = List.copyOf(path);
  }

  public static Claim of(String... path) {
    return new Claim(List.of(path));
  }

  public boolean contradicts(Claim other) {
    int shorter = Math.min(path.size(), other.path.size());
    return path.subList(0, shorter).equals(other.path.subList(0, shorter));
  }
}
