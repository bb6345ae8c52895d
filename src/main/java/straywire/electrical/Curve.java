package straywire.electrical;

import java.util.List;

/**
 * What an output usually gives: volts over milliamps, straight between the points and beyond them.
 * Volts only rise (an output's low) or only fall (its high) with the current.
 */
public record Curve(List<Point> points) {
  /** One point of the curve. */
  public record Point(double milliamps, double volts) {}

  public Curve {
    points = List.copyOf(points);
    if (points.size() < 2) {
      throw new IllegalArgumentException("A curve has at least two points, got " + points);
    }
  }

  /** The same output made {@code times} as strong: each voltage at as many times the current. */
  Curve stronger(double times) {
    return new Curve(
        points.stream().map(p -> new Point(p.milliamps() * times, p.volts())).toList());
  }

  /** Milliamps at which the output is at {@code volts}; may be negative beyond the first point. */
  double milliamps(double volts) {
    int at = 1;
    while (at < points.size() - 1 && beyond(points.get(at), volts)) {
      at++;
    }
    Point from = points.get(at - 1);
    Point to = points.get(at);
    double share = (volts - from.volts()) / (to.volts() - from.volts());
    return from.milliamps() + share * (to.milliamps() - from.milliamps());
  }

  private boolean beyond(Point point, double volts) {
    boolean rising = points.get(1).volts() > points.get(0).volts();
    return rising ? volts > point.volts() : volts < point.volts();
  }
}
