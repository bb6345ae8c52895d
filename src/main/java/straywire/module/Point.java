package straywire.module;

/**
 * What a probe touches: the leg of a chip, or the row of the board it should sit in. Ends that are
 * not pins have one point only, their row.
 */
public record Point(End end, boolean leg) implements Comparable<Point> {
  public Point {
    if (leg && end.kind() != End.Kind.PIN) {
      throw new IllegalArgumentException("Only a pin has a leg, got " + end);
    }
  }

  @Override
  public int compareTo(Point other) {
    int byEnd = end.compareTo(other.end);
    return byEnd != 0 ? byEnd : Boolean.compare(leg, other.leg);
  }

  /** {@code U1.3} for the leg, {@code U1.3/row} for the row. */
  @Override
  public String toString() {
    return end.kind() == End.Kind.PIN && !leg ? end + "/row" : end.toString();
  }
}
