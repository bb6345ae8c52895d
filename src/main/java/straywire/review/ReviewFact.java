package straywire.review;

/**
 * What the wiring review knows beyond the wiring itself: what was computed of currents, voltages
 * and logic. Places are labels as the drawing writes them.
 */
public sealed interface ReviewFact {

  /**
   * What hangs on a net that is not on a rail; fitted parts only.
   *
   * @param drivers pins that can drive, open-collector ones included
   * @param onlyPullLow true when there are drivers, all of them open-collector outputs
   * @param listeners input pins
   * @param contacts switches and buttons
   * @param needsHigh true when an input listens, or a lamp lights on a high
   * @param fed true when something drives it through resistors
   */
  record NetFact(
      String net,
      int drivers,
      boolean onlyPullLow,
      int listeners,
      int contacts,
      boolean needsHigh,
      boolean pulledUp,
      boolean pulledDown,
      boolean port,
      boolean fed)
      implements ReviewFact {}

  /**
   * A net whose inputs are brought low through resistors that are too large for them.
   *
   * @param ohms on the way
   * @param mostOhms that are sure to bring them low
   * @param volts usual, with the far side at 0 V
   * @param lowMaxVolts what they are sure to read as low
   */
  record LowThroughResistor(String net, int ohms, int mostOhms, double volts, double lowMaxVolts)
      implements ReviewFact {}

  /**
   * An input pin.
   *
   * @param used true when an output that depends on it is wired to something
   */
  record InputUse(String pin, boolean used) implements ReviewFact {}

  /** What the part's file says of its inputs when they are left open. */
  record OpenInput(String part, String text) implements ReviewFact {}

  /**
   * A leg at which a package of {@code legs} legs has its supply or ground, tied as if the part
   * were one, while the part's own leg for it is not.
   */
  record CountedAs(String part, String pin, int legs, int own, String power, String rightLeg)
      implements ReviewFact {}

  /** Two outputs on one net, at least one of which can never let go. */
  record JoinedOutputs(String net, String one, String other, Together together, String setting)
      implements ReviewFact {}

  /**
   * Outputs that can let go, of two parts or of one, that share lines.
   *
   * @param place the part or parts
   * @param lines names of the nets
   * @param setting one in which both drive; empty unless that is sometimes so
   */
  record Talkers(String place, String lines, Together together, String setting)
      implements ReviewFact {}

  /**
   * Lines that every output on them may let go of at once.
   *
   * @param place the part or parts that drive them
   * @param cmosListens true when a CMOS input listens
   */
  record Released(String place, String lines, boolean cmosListens) implements ReviewFact {}

  /** An output on a rail whose level it is not always at; only at ground may one that pulls low. */
  record OutputOnRail(String pin, String rail) implements ReviewFact {}

  /** A two-way pin on a rail that drives in some setting. */
  record TiedTwoWay(String pin, String rail) implements ReviewFact {}

  /**
   * A contact on a line that an output drives.
   *
   * @param fights true when the output can be at the level that the contact does not go to
   */
  record ContactOnOutput(String control, String pin, boolean toSupply, boolean fights)
      implements ReviewFact {}

  /**
   * A contact as wired.
   *
   * @param pulled true when its line is not left open: by a resistor, or by the other contact of a
   *     change-over
   * @param listening inputs on its line, or behind resistors from there
   */
  record ContactOnNet(
      String control, String net, boolean toSupply, boolean pulled, Listening listening)
      implements ReviewFact {}

  /** Inputs that read a line. */
  enum Listening {
    NOBODY,
    BIPOLAR,
    /** One CMOS input at least. */
    CMOS
  }

  /** What an output has to carry against its rating, milliamps. */
  record Load(String pin, double usedLow, double allowedLow, double usedHigh, double allowedHigh)
      implements ReviewFact {}

  /**
   * An output and an input of a family whose high it is not sure to reach.
   *
   * @param sureVolts what the output is sure to give, {@code neededVolts} what the input needs
   * @param usualVolts what the net usually is
   */
  record Mixing(
      String driver,
      String driverFamily,
      String listener,
      String listenerFamily,
      double sureVolts,
      double usualVolts,
      double neededVolts,
      boolean pulledUp)
      implements ReviewFact {}

  /**
   * A lamp without a resistor.
   *
   * @param driver the output that lights it; empty when it hangs on a contact or a rail
   * @param volts of its net while it is lit
   * @param listener the input on its net that needs most; empty for none
   * @param neededVolts what that input needs for a high
   */
  record BareLamp(
      String lamp,
      String driver,
      boolean toGround,
      double volts,
      double milliamps,
      String listener,
      double neededVolts)
      implements ReviewFact {}

  /**
   * A high that lamps with resistors hold down, and the input that needs most of it.
   *
   * @param marginVolts what is left above the need
   */
  record LoadedHigh(
      String driver, String listener, double volts, double neededVolts, double marginVolts)
      implements ReviewFact {}

  /**
   * A pull-down under inputs that let current out.
   *
   * @param place the control or resistor
   * @param sureOhms the most that is sure to read low
   */
  record PullDownOn(
      String place,
      int ohms,
      int inputs,
      double usualVolts,
      double worstVolts,
      double lowMaxVolts,
      double sureOhms)
      implements ReviewFact {}

  /**
   * A contact whose edges reach clock inputs.
   *
   * @param clock the clock input, or several, such as {@code U1.11 and U2.8}
   * @param straight true when nothing but copies and inverses of it lie between
   * @param nanofarads at the contact
   * @param shaped true when Schmitt inputs alone listen to the contact
   * @param heldMillis how long the capacitor keeps the level while the contact bounces
   * @param bounceMillis how long a usual contact bounces
   */
  record EdgeBy(
      String clock,
      String control,
      boolean button,
      boolean straight,
      double nanofarads,
      boolean shaped,
      double heldMillis,
      double bounceMillis)
      implements ReviewFact {
    EdgeBy at(String clocks) {
      return new EdgeBy(
          clocks, control, button, straight, nanofarads, shaped, heldMillis, bounceMillis);
    }
  }

  /**
   * The capacitor across a part's supply legs.
   *
   * @param nanofarads 0 for none
   * @param spikes true for a part that loads the supply with spikes
   */
  record PartCapacitor(String part, double nanofarads, boolean spikes) implements ReviewFact {}

  /** A rail that is linked to none, though {@code first} of the same level is there before it. */
  record SecondEntry(String rail, String first) implements ReviewFact {}

  /** The capacitor at a supply rail where power enters; 0 for none. */
  record EntryCapacitor(String rail, double nanofarads) implements ReviewFact {}

  /** A capacitor so large that it is an electrolytic one. */
  record Electrolytic(String place, double nanofarads) implements ReviewFact {}

  /** What the module takes from its supply. */
  record SupplyNeed(String module, double usual, double most, double drop, double farVolts)
      implements ReviewFact {}
}
