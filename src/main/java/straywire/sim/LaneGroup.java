package straywire.sim;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collections;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeMap;
import java.util.stream.Collectors;
import straywire.module.Contact;
import straywire.module.Contents;
import straywire.module.End;
import straywire.module.Fitted;
import straywire.module.Lamp;
import straywire.module.Pass;
import straywire.module.Point;
import straywire.module.Resistor;
import straywire.module.SeriesResistor;
import straywire.parts.Part;

/**
 * Up to 64 variations of one module, compiled. Immutable but for scratch space: everything that
 * changes lies in a state array, so that a snapshot is a copy of it. Not for use by two threads.
 *
 * <p>A state holds, in this order: node levels (may be high, may be low, may be open), driver
 * levels (the same), the memory of each part seat, raised lanes of each seat, unstable lanes of
 * each node. What happens in a lane depends on that lane alone: other lanes only decide which words
 * are worked out again, and working a lane at rest again changes nothing in it.
 */
final class LaneGroup {
  final Wiring wiring;
  final Topology topology;
  final List<PartSeat> seats = new ArrayList<>();
  final Drivers drivers;
  final Reach reach;
  final NetSolver solver;
  final int nodes;

  /** Lanes in which a lamp cannot light, by lamp label. */
  final Map<String, Long> deadLamps = new TreeMap<>();

  /** Lanes without a sane supply: no logic is simulated in them. */
  private final long noLogic;

  /** Lanes in which some part keeps its contents without power. */
  final long keeping;

  /** Lanes in which copper joins supply and ground. */
  private final long joinedRails;

  /** Lanes in which a bare LED holds a node's high down; lanes in which an input leans on it. */
  final long[] clamped;

  final long[] leaning;

  private final Map<String, ControlSeat> contacts = new TreeMap<>();

  /**
   * The contacts of each control to rails: one, two of a change-over, none of one between lines.
   */
  private final Map<String, List<ControlSeat>> controls = new TreeMap<>();

  private final Set<String> changeOvers;

  /** The contacts between lines, in the order of {@link Wiring#passes}. */
  private final List<ContactLanes> passes = new ArrayList<>();

  private final Map<String, Integer> lampNodes = new HashMap<>();
  private final List<ControlSeat> resistors = new ArrayList<>();
  private final int[][] seatsOnNode;
  private final int raisedAt;
  private final int unstableAt;
  private final int shortedAt;
  private final int stateLength;

  // Scratch of one settle.
  private final long[] before;
  private final long[] solved = new long[3];
  private final long[] raised = new long[1];
  private final long[] contactHigh;
  private final long[] contactLow;
  private final boolean[] touchedDrivers;
  private final boolean[] touchedNodes;
  private final boolean[] touchedSeats;

  /**
   * @param standing of the change-overs between lines; states go from one standing to another as
   *     they are
   */
  LaneGroup(Wiring wiring, List<Variation> variations, Standing standing) {
    this.wiring = wiring;
    topology = new Topology(wiring, variations, passing(variations, standing));
    nodes = topology.nodeCount;
    for (String lamp : wiring.module().lamps().keySet()) {
      lampNodes.put(lamp, topology.node(wiring.row(new End(End.Kind.LAMP, lamp, 0))));
    }
    clamped = bareLeds(variations);
    long dead = 0;
    for (int lane = 0; lane < variations.size(); lane++) {
      dead |= variations.get(lane).noLogic ? Lanes.bit(lane) : 0;
    }
    noLogic = dead;
    joinedRails = joinedRails();
    int driverCount = seatParts(variations);
    keeping =
        seats.stream().filter(s -> s.keeps).mapToLong(s -> s.lanes).reduce(0, (a, b) -> a | b);
    List<ControlSeat> controlSeats = new ArrayList<>();
    wiring.module().controls().keySet().forEach(c -> controls.put(c, new ArrayList<>()));
    for (Contact contact : wiring.module().contacts()) {
      ControlSeat seat = new ControlSeat(contact, wiring, topology, driverCount);
      driverCount += 2;
      contacts.put(contact.label(), seat);
      controls.get(contact.control()).add(seat);
      controlSeats.add(seat);
    }
    changeOvers =
        controls.keySet().stream()
            .filter(label -> controls.get(label).size() > 1)
            .collect(Collectors.toUnmodifiableSet());
    for (Resistor resistor : wiring.module().passives().resistors().values()) {
      resistors.add(ControlSeat.ofResistor(resistor, wiring, topology, driverCount));
      driverCount += 2;
    }
    for (SeriesResistor resistor : wiring.module().passives().series().values()) {
      for (End end : resistor.ends()) {
        resistors.add(ControlSeat.ofRailAt(end, wiring, topology, driverCount));
        driverCount += 2;
      }
    }
    controlSeats.addAll(resistors);
    drivers = new Drivers(seats, controlSeats, 3 * nodes);
    int memoryEnd = seats.isEmpty() ? 3 * (nodes + drivers.count) : endOfMemory();
    raisedAt = memoryEnd;
    unstableAt = raisedAt + seats.size();
    shortedAt = unstableAt + nodes;
    stateLength = shortedAt + 1;
    applyHolds(variations);
    leaning = new long[nodes];
    seats.forEach(
        seat -> {
          seat.connectPower(topology);
          for (int pin : seat.listening) {
            leaning[seat.node[pin]] |= seat.leans();
          }
        });
    topology.spread(leaning);
    reach = new Reach(topology, drivers, wiring);
    solver = new NetSolver(topology, drivers, reach, leaning);
    seatsOnNode = seatsByNode();
    before = new long[3 * nodes];
    contactHigh = new long[nodes];
    contactLow = new long[nodes];
    touchedDrivers = new boolean[drivers.count];
    touchedNodes = new boolean[nodes];
    touchedSeats = new boolean[seats.size()];
  }

  private long[] passing(List<Variation> variations, Standing standing) {
    long used = Lanes.first(variations.size());
    for (Pass pass : wiring.passes()) {
      ContactLanes lanes = new ContactLanes(pass.closedWhenHigh());
      for (int lane = 0; lane < variations.size(); lane++) {
        for (Variation.Labelled<Variation.ControlFault> fault : variations.get(lane).controls) {
          if (fault.label().equals(pass.label())) {
            lanes.fault(fault.fault(), Lanes.bit(lane));
          }
        }
      }
      passes.add(lanes);
    }
    long[] passing = new long[passes.size()];
    Arrays.setAll(passing, i -> standing.closed(wiring.passes().get(i), passes.get(i), used));
    return passing;
  }

  /** Lanes in which some contact between lines opens when a standing is reached. */
  long opened(Standing reached) {
    long opened = 0;
    for (int i = 0; i < passes.size(); i++) {
      opened |= reached.opened(wiring.passes().get(i), passes.get(i), topology.used);
    }
    return opened;
  }

  private int endOfMemory() {
    PartSeat last = seats.get(seats.size() - 1);
    return last.stateAt + last.part.logic().stateLength();
  }

  private long[] bareLeds(List<Variation> variations) {
    long[] marks = new long[nodes];
    for (Lamp lamp : wiring.module().lamps().values()) {
      if (lamp.ohms() == 0 && lamp.lightsOnHigh()) {
        marks[lampNode(lamp.label())] = topology.used;
      }
    }
    for (int lane = 0; lane < variations.size(); lane++) {
      for (Variation.Labelled<Variation.LampFault> lamp : variations.get(lane).lamps) {
        if (lamp.fault() == Variation.LampFault.NO_RESISTOR) {
          marks[lampNode(lamp.label())] |= Lanes.bit(lane);
        } else {
          deadLamps.merge(lamp.label(), Lanes.bit(lane), (a, b) -> a | b);
        }
      }
    }
    topology.spread(marks);
    return marks;
  }

  /** One seat for the part as meant, one for each other part type that sits there in some lane. */
  private int seatParts(List<Variation> variations) {
    int driver = 0;
    Map<String, List<Variation.Socket>> others = new TreeMap<>();
    Map<Variation.Socket, Long> lanesOf = new HashMap<>();
    for (int lane = 0; lane < variations.size(); lane++) {
      for (Variation.Socket socket : variations.get(lane).sockets) {
        if (!lanesOf.containsKey(socket)) {
          others.computeIfAbsent(socket.label(), l -> new ArrayList<>()).add(socket);
        }
        lanesOf.merge(socket, Lanes.bit(lane), (a, b) -> a | b);
      }
    }
    int stateAt = 0;
    for (Fitted fitted : wiring.module().parts().values()) {
      if (!fitted.fitted()) {
        continue;
      }
      long meant = topology.used;
      List<Variation.Socket> sockets = new ArrayList<>();
      for (Variation.Socket socket : others.getOrDefault(fitted.label(), List.of())) {
        meant &= ~lanesOf.get(socket);
        sockets.add(socket);
      }
      sockets.add(0, new Variation.Socket(fitted.label(), fitted.part(), fitted.family()));
      for (int i = 0; i < sockets.size(); i++) {
        Variation.Socket socket = sockets.get(i);
        PartSeat seat =
            new PartSeat(
                fitted.label(),
                socket.part(),
                socket.family(),
                i == 0 ? meant : lanesOf.get(socket),
                legNodes(fitted, socket),
                driver,
                stateAt,
                contents(fitted, socket.part()),
                clamped);
        seats.add(seat);
        driver += seat.driving.length;
        stateAt += socket.part().logic().stateLength();
      }
    }
    // The memories lie behind nodes and drivers, whose number is known only now.
    int pulling = wiring.module().contacts().size() + wiring.module().passives().ends().size();
    int shift = 3 * (nodes + driver + 2 * pulling);
    seats.replaceAll(seat -> seat.movedTo(seat.stateAt + shift));
    return driver;
  }

  /** A part of another type brings contents that nobody knows. */
  private static Contents contents(Fitted meant, Part sits) {
    return sits.type().equals(meant.part().type()) ? meant.contents() : Contents.UNKNOWN;
  }

  private int[] legNodes(Fitted fitted, Variation.Socket socket) {
    int[] node = new int[socket.part().pinCount() + 1];
    for (int pin = 1; pin < node.length; pin++) {
      node[pin] =
          topology.node(
              wiring.leg(End.pin(fitted.label(), Math.min(pin, fitted.part().pinCount()))));
    }
    return node;
  }

  private void applyHolds(List<Variation> variations) {
    for (int lane = 0; lane < variations.size(); lane++) {
      Variation variation = variations.get(lane);
      long bit = Lanes.bit(lane);
      for (Variation.PinHold hold : variation.holds) {
        seats.stream().filter(s -> s.label.equals(hold.part())).forEach(s -> s.hold(hold, bit));
      }
      for (Variation.Labelled<Variation.ContentsFault> fault : variation.contents) {
        seats.stream()
            .filter(s -> s.label.equals(fault.label()))
            .forEach(s -> s.programWrongly(fault.fault(), bit));
      }
      for (String part : variation.unlisted) {
        seats.stream().filter(s -> s.label.equals(part)).forEach(s -> s.unlist(bit));
      }
      for (Variation.Labelled<Variation.ControlFault> fault : variation.controls) {
        if (contacts.containsKey(fault.label())) {
          contacts.get(fault.label()).fault(fault.fault(), bit);
        }
      }
    }
  }

  private int[][] seatsByNode() {
    List<List<Integer>> byNode = new ArrayList<>();
    for (int node = 0; node < nodes; node++) {
      byNode.add(new ArrayList<>());
    }
    for (int i = 0; i < seats.size(); i++) {
      for (int pin : seats.get(i).listening) {
        List<Integer> here = byNode.get(seats.get(i).node[pin]);
        if (!here.contains(i)) {
          here.add(i);
        }
      }
    }
    return byNode.stream()
        .map(l -> l.stream().mapToInt(Integer::intValue).toArray())
        .toArray(int[][]::new);
  }

  long used() {
    return topology.used;
  }

  int node(Point point) {
    return topology.node(wiring.vertex(point));
  }

  boolean lightsOnHigh(String lamp) {
    return wiring.module().lamps().get(lamp).lightsOnHigh();
  }

  int lampNode(String lamp) {
    return lampNodes.get(lamp);
  }

  /**
   * Lanes in which two nodes are joined, power off: through edges and contacts between lines,
   * through one rail, or through closed contacts to one rail.
   *
   * @param levels where controls stand; of one that is not there no contact is closed
   */
  long joined(int a, int b, Map<String, Boolean> levels) {
    long[] fromA = reached(a);
    long[] fromB = reached(b);
    return fromA[b]
        | (atRail(true, a, fromA, levels) & atRail(true, b, fromB, levels))
        | (atRail(false, a, fromA, levels) & atRail(false, b, fromB, levels));
  }

  private long[] reached(int node) {
    long[] reached = new long[nodes];
    topology.reach(node, topology.used, reached);
    return reached;
  }

  private long atRail(boolean supply, int node, long[] reached, Map<String, Boolean> levels) {
    long at = supply ? topology.railHigh[node] : topology.railLow[node];
    for (Map.Entry<String, Boolean> level : levels.entrySet()) {
      for (ControlSeat seat : controls.get(level.getKey())) {
        at |= reached[seat.node] & seat.joins(supply, level.getValue(), topology.used);
      }
    }
    return at;
  }

  long mayBeHigh(long[] state, int node) {
    return state[node];
  }

  long mayBeLow(long[] state, int node) {
    return state[nodes + node];
  }

  long mayBeOpen(long[] state, int node) {
    return state[2 * nodes + node];
  }

  long raised(long[] state, int seat) {
    return state[raisedAt + seat];
  }

  /** Lanes in which a node does not come to rest; both its levels are possible in these. */
  long unstable(long[] state, int node) {
    return state[unstableAt + node] & state[node] & state[nodes + node];
  }

  int unstableAt(int node) {
    return unstableAt + node;
  }

  /**
   * A level that was widened may be wider than what drives it. Every lane starts from its drivers
   * again, whatever the others do; a node whose level is still open to both sides stays marked.
   */
  private void restart(long[] state) {
    long widened = 0;
    for (int node = 0; node < nodes; node++) {
      widened |= state[unstableAt + node];
      state[unstableAt + node] = unstable(state, node);
    }
    if (widened != 0) {
      Arrays.fill(touchedNodes, true);
    }
  }

  /**
   * A state just after power-up with the controls as given: all settled, nothing remembered but
   * what is kept without power.
   *
   * @param off the state in which the power went off; empty when nothing is known of it but what
   *     the module states of programmed memories
   */
  long[] powerUp(Map<String, Boolean> levels, Optional<long[]> off) {
    long[] state = newState();
    off.ifPresent(
        was -> {
          seats.stream().filter(seat -> seat.keeps).forEach(seat -> seat.wake(state, was));
          forgetAll(state, -1L);
        });
    // Nodes without a driver, tied to a rail or open, are solved here once and for all.
    Arrays.fill(touchedNodes, true);
    Arrays.fill(touchedSeats, true);
    setContacts(state, levels);
    settle(state, -1L);
    startOver(state);
    return state;
  }

  /** Nothing is known but what memories were programmed with. */
  long[] newState() {
    long[] state = new long[stateLength];
    for (PartSeat seat : seats) {
      seat.part.logic().forget(state, seat.stateAt, -1L);
      seat.program(state);
    }
    forgetAll(state, -1L);
    return state;
  }

  /** Puts the contacts of these controls and every resistor on their nodes. */
  private void setContacts(long[] state, Map<String, Boolean> levels) {
    levels.forEach(
        (label, high) ->
            controls.get(label).forEach(seat -> seat.move(high, drivers, state, topology.used)));
    resistors.forEach(seat -> seat.pull(drivers, state, topology.used));
  }

  /** Begins to take down anew which remembered bits move. */
  void startOver(long[] state) {
    seats.forEach(seat -> seat.part.logic().startOver(state, seat.stateAt));
  }

  /** Lanes in which an unknown bit of the part may be another one since {@link #startOver}. */
  long moved(long[] state, String part, int cell, long lanes) {
    long moved = 0;
    for (PartSeat seat : seats) {
      if (seat.label.equals(part) && (seat.lanes & lanes) != 0) {
        moved |= seat.part.logic().moved(state, seat.stateAt, cell) & seat.lanes & lanes;
      }
    }
    return moved;
  }

  /** Whether a remembered bit of a part holds its value without power, in the lane of one bit. */
  boolean keeps(String part, int cell, long lane) {
    for (PartSeat seat : seats) {
      if (seat.keeps && seat.label.equals(part) && (seat.lanes & lane) != 0) {
        return seat.part.logic().keeps(cell);
      }
    }
    return false;
  }

  /**
   * Opens what a move opens, before anything closes, and lets the module settle: a change-over
   * breaks before it makes.
   *
   * @param opened lanes in which copper opens as well, this group standing after that
   */
  void leave(long[] state, HandMove move, long opened) {
    if (opened == 0 && Collections.disjoint(changeOvers, move.levels().keySet())) {
      return;
    }
    long[] settled = state.clone();
    long lanes = opened;
    for (Map.Entry<String, Boolean> level : move.levels().entrySet()) {
      if (!changeOvers.contains(level.getKey())) {
        continue;
      }
      for (ControlSeat seat : controls.get(level.getKey())) {
        long left = seat.leave(level.getValue(), drivers, state, topology.used);
        if (left != 0) {
          touchedDrivers[seat.firstDriver] = true;
          lanes |= left;
        }
      }
    }
    if (lanes != 0) {
      if (opened != 0) {
        takeUp(state, move);
      }
      settle(state);
      keepOutside(lanes, settled, state);
    }
  }

  /**
   * Closes what a move closes, and lets the module settle.
   *
   * @param moved true when copper is another than before
   * @return lanes in which a contact to a rail closed that may bounce, by its label
   */
  Map<String, Long> make(long[] state, HandMove move, boolean moved) {
    if (moved) {
      takeUp(state, move);
    }
    Map<String, Long> closing = new TreeMap<>();
    move.levels()
        .forEach(
            (label, high) -> {
              for (ControlSeat seat : controls.get(label)) {
                long changed = seat.move(high, drivers, state, topology.used);
                if (changed != 0) {
                  touchedDrivers[seat.firstDriver] = true;
                }
                long closed = changed & seat.closed(high, topology.used);
                if ((closed & seat.bounces(0)) != 0) {
                  closing.put(seat.label, closed);
                }
              }
            });
    settle(state);
    return closing;
  }

  /** Lanes in which anything that just closed opens and closes again. */
  long again(HandMove.Bounce bounce) {
    long lanes = bounce.copper();
    for (Map.Entry<String, Long> closed : bounce.closed().entrySet()) {
      lanes |= contacts.get(closed.getKey()).bounces(bounce.number()) & closed.getValue();
    }
    return lanes;
  }

  /** What bounces opens, or closes again, all at once, and the module settles. */
  void bounce(long[] state, HandMove move, HandMove.Bounce bounce, boolean open) {
    for (Map.Entry<String, Long> closed : bounce.closed().entrySet()) {
      ControlSeat seat = contacts.get(closed.getKey());
      long where = seat.bounces(bounce.number()) & closed.getValue();
      if (where != 0) {
        touchedDrivers[seat.firstDriver] = true;
        if (open) {
          seat.open(bounce.number(), drivers, state, where);
        } else {
          seat.closeAgain(drivers, state, where);
        }
      }
    }
    if (bounce.copper() != 0) {
      takeUp(state, move);
    }
    settle(state);
  }

  /**
   * Takes up a state of another standing: copper has moved, so that everything is solved again, and
   * controls at rest put on their lines what the rails now give.
   */
  private void takeUp(long[] state, HandMove move) {
    setContacts(state, move.others());
    Arrays.fill(touchedNodes, true);
    Arrays.fill(touchedSeats, true);
  }

  /** Lanes other than {@code lanes} are as they were. */
  static void keepOutside(long lanes, long[] before, long[] state) {
    for (int i = 0; i < state.length; i++) {
      state[i] = (before[i] & ~lanes) | (state[i] & lanes);
    }
  }

  long[] emptyState() {
    return new long[stateLength];
  }

  /**
   * Works out the drivers of a settled state of which node levels, unstable lanes and memories are
   * given. The state stays as settled as it was: nothing is solved again.
   */
  void refresh(long[] state, Map<String, Boolean> levels) {
    System.arraycopy(state, 0, before, 0, 3 * nodes);
    for (int i = 0; i < seats.size(); i++) {
      step(i, state, ~state[shortedAt]);
    }
    setContacts(state, levels);
    Arrays.fill(touchedDrivers, false);
    forgetAll(state, state[shortedAt]);
  }

  private void settle(long[] state) {
    settle(state, state[shortedAt]);
  }

  /**
   * Lets everything come to rest.
   *
   * @param waking lanes in which power comes on. A memory that keeps its contents takes nothing in
   *     meanwhile: it senses the supply and waits some milliseconds (Atmel AT28C16 data sheet
   *     0540B, write protection; the passage was not checked against the sheet). What is then still
   *     asked of it happens.
   */
  private void settle(long[] state, long waking) {
    long shorted = shorted(state);
    rest(state, ~(waking | shorted));
    collapse(state, shorted);
    long awake = keeping & waking & ~shorted;
    if (awake != 0) {
      long[] settled = state.clone();
      for (int i = 0; i < touchedSeats.length; i++) {
        touchedSeats[i] = seats.get(i).keeps;
      }
      rest(state, ~shorted);
      collapse(state, shorted);
      keepOutside(awake, settled, state);
    }
  }

  /** One settling, in which only {@code storing} lanes write what is kept without power. */
  private void rest(long[] state, long storing) {
    // Not the seats: their number depends on what else is in the group.
    int patience = 64 + 4 * wiring.module().parts().size();
    restart(state);
    if (state[shortedAt] != 0) {
      // These lanes start as when power comes on.
      Arrays.fill(touchedNodes, true);
      Arrays.fill(touchedSeats, true);
    }
    System.arraycopy(state, 0, before, 0, 3 * nodes);
    for (int round = 0; round < 4 * patience; round++) {
      solveTouched(state, round >= patience);
      boolean any = false;
      for (int i = 0; i < touchedSeats.length; i++) {
        if (touchedSeats[i]) {
          any = true;
          touchedSeats[i] = step(i, state, storing);
        }
      }
      if (!any) {
        break;
      }
      System.arraycopy(state, 0, before, 0, 3 * nodes);
    }
    Arrays.fill(touchedDrivers, false);
    Arrays.fill(touchedNodes, false);
    Arrays.fill(touchedSeats, false);
  }

  /** One unit of delay of one part; true when it needs another. */
  private boolean step(int seat, long[] state, long storing) {
    boolean again =
        seats
            .get(seat)
            .step(
                state,
                before,
                nodes,
                unstableAt,
                3 * nodes,
                drivers.count,
                raised,
                touchedDrivers,
                storing);
    state[raisedAt + seat] = raised[0];
    return again;
  }

  /** Lanes in which supply and ground meet: over copper, or over contacts as they stand. */
  private long shorted(long[] state) {
    Arrays.fill(contactHigh, 0);
    Arrays.fill(contactLow, 0);
    boolean bothWays = false;
    long shorted = joinedRails;
    for (ControlSeat control : contacts.values()) {
      long high = drivers.high(state, control.firstDriver);
      long low = drivers.low(state, control.firstDriver);
      contactHigh[control.node] |= high;
      contactLow[control.node] |= low;
      bothWays |= high != 0;
      shorted |= high & topology.railLow[control.node];
      shorted |= low & topology.railHigh[control.node];
    }
    if (bothWays) {
      topology.spread(contactHigh);
      topology.spread(contactLow);
      for (int node = 0; node < nodes; node++) {
        shorted |= contactHigh[node] & contactLow[node];
      }
    }
    return shorted;
  }

  /** Where supply and ground meet, the supply collapses: nothing works, as with the power off. */
  private void collapse(long[] state, long shorted) {
    state[shortedAt] = shorted;
    if (shorted != 0) {
      forgetAll(state, shorted);
    }
  }

  /** Makes every node and output unknown and all that power off takes, as when power comes on. */
  private void forgetAll(long[] state, long lanes) {
    for (int node = 0; node < nodes; node++) {
      state[node] |= lanes & topology.used;
      state[nodes + node] |= lanes & topology.used;
      state[2 * nodes + node] &= ~lanes;
      state[unstableAt + node] &= ~lanes;
    }
    for (PartSeat seat : seats) {
      for (int i = 0; i < seat.driving.length; i++) {
        // A part that does not sit there in some lane must not be felt there, not even at first.
        drivers.setUnknown(state, seat.firstDriver + i, seat.lanes, lanes);
      }
      seat.part.logic().losePower(state, seat.stateAt, lanes);
    }
  }

  /** Place in the state of the lanes in which supply and ground meet. */
  int shortedAt() {
    return shortedAt;
  }

  /** Lanes in which no logic works now: no sane supply, or one that is shorted. */
  long dead(long[] state) {
    return noLogic | state[shortedAt];
  }

  private long joinedRails() {
    long joined = 0;
    for (int node = 0; node < nodes; node++) {
      joined |= topology.railHigh[node] & topology.railLow[node];
    }
    return joined;
  }

  /**
   * Solves every node that feels a touched driver and marks the seats that see a change.
   *
   * @param merge when true, a level that still changes keeps both values: what oscillates becomes
   *     unknown and the loop comes to rest
   */
  private void solveTouched(long[] state, boolean merge) {
    for (int driver = 0; driver < touchedDrivers.length; driver++) {
      if (touchedDrivers[driver]) {
        touchedDrivers[driver] = false;
        for (int node : reach.nodesOf[driver]) {
          touchedNodes[node] = true;
        }
      }
    }
    for (int node = 0; node < nodes; node++) {
      if (touchedNodes[node]) {
        touchedNodes[node] = false;
        solver.solve(node, state, solved);
        store(state, node, merge);
      }
    }
  }

  private void store(long[] state, int node, boolean merge) {
    long differ = 0;
    long moves = 0;
    for (int kind = 0; kind < 3; kind++) {
      int at = kind * nodes + node;
      long level = merge ? solved[kind] | state[at] : solved[kind];
      differ |= level ^ state[at];
      moves |= solved[kind] ^ state[at];
      state[at] = level;
    }
    if (differ != 0) {
      for (int seat : seatsOnNode[node]) {
        touchedSeats[seat] = true;
      }
    }
    if (merge) {
      state[unstableAt + node] |= moves;
    }
  }
}
