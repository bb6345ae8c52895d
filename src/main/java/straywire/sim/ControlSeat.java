package straywire.sim;

import straywire.module.Control;
import straywire.module.Module;
import straywire.module.RailSegment;

/** A control on its node: a contact to one rail and a resistor to the other. */
final class ControlSeat {
  final Control control;
  final int node;
  final int firstDriver;

  private final long contactLow;
  private final long contactHigh;
  private final long pullLow;
  private final long pullHigh;
  private long neverCloses;
  private long alwaysClosed;
  private long noPull;
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

  void fault(Variation.ControlFault fault, long lane) {
    switch (fault) {
      case NEVER_CLOSES -> neverCloses |= lane;
      case ALWAYS_CLOSED -> alwaysClosed |= lane;
      case NO_PULL -> noPull |= lane;
    }
  }

  /** Moves the control; returns true when what it drives changed. */
  boolean move(boolean high, Drivers drivers, long[] state, long used) {
    long closed = ((high == closedLevel ? used : 0) & ~neverCloses) | alwaysClosed;
    boolean contact = drivers.set(state, firstDriver, contactHigh & closed, contactLow & closed);
    boolean pull =
        drivers.set(state, firstDriver + 1, pullHigh & ~noPull & used, pullLow & ~noPull & used);
    return contact || pull;
  }
}
