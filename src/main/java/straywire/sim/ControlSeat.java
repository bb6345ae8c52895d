package straywire.sim;

import straywire.module.Contact;
import straywire.module.End;
import straywire.module.Resistor;

/** A contact on its node: to one rail, with a resistor to the other. */
final class ControlSeat {
  final String label;
  final int node;
  final int firstDriver;

  private final long contactLow;
  private final long contactHigh;
  private final long pullLow;
  private final long pullHigh;
  private final ContactLanes lanes;
  final int pullOhms;
  private final boolean closedWhenHigh;

  ControlSeat(Contact contact, Wiring wiring, Topology topology, int at) {
    label = contact.label();
    node = topology.node(wiring.row(contact.terminal()));
    firstDriver = at;
    int contactRail = topology.node(wiring.rail(contact.closesTo()));
    contactLow = topology.railLow[contactRail];
    contactHigh = topology.railHigh[contactRail];
    if (contact.pullTo().isEmpty()) {
      pullLow = 0;
      pullHigh = 0;
    } else {
      int pullRail = topology.node(wiring.rail(contact.pullTo()));
      pullLow = topology.railLow[pullRail];
      pullHigh = topology.railHigh[pullRail];
    }
    pullOhms = contact.pullOhms();
    closedWhenHigh = contact.closedWhenHigh();
    lanes = new ContactLanes(closedWhenHigh);
  }

  private ControlSeat(String label, int node, Topology topology, int at) {
    this.label = label;
    this.node = node;
    firstDriver = at;
    contactLow = topology.railLow[node];
    contactHigh = topology.railHigh[node];
    pullLow = 0;
    pullHigh = 0;
    pullOhms = 0;
    closedWhenHigh = true;
    lanes = new ContactLanes(closedWhenHigh);
    lanes.fault(Variation.ControlFault.ALWAYS_CLOSED, -1L);
  }

  /** A resistor is a contact that is never closed. */
  static ControlSeat ofResistor(Resistor resistor, Wiring wiring, Topology topology, int at) {
    return new ControlSeat(
        new Contact(
            resistor.label(),
            "",
            resistor.end(),
            resistor.to(),
            true,
            resistor.to(),
            resistor.ohms()),
        wiring,
        topology,
        at);
  }

  /**
   * The rail that an end of a resistor between two lines is wired to, so that it is felt at the
   * other end as a closed contact is.
   */
  static ControlSeat ofRailAt(End end, Wiring wiring, Topology topology, int at) {
    return new ControlSeat(end.toString(), topology.node(wiring.row(end)), topology, at);
  }

  /** Puts a resistor's pull on its node. */
  void pull(Drivers drivers, long[] state, long used) {
    move(!closedWhenHigh, drivers, state, used);
  }

  void fault(Variation.ControlFault fault, long lane) {
    lanes.fault(fault, lane);
  }

  /** Lanes in which this position closes the contact. */
  long closed(boolean high, long used) {
    return lanes.closed(high, used);
  }

  /** Lanes in which this position joins the terminal to supply, or to ground. */
  long joins(boolean supply, boolean high, long used) {
    return closed(high, used) & (supply ? contactHigh : contactLow);
  }

  /** Opens the contact where it is closed and the new position opens it; returns those lanes. */
  long leave(boolean high, Drivers drivers, long[] state, long used) {
    long stays = closed(high, used);
    return drivers.set(
        state,
        firstDriver,
        drivers.high(state, firstDriver) & stays,
        drivers.low(state, firstDriver) & stays);
  }

  /** Moves the control; returns the lanes in which what it drives changed. */
  long move(boolean high, Drivers drivers, long[] state, long used) {
    long closed = closed(high, used);
    long contact = drivers.set(state, firstDriver, contactHigh & closed, contactLow & closed);
    long pull =
        drivers.set(
            state,
            firstDriver + 1,
            pullHigh & ~lanes.noPull() & used,
            pullLow & ~lanes.noPull() & used);
    return contact | pull;
  }

  /**
   * Lanes in which the contact, just closed, opens and closes again.
   *
   * @param bounce which time, from 0
   */
  long bounces(int bounce) {
    return lanes.bounces(bounce);
  }

  /** In lanes {@code where} the closed contact opens, or may be open. */
  void open(int bounce, Drivers drivers, long[] state, long where) {
    long may = lanes.mayBounce(bounce);
    drivers.setIn(state, firstDriver, contactHigh & may, contactLow & may, -1L, where);
  }

  /** In lanes {@code where} the contact closes again. */
  void closeAgain(Drivers drivers, long[] state, long where) {
    drivers.setIn(state, firstDriver, contactHigh, contactLow, ~(contactHigh | contactLow), where);
  }
}
