package straywire.module;

/**
 * One wire of a module as meant.
 *
 * @param net the net it belongs to
 */
public record Jumper(String net, End from, End to) {
  public Jumper {
    if (from.equals(to)) {
      throw new IllegalArgumentException("A jumper joins two places, got only " + from);
    }
  }

  /** The name a person uses for it, such as {@code U1.3-U2.3}. */
  public String name() {
    return from + "-" + to;
  }

  public boolean touches(End end) {
    return from.equals(end) || to.equals(end);
  }

  /** The end that is not this one. */
  public End other(End end) {
    return end.equals(from) ? to : from;
  }

  @Override
  public String toString() {
    return name();
  }
}
