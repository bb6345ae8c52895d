package straywire.electrical;

import java.util.List;
import straywire.electrical.NetContents.Pull;
import straywire.module.Fitted;
import straywire.module.Lamp;
import straywire.module.Module;

/**
 * What a module takes from its supply, all lamps lit and all contacts closed. Dynamic current is
 * left out: at the speeds of a bench it is next to nothing.
 *
 * @param partsMilliamps what its parts usually take, and the most they may
 * @param lampsMilliamps all lamps lit
 * @param pullsMilliamps all contacts closed
 * @param dropMillivolts what is lost to the far end of the rails, there and back, at the usual
 *     current
 */
public record SupplyEstimate(
    Range partsMilliamps, double lampsMilliamps, double pullsMilliamps, double dropMillivolts) {

  /** Fitted parts only. */
  public static SupplyEstimate of(Module module) {
    ElectricalTable table = ElectricalTable.shipped();
    double most =
        module.parts().values().stream()
            .filter(Fitted::fitted)
            .mapToDouble(table::mostSupplyMilliamps)
            .sum();
    double usual = most * table.usualSupplyShare();
    double lamps = 0;
    double pulls = 0;
    for (NetContents net : NetContents.of(module)) {
      for (Lamp lamp : net.lamps()) {
        lamps += net.lampMilliamps(lamp);
      }
      for (Pull pull : net.pulls()) {
        pulls += pull.beyond() ? 0 : Branch.SUPPLY_VOLTS / pull.ohms() * 1000;
      }
    }
    double total = usual + lamps + pulls;
    double oneWay = dropMillivolts(total / 1000, table.number("board", "rail-inches"), 2);
    return new SupplyEstimate(new Range(usual, usual, most), lamps, pulls, 2 * oneWay);
  }

  /** Usual current of it all, milliamps. */
  public double usualMilliamps() {
    return partsMilliamps.usual() + lampsMilliamps + pullsMilliamps;
  }

  /** Most current of it all, milliamps. */
  public double mostMilliamps() {
    return partsMilliamps.most() + lampsMilliamps + pullsMilliamps;
  }

  /** Volts left at the far end of a rail that is fed with 5 V. */
  public double farVolts() {
    return Branch.SUPPLY_VOLTS - dropMillivolts / 1000;
  }

  /** Millivolts lost along a stretch of rail: 11 milliohm an inch, 9 a contact. */
  public static double dropMillivolts(double amps, double inches, int contacts) {
    ElectricalTable table = ElectricalTable.shipped();
    return amps
        * (inches * table.number("board", "rail-mohm-per-inch")
            + contacts * table.number("board", "contact-mohm"));
  }

  /** Millivolts lost over one jumper of 10 cm and its two contacts. */
  public static double jumperMillivolts(double amps) {
    ElectricalTable table = ElectricalTable.shipped();
    List<Double> milliohms =
        List.of(table.number("board", "jumper-mohm"), 2 * table.number("board", "contact-mohm"));
    return amps * milliohms.stream().mapToDouble(Double::doubleValue).sum();
  }
}
