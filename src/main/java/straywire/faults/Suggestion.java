package straywire.faults;

import java.util.List;

/**
 * A mechanism at a place, as a rule suggests it.
 *
 * @param rule id of the rule, such as {@code WIRE-03}
 * @param places labels in the order {@link Mechanism} gives: a pin {@code U1.3}, a leg or row as
 *     {@code Point} writes it, a jumper {@code U1.3-U2.3}, a part, lamp, control or rail segment
 * @param weight how much likelier than usual this mechanism is here; 1 is usual. The usual
 *     frequency itself comes from the table of priors.
 */
public record Suggestion(
    String rule, Mechanism mechanism, List<String> places, double weight, String reason) {
  public Suggestion {
    places = List.copyOf(places);
    if (!(weight > 0)) {
      throw new IllegalArgumentException("A suggestion's weight is above 0, got " + weight);
    }
  }
}
