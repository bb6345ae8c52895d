package straywire.electrical;

import straywire.parts.Family;

/**
 * What is left between what an output is sure to give and what an input is sure to take, volts;
 * negative when it is not sure to be read.
 */
public record FamilyMargin(double lowVolts, double highVolts) {
  /** Margins of an ordinary output of one family into an input of another: VIL-VOL and VOH-VIH. */
  public static FamilyMargin of(Family driver, Family listener) {
    Currents drives = ElectricalTable.shipped().currents(driver);
    // A CMOS high is loaded by next to nothing when it only drives CMOS: VCC-0.1 in the data
    // sheets.
    boolean unloaded = driver.feedsThroughInputs() && listener.feedsThroughInputs();
    double low = unloaded ? driver.low().most() : drives.low().volts();
    double high = unloaded ? driver.high().least() : drives.high().volts();
    return new FamilyMargin(listener.inputLowMax() - low, high - listener.inputHighMin());
  }

  public boolean sure() {
    return lowVolts >= 0 && highVolts >= 0;
  }
}
