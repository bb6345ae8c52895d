package straywire.electrical;

import straywire.module.Fitted;
import straywire.module.Lamp;
import straywire.parts.Family;

/** Something that lets current into a net or out of it. */
public sealed interface Branch {
  /** The supply, volts. */
  double SUPPLY_VOLTS = 5.0;

  /**
   * Milliamps that leave the net through this branch while the net is at {@code netVolts}, 0 to 5;
   * negative when it feeds the net. Never falls while the voltage rises.
   */
  double milliamps(double netVolts);

  /** An output at a low: usual curve of its family. */
  record OutputLow(Curve curve) implements Branch {
    /** One output of a part. */
    public static OutputLow of(Fitted part, int pin) {
      return new OutputLow(ElectricalTable.shipped().curve(part, pin, false));
    }

    @Override
    public double milliamps(double netVolts) {
      return curve.milliamps(netVolts);
    }
  }

  /** An output at a high: usual curve of its family. It lets go when the net is pulled above it. */
  record OutputHigh(Curve curve) implements Branch {
    /** One output of a part. */
    public static OutputHigh of(Fitted part, int pin) {
      return new OutputHigh(ElectricalTable.shipped().curve(part, pin, true));
    }

    @Override
    public double milliamps(double netVolts) {
      return Math.min(0, -curve.milliamps(netVolts));
    }
  }

  /** A resistor to a rail. */
  record Resistor(double ohms, double railVolts) implements Branch {
    @Override
    public double milliamps(double netVolts) {
      return (netVolts - railVolts) / ohms * 1000;
    }
  }

  /**
   * A red LED, with {@code ohms} in series or 0: nothing below its threshold, then a straight line.
   */
  record Led(double ohms, boolean toGround) implements Branch {
    public static Led of(Lamp lamp) {
      return new Led(lamp.ohms(), lamp.lightsOnHigh());
    }

    @Override
    public double milliamps(double netVolts) {
      double across = toGround ? netVolts : SUPPLY_VOLTS - netVolts;
      ElectricalTable table = ElectricalTable.shipped();
      double over = Math.max(0, across - table.number("led", "threshold"));
      double milliamps = over / (ohms + table.number("led", "slope-ohms")) * 1000;
      return toGround ? milliamps : -milliamps;
    }
  }

  /**
   * Inputs of one family. A bipolar input lets current out while it is below the voltage that it
   * shows when open; leakage is left out.
   */
  record Inputs(Family family, int count) implements Branch {
    @Override
    public double milliamps(double netVolts) {
      Currents.Input input = ElectricalTable.shipped().currents(family).input();
      if (input.usualLowMilliamps() == 0 || netVolts >= family.open().usual()) {
        return 0;
      }
      return -count * input.usualLowMilliamps() * (1 - netVolts / input.openSourceVolts());
    }
  }
}
