package straywire.module;

import java.util.List;

/**
 * A resistor between two lines, each at one of its ends. What drives one line holds the other as
 * well, but gives way there to whatever drives that itself.
 *
 * @param ohms from 1
 */
public record SeriesResistor(String label, int ohms) {
  /** Where its legs are: end 1, end 2. */
  public List<End> ends() {
    return List.of(end(1), end(2));
  }

  private End end(int leg) {
    return new End(End.Kind.RESISTOR, label, leg);
  }

  /** The end across from one of the two. */
  public End across(End end) {
    return end(3 - end.pin());
  }
}
