package straywire.sim;

import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collections;
import java.util.Deque;
import java.util.EnumSet;
import java.util.HashSet;
import java.util.IdentityHashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.OptionalLong;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;
import straywire.logic.PartLogic;
import straywire.logic.PinKind;
import straywire.logic.PinPlanes;
import straywire.module.Contact;
import straywire.module.Contents;
import straywire.module.End;
import straywire.module.Fitted;
import straywire.module.Lamp;
import straywire.module.Module;
import straywire.module.Pass;
import straywire.module.Point;
import straywire.module.RailSegment;
import straywire.module.SeriesResistor;
import straywire.parts.Family;
import straywire.parts.Part;

/**
 * The slow, obvious twin of {@link Boards}: one module under one variation, as nets of copper with
 * drivers on them. Every round solves every net by going through all combinations of what its
 * drivers may do, then gives every part one unit of delay, until nothing moves. Shares with the
 * simulation only the numbering of points, the parts' functions (asked for one lane), and what a
 * {@link Variation} says.
 */
final class SlowBoard {
  /** What may be the case at a point. */
  enum Can {
    HIGH,
    LOW,
    OPEN
  }

  private static final int RAIL = 7;
  private static final int RESISTOR = 2;

  /** Ohms from which up a resistor to ground leaves a bipolar input high. */
  private static final int TOO_WEAK_FOR_BIPOLAR = 2001;

  private final Wiring wiring;
  private final Module module;
  private final Variation variation;
  private final List<Copper> nets = new ArrayList<>();
  private final Copper[] netAt;
  private final List<Seated> seated = new ArrayList<>();
  private final Map<Driver, Integer> vertexOf = new LinkedHashMap<>();
  private final Map<String, Driver> contacts = new TreeMap<>();
  private final Map<String, Driver> pulls = new TreeMap<>();
  private final Map<String, Boolean> controls = new TreeMap<>();

  /** What was the case at each vertex one unit of delay ago, and which do not come to rest. */
  private final List<Set<Can>> before = new ArrayList<>();

  private final boolean[] restless;

  /** Contacts between lines that are closed now. */
  private final Set<String> joining = new TreeSet<>();

  private boolean powered;

  /** The supply is on its way up; and whether it was down at the last rest, by a short. */
  private boolean waking;

  private boolean wasShorted;

  SlowBoard(Wiring wiring, Variation variation) {
    this.wiring = wiring;
    this.variation = variation;
    module = wiring.module();
    netAt = new Copper[wiring.vertexCount()];
    restless = new boolean[netAt.length];
    for (int vertex = 0; vertex < netAt.length; vertex++) {
      before.add(EnumSet.noneOf(Can.class));
    }
    module
        .contacts()
        .forEach(
            contact -> {
              int row = wiring.row(contact.terminal());
              contacts.put(contact.label(), placed(row, new Driver(RAIL, RAIL)));
              pulls.put(contact.label(), placed(row, Driver.pull(contact.pullOhms())));
            });
    module.controls().forEach((label, control) -> controls.put(label, control.restLevel()));
    module
        .passives()
        .resistors()
        .forEach(
            (label, resistor) ->
                pulls.put(
                    label, placed(row(End.Kind.RESISTOR, label), Driver.pull(resistor.ohms()))));
    module.parts().values().stream().filter(Fitted::fitted).forEach(this::fit);
    joining.addAll(closedPasses());
    lay();
  }

  private Driver placed(int vertex, Driver driver) {
    vertexOf.put(driver, vertex);
    return driver;
  }

  /** Lays all copper anew, with the contacts between lines as they are, and puts all on it. */
  private void lay() {
    nets.clear();
    Arrays.fill(netAt, null);
    layCopper();
    vertexOf.forEach((driver, vertex) -> netAt[vertex].drivers.add(driver));
    module.lamps().values().forEach(this::fitLamp);
    for (Seated chip : seated) {
      for (int pin = 1; pin < chip.net.length; pin++) {
        chip.net[pin] = netAt[chip.vertex[pin]];
      }
      supply(chip);
    }
    feel();
  }

  /** Contacts between lines that are closed where the controls stand. */
  private Set<String> closedPasses() {
    Set<String> closed = new TreeSet<>();
    for (Pass pass : module.passes()) {
      boolean position = controls.get(pass.control()) == pass.closedWhenHigh();
      if (closed(pass.label(), position)) {
        closed.add(pass.label());
      }
    }
    return closed;
  }

  /** Joins lines in another way; controls that do not move put on theirs what rails now give. */
  private boolean join(Set<String> closed, Set<String> moving) {
    if (joining.equals(closed)) {
      return false;
    }
    joining.clear();
    joining.addAll(closed);
    lay();
    if (powered) {
      contacts.keySet().stream()
          .filter(label -> !moving.contains(contact(label).control()))
          .forEach(this::work);
      pullAll();
    }
    return true;
  }

  private void pullAll() {
    module
        .passives()
        .resistors()
        .forEach((label, resistor) -> pulls.get(label).may = railLevel(resistor.to()));
  }

  /** Copper joined by contacts and wires; a main rail joins nothing, it only feeds. */
  private static final class Copper {
    final Set<Integer> vertices = new HashSet<>();
    final List<Driver> drivers = new ArrayList<>();
    boolean onSupply;
    boolean onGround;
    boolean bareLed;
    boolean leans;
    boolean starved;
    List<Felt> felt = List.of();
    Set<Can> level = EnumSet.noneOf(Can.class);

    boolean is(Can... these) {
      return level.equals(EnumSet.copyOf(List.of(these)));
    }
  }

  /** Something that can drive a net. */
  private static final class Driver {
    final int lowRank;
    final int highRank;
    boolean cmos;
    boolean raised;
    Set<Can> may = EnumSet.of(Can.OPEN);

    /** Of a pull; 0 for all others. */
    int ohms;

    static Driver pull(int ohms) {
      Driver pull = new Driver(RESISTOR, RESISTOR);
      pull.ohms = ohms;
      return pull;
    }

    static Driver rail(Can level) {
      Driver rail = new Driver(RAIL, RAIL);
      rail.may = EnumSet.of(level);
      return rail;
    }

    Driver(int lowRank, int highRank) {
      this.lowRank = lowRank;
      this.highRank = highRank;
    }

    boolean sure(Can what) {
      return may.equals(EnumSet.of(what));
    }
  }

  /** A part in its socket. */
  private static final class Seated {
    final String label;
    final Part part;
    final Family family;
    final Copper[] net;
    final int[] vertex;
    final Driver[] driver;
    final PinPlanes pins;
    final long[] memory;
    boolean complete;
    boolean noGround;
    boolean noSupply;
    boolean unlisted;

    Seated(String label, Part part, Family family) {
      this.label = label;
      this.part = part;
      this.family = family;
      net = new Copper[part.pinCount() + 1];
      vertex = new int[part.pinCount() + 1];
      driver = new Driver[part.pinCount() + 1];
      pins = new PinPlanes(part.pinCount());
      memory = new long[part.logic().stateLength()];
      part.logic().forget(memory, 0, 1);
    }

    /** All that is remembered becomes unknown, but for cells that hold without power. */
    void losePower() {
      long[] held = memory.clone();
      Arrays.fill(memory, 0);
      part.logic().forget(memory, 0, 1);
      for (int cell = 0; cell < part.logic().cellCount(); cell++) {
        if (part.logic().keeps(cell)) {
          memory[2 * cell] = held[2 * cell];
          memory[2 * cell + 1] = held[2 * cell + 1];
        }
      }
    }

    /** Cells that hold without power may be what they were as well. */
    void putBeside(long[] held) {
      for (int cell = 0; cell < part.logic().cellCount(); cell++) {
        if (part.logic().keeps(cell)) {
          memory[2 * cell] |= held[2 * cell];
          memory[2 * cell + 1] |= held[2 * cell + 1];
        }
      }
    }
  }

  private int row(End.Kind kind, String label) {
    return wiring.row(new End(kind, label, 0));
  }

  private void layCopper() {
    List<int[]> edges = new ArrayList<>(variation.edgesOn);
    for (int edge = 0; edge < wiring.edgeCount(); edge++) {
      if (!variation.edgesOff.contains(edge)) {
        edges.add(new int[] {wiring.edgeFrom(edge), wiring.edgeTo(edge)});
      }
    }
    for (Pass pass : module.passes()) {
      if (joining.contains(pass.label())) {
        edges.add(new int[] {wiring.row(pass.thrown()), wiring.row(pass.common())});
      }
    }
    Map<Integer, Boolean> mainRails = new TreeMap<>();
    for (RailSegment rail : module.rails()) {
      if (rail.linkedTo().isEmpty()) {
        mainRails.put(wiring.rail(rail.label()), rail.supply());
      }
    }
    for (int vertex = 0; vertex < netAt.length; vertex++) {
      if (netAt[vertex] == null) {
        flood(vertex, edges, mainRails);
      }
    }
  }

  private void flood(int start, List<int[]> edges, Map<Integer, Boolean> mainRails) {
    Copper net = new Copper();
    nets.add(net);
    Deque<Integer> next = new ArrayDeque<>(List.of(start));
    while (!next.isEmpty()) {
      int vertex = next.pop();
      if (!net.vertices.add(vertex)) {
        continue;
      }
      netAt[vertex] = net;
      feed(net, mainRails.get(vertex));
      for (int[] edge : edges) {
        if (edge[0] == vertex || edge[1] == vertex) {
          int other = edge[0] == vertex ? edge[1] : edge[0];
          feed(net, mainRails.get(other));
          if (!mainRails.containsKey(vertex) && !mainRails.containsKey(other)) {
            next.push(other);
          }
        }
      }
    }
  }

  private static void feed(Copper net, Boolean supply) {
    if (supply != null) {
      net.onSupply |= supply;
      net.onGround |= !supply;
    }
  }

  private void fitLamp(Lamp lamp) {
    boolean noResistor =
        variation.lamps.stream()
            .anyMatch(
                l ->
                    l.label().equals(lamp.label()) && l.fault() == Variation.LampFault.NO_RESISTOR);
    if (noResistor || (lamp.ohms() == 0 && lamp.lightsOnHigh())) {
      netAt[row(End.Kind.LAMP, lamp.label())].bareLed = true;
    }
  }

  private void fit(Fitted fitted) {
    Variation.Socket socket =
        variation.sockets.stream()
            .filter(s -> s.label().equals(fitted.label()))
            .findFirst()
            .orElse(new Variation.Socket(fitted.label(), fitted.part(), fitted.family()));
    Seated chip = new Seated(fitted.label(), socket.part(), socket.family());
    Family family = chip.family;
    boolean bus = chip.part.bus();
    chip.unlisted = variation.unlisted.contains(fitted.label());
    if (chip.part.type().equals(fitted.part().type())) {
      program(chip, fitted.contents());
    }
    for (int pin = 1; pin <= chip.part.pinCount(); pin++) {
      chip.vertex[pin] = wiring.leg(End.pin(fitted.label(), pin));
      if (chip.part.pin(pin).kind().drives()) {
        chip.driver[pin] =
            placed(
                chip.vertex[pin],
                new Driver(
                    bus ? family.busLowRank() : family.lowRank(),
                    bus ? family.busHighRank() : family.highRank()));
        chip.driver[pin].cmos = family.feedsThroughInputs();
      }
    }
    seated.add(chip);
  }

  /** What was programmed, bit by bit; of several mistakes the one named first is made first. */
  private void program(Seated chip, Contents meant) {
    if (!meant.known()) {
      return;
    }
    PartLogic.Store store = chip.part.logic().store().orElseThrow();
    Set<Variation.ContentsFault> faults = EnumSet.noneOf(Variation.ContentsFault.class);
    variation.contents.stream()
        .filter(fault -> fault.label().equals(chip.label))
        .forEach(fault -> faults.add(fault.fault()));
    for (int address = 0; address < store.words(); address++) {
      for (int bit = 0; bit < store.bits(); bit++) {
        Set<Can> holds = EnumSet.allOf(Can.class);
        if (faults.isEmpty()) {
          holds = bitOf(meant.at(address), bit);
        }
        for (Variation.ContentsFault fault : faults) {
          Set<Can> instead =
              switch (fault) {
                case BLANK -> EnumSet.of(Can.HIGH);
                case SHIFTED ->
                    address == 0 ? EnumSet.of(Can.HIGH) : bitOf(meant.at(address - 1), bit);
                case REVERSED -> bitOf(meant.at(address), store.bits() - 1 - bit);
              };
          holds = instead.size() == 1 ? instead : holds;
        }
        int cell = store.firstCell() + address * store.bits() + bit;
        chip.memory[2 * cell] = holds.contains(Can.HIGH) ? 1 : 0;
        chip.memory[2 * cell + 1] = holds.contains(Can.LOW) ? 1 : 0;
      }
    }
  }

  private static Set<Can> bitOf(OptionalLong word, int bit) {
    if (word.isEmpty()) {
      return EnumSet.of(Can.HIGH, Can.LOW);
    }
    return EnumSet.of((word.getAsLong() >> bit & 1) == 1 ? Can.HIGH : Can.LOW);
  }

  private void supply(Seated chip) {
    int supplyPin = chip.part.pinOf(PinKind.SUPPLY);
    int groundPin = chip.part.pinOf(PinKind.GROUND);
    if (supplyPin == 0 || groundPin == 0) {
      chip.complete = true;
      return;
    }
    Copper plus = chip.net[supplyPin];
    Copper minus = chip.net[groundPin];
    boolean fed = plus.onSupply && !plus.onGround;
    boolean grounded = minus.onGround && !minus.onSupply;
    chip.complete = fed && grounded;
    chip.noGround = fed && !grounded && !minus.onSupply;
    chip.noSupply = grounded && !fed && !plus.onGround && chip.family.feedsThroughInputs();
    minus.starved |= chip.noGround;
    plus.starved |= !chip.complete && !chip.noGround;
    if (chip.family.openReadsHigh() && (chip.complete || chip.noGround)) {
      for (int pin = 1; pin < chip.net.length; pin++) {
        chip.net[pin].leans |= chip.part.pin(pin).kind().listens();
      }
    }
  }

  void powerDown() {
    powered = false;
  }

  void powerUp() {
    powered = true;
    forgetAll();
    contacts.keySet().forEach(this::work);
    pullAll();
    wasShorted = true;
    settle();
  }

  private void forgetAll() {
    for (Copper net : nets) {
      net.level = EnumSet.of(Can.HIGH, Can.LOW);
    }
    Arrays.fill(restless, false);
    rememberLevels();
    for (Seated chip : seated) {
      chip.losePower();
      for (Driver driver : chip.driver) {
        if (driver != null) {
          driver.may = EnumSet.of(Can.HIGH, Can.LOW);
        }
      }
    }
  }

  void move(Map<String, Boolean> levels) {
    List<String> moved =
        module.contacts().stream()
            .filter(c -> levels.containsKey(c.control()))
            .map(Contact::label)
            .toList();
    Map<String, Set<Can>> old = new TreeMap<>();
    moved.forEach(label -> old.put(label, contacts.get(label).may));
    Set<String> joined = new TreeSet<>(joining);
    controls.putAll(levels);
    Set<String> closed = closedPasses();
    if (!powered) {
      join(closed, levels.keySet());
      return;
    }
    breakFirst(moved, closed, levels.keySet());
    join(closed, levels.keySet());
    moved.forEach(this::work);
    settle();
    closed.removeAll(joined);
    for (int closing = 2; closing <= 4; closing++) {
      bounce(old, closed, levels.keySet(), closing);
    }
  }

  /** What a change-over opens is open before anything else happens. */
  private void breakFirst(List<String> moved, Set<String> closed, Set<String> moving) {
    Set<String> staying = new TreeSet<>(joining);
    staying.retainAll(closed);
    boolean opened = join(staying, moving);
    for (String label : moved) {
      boolean changesOver =
          module.controls().get(contact(label).control()).changeOver().isPresent();
      Driver driver = contacts.get(label);
      if (changesOver && !closed(label) && !driver.may.equals(EnumSet.of(Can.OPEN))) {
        driver.may = EnumSet.of(Can.OPEN);
        opened = true;
      }
    }
    if (opened) {
      settle();
    }
  }

  private Contact contact(String label) {
    return module.contact(label).orElseThrow();
  }

  private boolean closed(String label) {
    Contact contact = contact(label);
    return closed(label, controls.get(contact.control()) == contact.closedWhenHigh());
  }

  private boolean closed(String label, boolean position) {
    return has(label, Variation.ControlFault.ALWAYS_CLOSED)
        || (position != has(label, Variation.ControlFault.EXCHANGED)
            && !has(label, Variation.ControlFault.NEVER_CLOSES));
  }

  /**
   * @param old what each contact of a control that moved was before
   * @param joined contacts between lines that the move closed
   */
  private void bounce(
      Map<String, Set<Can>> old, Set<String> joined, Set<String> moving, int closing) {
    List<String> again = new ArrayList<>();
    List<String> perhaps = new ArrayList<>();
    old.forEach(
        (label, was) -> {
          Set<Can> now = contacts.get(label).may;
          boolean closed = !now.contains(Can.OPEN) && !was.equals(now);
          if (closed && surelyCloses(label) >= closing) {
            again.add(label);
          } else if (closed && has(label, Variation.ControlFault.CLOSES_ANYHOW)) {
            perhaps.add(label);
          }
        });
    Set<String> all = new TreeSet<>(joining);
    Set<String> left = new TreeSet<>(joining);
    left.removeIf(label -> joined.contains(label) && surelyCloses(label) >= closing);
    if (again.isEmpty() && perhaps.isEmpty() && left.equals(all)) {
      return;
    }
    join(left, moving);
    again.forEach(label -> contacts.get(label).may = EnumSet.of(Can.OPEN));
    for (String label : perhaps) {
      Set<Can> may = EnumSet.copyOf(contacts.get(label).may);
      may.add(Can.OPEN);
      contacts.get(label).may = may;
    }
    settle();
    join(all, moving);
    again.forEach(this::work);
    perhaps.forEach(this::work);
    settle();
  }

  private int surelyCloses(String label) {
    return variation.controls.stream()
        .filter(c -> c.label().equals(label))
        .mapToInt(c -> c.fault().closings())
        .max()
        .orElse(1);
  }

  private void work(String label) {
    Contact contact = contact(label);
    contacts.get(label).may = closed(label) ? railLevel(contact.closesTo()) : EnumSet.of(Can.OPEN);
    boolean pulls = !contact.pullTo().isEmpty() && !has(label, Variation.ControlFault.NO_PULL);
    this.pulls.get(label).may = pulls ? railLevel(contact.pullTo()) : EnumSet.of(Can.OPEN);
  }

  private boolean has(String control, Variation.ControlFault fault) {
    return variation.controls.contains(new Variation.Labelled<>(control, fault));
  }

  private Set<Can> railLevel(String segment) {
    Copper rail = netAt[wiring.rail(segment)];
    Set<Can> level = EnumSet.noneOf(Can.class);
    if (rail.onSupply) {
      level.add(Can.HIGH);
    }
    if (rail.onGround) {
      level.add(Can.LOW);
    }
    return level.isEmpty() ? EnumSet.of(Can.OPEN) : level;
  }

  /** What is asked of a memory that keeps its contents happens once the supply is good. */
  private void settle() {
    waking = wasShorted;
    rest();
    boolean keeps = seated.stream().anyMatch(chip -> chip.part.logic().keeps());
    if (waking && keeps && !shorted()) {
      waking = false;
      rest();
    }
    wasShorted = shorted();
  }

  private void rest() {
    int patience = 64 + 4 * module.parts().size();
    boolean moved = true;
    for (int round = 0; moved && round < 4 * patience; round++) {
      moved = false;
      for (Copper net : nets) {
        Set<Can> solved = solve(net);
        if (round >= patience) {
          boolean moves = !solved.equals(net.level);
          net.vertices.forEach(vertex -> restless[vertex] |= moves);
          solved.addAll(net.level);
        }
        net.level = solved;
      }
      for (Seated chip : seated) {
        moved |= step(chip);
      }
      moved |= rememberLevels();
    }
    for (int vertex = 0; vertex < netAt.length; vertex++) {
      restless[vertex] &= netAt[vertex].level.containsAll(EnumSet.of(Can.HIGH, Can.LOW));
    }
    if (shorted()) {
      forgetAll();
    }
  }

  /** Returns whether any level is another than one unit of delay ago. */
  private boolean rememberLevels() {
    boolean moved = false;
    for (int vertex = 0; vertex < netAt.length; vertex++) {
      moved |= !netAt[vertex].level.equals(before.set(vertex, netAt[vertex].level));
    }
    return moved;
  }

  /** Supply and ground meet somewhere, or may in a bounce: the supply collapses. */
  private boolean shorted() {
    return nets.stream()
        .anyMatch(
            net -> (net.onGround || fed(net, Can.LOW)) && (net.onSupply || fed(net, Can.HIGH)));
  }

  private static boolean fed(Copper net, Can what) {
    return net.drivers.stream().anyMatch(d -> d.lowRank == RAIL && d.may.contains(what));
  }

  /** A driver as it is felt at a net. */
  private record Felt(Driver driver, int resistors, int ohms) {
    Strength low() {
      return new Strength(driver.lowRank, resistors, ohms);
    }

    Strength high() {
      return new Strength(driver.highRank, resistors, ohms);
    }
  }

  /** How strongly something is felt; of no rank when nothing is there. */
  private record Strength(int rank, int resistors, int ohms) {
    static final Strength NONE = new Strength(0, 99, 0);

    boolean outright() {
      return rank > 0 && resistors == 0;
    }

    Strength stronger(Strength other) {
      boolean stays =
          resistors != other.resistors
              ? resistors < other.resistors
              : resistors == 0 ? rank >= other.rank : ohms <= other.ohms;
      return stays ? this : other;
    }

    /** Whether this leaves nothing of another level. */
    boolean decidesOver(Strength other) {
      if (rank == 0 || other.rank == 0) {
        return rank > 0;
      }
      if (resistors != other.resistors) {
        return resistors < other.resistors;
      }
      return outright() ? rank > other.rank : 6L * ohms <= other.ohms;
    }
  }

  /**
   * The strongest of each level that meet, for one combination of what the drivers do; and the
   * strongest low that is too weak for an input.
   */
  private record Meeting(Strength low, Strength high, Strength weakLow) {
    Meeting withLow(Strength added) {
      return new Meeting(low.stronger(added), high, weakLow);
    }

    Meeting withHigh(Strength added) {
      return new Meeting(low, high.stronger(added), weakLow);
    }

    Meeting withWeakLow(Strength added) {
      return new Meeting(low, high, weakLow.stronger(added));
    }

    /** No high comes past a low, be it too weak for an input. */
    Meeting withoutHighBeyond() {
      boolean beyond = high.resistors > weakLow.resistors;
      return new Meeting(low, beyond ? Strength.NONE : high, weakLow);
    }
  }

  /** What is felt at each net: its own drivers, and those behind resistors, by the nearest way. */
  private void feel() {
    for (Copper net : nets) {
      net.felt = new ArrayList<>();
      Map<Copper, Integer> ways = new IdentityHashMap<>(Map.of(net, 0));
      Set<Copper> passed = Collections.newSetFromMap(new IdentityHashMap<>());
      for (int resistors = 0; !ways.isEmpty(); resistors++) {
        for (Map.Entry<Copper, Integer> way : ways.entrySet()) {
          hear(net, way.getKey(), resistors, way.getValue());
          passed.add(way.getKey());
        }
        ways = across(ways, passed);
      }
    }
  }

  private static void hear(Copper net, Copper from, int resistors, int ohms) {
    for (Driver driver : from.drivers) {
      boolean pull = driver.lowRank == RESISTOR;
      net.felt.add(new Felt(driver, resistors + (pull ? 1 : 0), ohms + driver.ohms));
    }
    if (from.onSupply) {
      net.felt.add(new Felt(Driver.rail(Can.HIGH), resistors, ohms));
    }
    if (from.onGround) {
      net.felt.add(new Felt(Driver.rail(Can.LOW), resistors, ohms));
    }
  }

  /** One resistor further, to copper not passed before, each by the least ohms. */
  private Map<Copper, Integer> across(Map<Copper, Integer> ways, Set<Copper> passed) {
    Map<Copper, Integer> next = new IdentityHashMap<>();
    for (SeriesResistor resistor : module.passives().series().values()) {
      for (End end : resistor.ends()) {
        Copper from = netAt[wiring.row(end)];
        Copper to = netAt[wiring.row(resistor.across(end))];
        if (ways.containsKey(from) && !passed.contains(to)) {
          next.merge(to, ways.get(from) + resistor.ohms(), Math::min);
        }
      }
    }
    return next;
  }

  private static Set<Can> solve(Copper net) {
    Set<Meeting> meetings = new HashSet<>();
    meetings.add(new Meeting(Strength.NONE, Strength.NONE, Strength.NONE));
    Map<Driver, List<Felt>> byDriver = new IdentityHashMap<>();
    for (Felt felt : net.felt) {
      byDriver.computeIfAbsent(felt.driver(), d -> new ArrayList<>()).add(felt);
    }
    for (Map.Entry<Driver, List<Felt>> driver : byDriver.entrySet()) {
      Set<Meeting> extended = new HashSet<>();
      for (Meeting meeting : meetings) {
        for (Can can : driver.getKey().may) {
          Meeting with = meeting;
          for (Felt felt : driver.getValue()) {
            boolean heldUp = net.leans && felt.ohms() >= TOO_WEAK_FOR_BIPOLAR;
            if (can == Can.HIGH) {
              with = with.withHigh(felt.high());
            } else if (can == Can.LOW) {
              with = heldUp ? with.withWeakLow(felt.low()) : with.withLow(felt.low());
            }
          }
          extended.add(with);
        }
      }
      meetings = extended;
    }
    Set<Can> level = EnumSet.noneOf(Can.class);
    for (Meeting met : meetings) {
      Meeting meeting = met.withoutHighBeyond();
      boolean none = meeting.low.rank == 0 && meeting.high.rank == 0;
      put(level, Can.OPEN, none);
      put(level, Can.LOW, !none && !meeting.high.decidesOver(meeting.low));
      put(level, Can.HIGH, !none && !meeting.low.decidesOver(meeting.high));
    }
    // Where both levels are possible, nobody asks whether the line may be open as well.
    if (level.contains(Can.HIGH) && level.contains(Can.LOW)) {
      level.remove(Can.OPEN);
    }
    return level;
  }

  private boolean step(Seated chip) {
    PinPlanes pins = chip.pins;
    boolean someLow = false;
    boolean someHigh = false;
    boolean perhapsLow = false;
    boolean perhapsHigh = false;
    for (int pin = 1; pin <= chip.part.pinCount(); pin++) {
      if (chip.part.pin(pin).kind().listens()) {
        Copper net = chip.net[pin];
        pins.can1[pin] = seesHigh(chip, pin, net.level);
        pins.can0[pin] = seesLow(chip, pin, net.level);
        boolean held =
            held(chip, pin, Variation.PinFault.INPUT_HIGH)
                || held(chip, pin, Variation.PinFault.INPUT_LOW);
        boolean stirs = net.level.contains(Can.OPEN) || restless[chip.vertex[pin]];
        pins.open[pin] = stirs && !held ? 1 : 0;
        pins.was1[pin] = seesHigh(chip, pin, before.get(chip.vertex[pin]));
        pins.was0[pin] = seesLow(chip, pin, before.get(chip.vertex[pin]));
        someLow |= net.is(Can.LOW);
        someHigh |= net.is(Can.HIGH);
        perhapsLow |= net.level.contains(Can.LOW);
        perhapsHigh |= net.level.contains(Can.HIGH);
      }
    }
    boolean raised = chip.noGround && someLow;
    boolean runs = chip.complete || raised || (chip.noSupply && someHigh);
    boolean perhaps = !runs && ((chip.noGround && perhapsLow) || (chip.noSupply && perhapsHigh));
    long[] remembered = chip.memory.clone();
    if (runs) {
      work(chip);
    } else if (perhaps) {
      chip.losePower();
      work(chip);
      chip.putBeside(remembered);
      chip.losePower();
    }
    boolean moved = !Arrays.equals(remembered, chip.memory);
    for (int pin = 1; pin <= chip.part.pinCount(); pin++) {
      if (chip.driver[pin] != null) {
        Driver driver = chip.driver[pin];
        Set<Can> may = EnumSet.noneOf(Can.class);
        if (runs || perhaps) {
          may.addAll(running(chip, pin));
        }
        if (!runs) {
          may.addAll(halted(chip, pin));
        }
        moved |= !may.equals(driver.may) || driver.raised != raised;
        driver.may = may;
        driver.raised = raised;
      }
    }
    return moved;
  }

  private void work(Seated chip) {
    if (waking || shorted()) {
      chip.part.logic().stepStoringNothing(chip.pins, chip.memory, 0, 1);
    } else {
      chip.part.logic().step(chip.pins, chip.memory, 0, 1);
    }
  }

  private long seesHigh(Seated chip, int pin, Set<Can> level) {
    if (held(chip, pin, Variation.PinFault.INPUT_HIGH)) {
      return 1;
    }
    if (held(chip, pin, Variation.PinFault.INPUT_LOW)) {
      return 0;
    }
    boolean clamped = chip.net[pin].bareLed && !chip.family.openReadsHigh();
    return (level.contains(Can.HIGH) && !clamped) || level.contains(Can.OPEN) ? 1 : 0;
  }

  private long seesLow(Seated chip, int pin, Set<Can> level) {
    // An input that is held both ways may read either.
    if (held(chip, pin, Variation.PinFault.INPUT_LOW)) {
      return 1;
    }
    if (held(chip, pin, Variation.PinFault.INPUT_HIGH)) {
      return 0;
    }
    boolean clamped = chip.net[pin].bareLed && !chip.family.openReadsHigh();
    boolean floating = level.contains(Can.OPEN) && !chip.family.openReadsHigh();
    return level.contains(Can.LOW) || floating || (level.contains(Can.HIGH) && clamped) ? 1 : 0;
  }

  private boolean held(Seated chip, int pin, Variation.PinFault fault) {
    return variation.holds.contains(new Variation.PinHold(chip.label, pin, fault));
  }

  private Set<Can> running(Seated chip, int pin) {
    if (held(chip, pin, Variation.PinFault.OUTPUT_LOW)
        || held(chip, pin, Variation.PinFault.OUTPUT_HIGH)
        || held(chip, pin, Variation.PinFault.OUTPUT_OFF)) {
      Set<Can> may = EnumSet.noneOf(Can.class);
      put(may, Can.LOW, held(chip, pin, Variation.PinFault.OUTPUT_LOW));
      put(may, Can.HIGH, held(chip, pin, Variation.PinFault.OUTPUT_HIGH));
      put(may, Can.OPEN, held(chip, pin, Variation.PinFault.OUTPUT_OFF));
      return may;
    }
    Set<Can> may = EnumSet.noneOf(Can.class);
    put(may, Can.HIGH, (chip.pins.drive1[pin] & 1) == 1);
    put(may, Can.LOW, (chip.pins.drive0[pin] & 1) == 1);
    put(may, Can.OPEN, (chip.pins.off[pin] & 1) == 1);
    if (!chip.unlisted) {
      return may;
    }
    return switch (chip.part.pin(pin).kind()) {
      case OUTPUT -> EnumSet.of(Can.HIGH, Can.LOW);
      case BIDIRECTIONAL ->
          // Which side drives is still what the part's function says.
          may.equals(EnumSet.of(Can.OPEN)) ? may : EnumSet.of(Can.HIGH, Can.LOW);
      default -> EnumSet.allOf(Can.class);
    };
  }

  private static void put(Set<Can> may, Can what, boolean condition) {
    if (condition) {
      may.add(what);
    }
  }

  /** Without ground and without a low input the upper half of each push-pull output conducts. */
  private static Set<Can> halted(Seated chip, int pin) {
    boolean high = chip.noGround && chip.part.pin(pin).kind() == PinKind.OUTPUT;
    return EnumSet.of(high ? Can.HIGH : Can.OPEN);
  }

  /** Two words for each remembered bit of a part, as {@link straywire.logic.PartLogic} has them. */
  long[] remembered(String part) {
    return seated.stream().filter(chip -> chip.label.equals(part)).findFirst().orElseThrow().memory;
  }

  Signal signal(Point point) {
    return signal(netAt[wiring.vertex(point)], restless[wiring.vertex(point)]);
  }

  boolean deadLamp(String lamp) {
    return variation.lamps.contains(
        new Variation.Labelled<>(lamp, Variation.LampFault.NEVER_LIGHTS));
  }

  /** Whether a lamp is lit: one answer where that is certain, else both. */
  Set<Boolean> mayLight(String lamp) {
    if (!powered || variation.noLogic || shorted() || deadLamp(lamp)) {
      return Set.of(false);
    }
    Can lights = module.lamps().get(lamp).lightsOnHigh() ? Can.HIGH : Can.LOW;
    Set<Can> level = netAt[row(End.Kind.LAMP, lamp)].level;
    if (!level.contains(lights)) {
      return Set.of(false);
    }
    return level.size() == 1 ? Set.of(true) : Set.of(true, false);
  }

  private Signal signal(Copper net, boolean restless) {
    if (!powered || variation.noLogic || shorted()) {
      return Signal.NOTHING;
    }
    boolean mayHigh = net.level.contains(Can.HIGH);
    boolean mayLow = net.level.contains(Can.LOW);
    if (restless) {
      return Signal.UNSTABLE;
    }
    boolean toGround = net.onGround || sure(net, Can.LOW, RAIL, RAIL);
    boolean toSupply = net.onSupply || sure(net, Can.HIGH, RAIL, RAIL);
    if (toGround || toSupply) {
      return toGround && toSupply ? Signal.FIGHT : toGround ? Signal.RAIL_LOW : Signal.RAIL_HIGH;
    }
    boolean heldLow = sure(net, Can.LOW, RESISTOR + 1, RAIL);
    boolean heldHigh = sure(net, Can.HIGH, RESISTOR + 1, RAIL);
    if (heldLow && heldHigh) {
      return mayLow && !mayHigh ? Signal.FIGHT_LOW : Signal.FIGHT;
    }
    if (net.level.size() > 1) {
      return Signal.UNKNOWN;
    }
    if (mayLow) {
      boolean raised = net.drivers.stream().anyMatch(d -> d.raised && d.may.contains(Can.LOW));
      boolean cmos = net.drivers.stream().anyMatch(d -> d.cmos && d.may.contains(Can.LOW));
      return !heldLow
          ? Signal.PULLED_LOW
          : raised ? Signal.RAISED_LOW : cmos ? Signal.LOW_CMOS : Signal.LOW;
    }
    if (mayHigh) {
      boolean cmos = net.drivers.stream().anyMatch(d -> d.cmos && d.may.contains(Can.HIGH));
      return !heldHigh
          ? Signal.PULLED_HIGH
          : net.bareLed ? Signal.CLAMPED_HIGH : cmos ? Signal.HIGH_CMOS : Signal.HIGH;
    }
    return net.starved ? Signal.STARVED : net.leans ? Signal.OPEN_INPUT : Signal.NOTHING;
  }

  private static boolean sure(Copper net, Can what, int least, int most) {
    return net.drivers.stream()
        .filter(d -> d.sure(what))
        .mapToInt(d -> what == Can.LOW ? d.lowRank : d.highRank)
        .anyMatch(rank -> rank >= least && rank <= most);
  }

  /** Joined by copper, or by one rail. */
  boolean joined(Point from, Point to) {
    Copper a = netAt[wiring.vertex(from)];
    Copper b = netAt[wiring.vertex(to)];
    return a == b || (atRail(true, a) && atRail(true, b)) || (atRail(false, a) && atRail(false, b));
  }

  /** On a rail by wires, or through a closed contact. */
  private boolean atRail(boolean supply, Copper copper) {
    return (supply ? copper.onSupply : copper.onGround)
        || module.contacts().stream()
            .filter(contact -> netAt[wiring.row(contact.terminal())] == copper)
            .filter(contact -> closed(contact.label()))
            .map(contact -> netAt[wiring.rail(contact.closesTo())])
            .anyMatch(rail -> supply ? rail.onSupply : rail.onGround);
  }
}
