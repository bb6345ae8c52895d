package straywire.module;

import java.util.ArrayList;
import java.util.List;

/**
 * Ends meant to be joined.
 *
 * @param ends in the order the jumpers run when {@code orderKnown}; a net on a rail always starts
 *     with the rail segment and each other end has its own jumper to it
 * @param orderKnown false when only the set of ends is known
 */
public record Net(String name, List<End> ends, boolean orderKnown) {
  public Net {
    ends = List.copyOf(ends);
  }

  public boolean onRail() {
    return ends.get(0).kind() == End.Kind.RAIL;
  }

  /** Runs from end to end; a star from the first end on a rail or when the order is unknown. */
  public List<Jumper> jumpers() {
    List<Jumper> jumpers = new ArrayList<>();
    boolean star = onRail() || !orderKnown;
    for (int i = 1; i < ends.size(); i++) {
      jumpers.add(new Jumper(name, star ? ends.get(0) : ends.get(i - 1), ends.get(i)));
    }
    return jumpers;
  }
}
