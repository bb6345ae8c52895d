package straywire.sim;

import straywire.module.Control;
import straywire.module.Module;
import straywire.module.RailSegment;
import straywire.module.Resistor;

/** A control on its node: a contact to one rail and a resistor to the other. */
final class ControlSeat {
  private static final int MOST_PULL_DOWN_OHMS = 2000;

  /** How often a contact opens again after it closed, at most. */
  static final int MOST_BOUNCES = 3;

  final Control control;
  final int node;
  final int firstDriver;

  private final long contactLow;
  private final long contactHigh;
  private long pullLow;
  private final long pullHigh;
  private long neverCloses;
  private long alwaysClosed;
  private long noPull;

  /** Lanes in which the contact closes more than once, more than twice, more than three times. */
  private final long[] closesAgain = new long[MOST_BOUNCES];

  private long closesAnyhow;
  private final boolean closedLevel;

  ControlSeat(Control control, Module module, Wiring wiring, Topology topology, int node, int at) {
    this.control = control;
    this.node = node;
    firstDriver = at;
    int contactRail = topology.node(wiring.rail(control.closesTo()));
    contactLow = topology.railLow[contactRail];
    contactHigh = topology.railHigh[contactRail];
    if (control.pullTo().isEmpty()) {
      pullLow = 0;
      pullHigh = 0;
    } else {
      int pullRail = topology.node(wiring.rail(control.pullTo()));
      pullLow = topology.railLow[pullRail];
      pullHigh = topology.railHigh[pullRail];
    }
    closedLevel = module.rail(control.closesTo()).map(RailSegment::supply).orElse(false);
  }

  /** A resistor is a control without a contact. */
  static ControlSeat ofResistor(
      Resistor resistor, Module module, Wiring wiring, Topology topology, int node, int at) {
    boolean supply = module.rail(resistor.to()).map(RailSegment::supply).orElse(false);
    Control asControl =
        new Control(
            resistor.label(),
            Control.Kind.SWITCH,
            "",
            resistor.to(),
            resistor.to(),
            resistor.ohms(),
            !supply);
    return new ControlSeat(asControl, module, wiring, topology, node, at);
  }

  /** Puts a resistor's pull on its node. */
  void pull(Drivers drivers, long[] state, long used) {
    move(control.restLevel(), drivers, state, used);
  }

  /**
   * A pull-down above 2 kilohm cannot hold down an input of a bipolar part: 0.8 V at 0.4 mA
   * (Fairchild DM74LS00); measured 1.3 V with 10 kilohm (Electronics Stack Exchange 336728).
   *
   * @param leaning lanes in which such an input hangs on the control
   */
  void heldUpBy(long leaning) {
    if (control.pullOhms() > MOST_PULL_DOWN_OHMS) {
      pullLow &= ~leaning;
    }
  }

  void fault(Variation.ControlFault fault, long lane) {
    switch (fault) {
      case NEVER_CLOSES -> neverCloses |= lane;
      case ALWAYS_CLOSED -> alwaysClosed |= lane;
      case NO_PULL -> noPull |= lane;
      case CLOSES_ANYHOW -> closesAnyhow |= lane;
      case CLOSES_TWICE, CLOSES_THREE_TIMES, CLOSES_FOUR_TIMES -> {
        for (int bounce = 0; bounce < fault.closings() - 1; bounce++) {
          closesAgain[bounce] |= lane;
        }
      }
    }
  }

  /** Moves the control; returns the lanes in which what it drives changed. */
  long move(boolean high, Drivers drivers, long[] state, long used) {
    long closed = ((high == closedLevel ? used : 0) & ~neverCloses) | alwaysClosed;
    long contact = drivers.set(state, firstDriver, contactHigh & closed, contactLow & closed);
    long pull =
        drivers.set(state, firstDriver + 1, pullHigh & ~noPull & used, pullLow & ~noPull & used);
    return contact | pull;
  }

  /**
   * Lanes in which the contact, just closed, opens and closes again.
   *
   * @param bounce which time, from 0
   */
  long bounces(int bounce) {
    return closesAgain[bounce] | (bounce == 0 ? closesAnyhow : 0);
  }

  /** Whether this position is the one at which the contact is closed. */
  boolean closes(boolean high) {
    return high == closedLevel;
  }

  /** In lanes {@code where} the closed contact opens, or may be open. */
  void open(Drivers drivers, long[] state, long where) {
    long may = closesAnyhow & ~closesAgain[0];
    drivers.setIn(state, firstDriver, contactHigh & may, contactLow & may, -1L, where);
  }

  /** In lanes {@code where} the contact closes again. */
  void closeAgain(Drivers drivers, long[] state, long where) {
    drivers.setIn(state, firstDriver, contactHigh, contactLow, ~(contactHigh | contactLow), where);
  }
}
