package straywire.electrical;

import java.util.List;

/**
 * Where a net settles: the currents of all its branches add up to nothing (Kirchhoff's current
 * law).
 */
public final class OperatingPoint {
  private static final int HALVINGS = 50;
  private static final double NOTHING_MILLIAMPS = 1e-9;

  private OperatingPoint() {}

  /**
   * Usual voltage of a net with these branches, 0 to 5 V, found by halving; the lowest one where
   * the net could stay at several.
   */
  public static double volts(List<? extends Branch> branches) {
    double low = 0;
    double high = Branch.SUPPLY_VOLTS;
    for (int i = 0; i < HALVINGS; i++) {
      double middle = (low + high) / 2;
      double leaving = branches.stream().mapToDouble(b -> b.milliamps(middle)).sum();
      if (leaving < -NOTHING_MILLIAMPS) {
        low = middle;
      } else {
        high = middle;
      }
    }
    return (low + high) / 2;
  }
}
