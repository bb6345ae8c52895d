package straywire.electrical;

import java.util.List;
import straywire.parts.Family;

/**
 * What a resistor to ground makes of inputs that let current out.
 *
 * @param usualVolts with inputs as they usually are
 * @param worstVolts with inputs that let out as much as the data sheet allows: {@code R * n * IIL}
 */
public record PullDown(double usualVolts, double worstVolts) {
  /** A pull-down of {@code ohms} under {@code count} inputs of one family, nothing else driving. */
  public static PullDown of(double ohms, Family family, int count) {
    double usual =
        OperatingPoint.volts(
            List.of(new Branch.Resistor(ohms, 0), new Branch.Inputs(family, count)));
    double most = ElectricalTable.shipped().currents(family).input().lowMilliamps();
    double worst = Math.min(ohms * count * most / 1000, family.open().most());
    return new PullDown(usual, Math.max(usual, worst));
  }

  /** The largest pull-down that is sure to read low, ohms: {@code VIL / (n * IIL)}. */
  public static double mostOhms(Family family, int count) {
    double most = ElectricalTable.shipped().currents(family).input().lowMilliamps();
    return family.inputLowMax() / (count * most) * 1000;
  }
}
