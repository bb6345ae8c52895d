package straywire.electrical;

import straywire.electrical.Currents.Rated;
import straywire.parts.Family;

/**
 * How much of what an output may drive is used, static.
 *
 * @param usedLowMilliamps what it must sink at a low: inputs at their most, pull-ups, lamps to the
 *     supply
 * @param usedHighMilliamps what it must source at a high: inputs at their most and pull-downs;
 *     lamps are judged by the voltage they leave
 */
public record FanOut(
    double usedLowMilliamps,
    double allowedLowMilliamps,
    double usedHighMilliamps,
    double allowedHighMilliamps) {

  public boolean lowExceeded() {
    return usedLowMilliamps > allowedLowMilliamps + 1e-9;
  }

  public boolean highExceeded() {
    return usedHighMilliamps > allowedHighMilliamps + 1e-9;
  }

  /**
   * Inputs of one family that one output of another may drive: the lesser of {@code IOL / IIL} and
   * {@code IOH / IIH}.
   *
   * @param bus true for a bus driver
   */
  public static int inputs(Family driver, boolean bus, Family listener) {
    Currents drives = ElectricalTable.shipped().currents(driver);
    Currents.Input takes = ElectricalTable.shipped().currents(listener).input();
    Rated low = bus ? drives.busLow() : drives.low();
    Rated high = bus ? drives.busHigh() : drives.high();
    double inputs =
        Math.min(low.milliamps() / takes.lowMilliamps(), high.milliamps() / takes.highMilliamps());
    return (int) Math.floor(inputs + 1e-9);
  }
}
