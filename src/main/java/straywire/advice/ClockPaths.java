package straywire.advice;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.SortedSet;
import java.util.TreeMap;
import java.util.TreeSet;
import straywire.advice.ReviewFact.EdgeBy;
import straywire.electrical.Behind;
import straywire.electrical.ElectricalTable;
import straywire.electrical.NetContents;
import straywire.electrical.NetContents.Pin;
import straywire.electrical.Rc;
import straywire.electrical.Thresholds;
import straywire.module.Contact;
import straywire.module.Control;
import straywire.module.End;
import straywire.module.Module;
import straywire.parts.Part;

/**
 * Which contacts make edges at which clock inputs. A contact's edge goes through gates; it ends at
 * whatever remembers, and at gates that feed back on themselves, which latch.
 */
final class ClockPaths {
  /** Enables of level latches: while one bounces the latch follows, and keeps the right bit. */
  private static final String LATCH_ENABLE = "LE|\\d?C\\d?C";

  private final Module module;
  private final Steering steering;
  private final List<NetContents> nets;

  ClockPaths(Module module, Steering steering, List<NetContents> nets) {
    this.module = module;
    this.steering = steering;
    this.nets = nets;
  }

  /** One fact for each contact and way of reaching clocks; its clocks are listed in it. */
  List<EdgeBy> edges() {
    List<EdgeBy> edges = new ArrayList<>();
    for (NetContents net : nets) {
      for (Pin pin : net.inputs()) {
        Part part = pin.part().part();
        if (PinRole.of(part, pin.spec()) == PinRole.CLOCK
            && !pin.spec().name().matches(LATCH_ENABLE)) {
          reaching(net.name()).forEach((start, straight) -> contacts(pin, start, straight, edges));
        }
      }
    }
    return joined(edges);
  }

  private static List<EdgeBy> joined(List<EdgeBy> edges) {
    Map<EdgeBy, List<String>> clocks = new LinkedHashMap<>();
    for (EdgeBy edge : edges) {
      clocks.computeIfAbsent(edge.at(""), e -> new ArrayList<>()).add(edge.clock());
    }
    List<EdgeBy> joined = new ArrayList<>();
    clocks.forEach((edge, pins) -> joined.add(edge.at(String.join(" and ", pins))));
    return joined;
  }

  /** Nets from which an edge reaches {@code clock}, and whether nothing else has a say in it. */
  private Map<String, Boolean> reaching(String clock) {
    Map<String, Boolean> reaching = new TreeMap<>();
    follow(clock, true, reaching, new TreeSet<>());
    return reaching;
  }

  private void follow(
      String net, boolean straight, Map<String, Boolean> reaching, SortedSet<String> path) {
    Optional<Pin> gate = steering.gate(net);
    if (path.contains(net) || (gate.isPresent() && latches(net))) {
      return;
    }
    boolean before = reaching.getOrDefault(net, false);
    if (reaching.containsKey(net) && (before || !straight)) {
      return;
    }
    reaching.put(net, straight);
    if (gate.isPresent()) {
      path.add(net);
      Map<Integer, String> feeding = steering.feeding(gate.get());
      long free =
          feeding.values().stream().filter(n -> !steering.contents(n).net().onRail()).count();
      feeding.values().forEach(n -> follow(n, straight && free == 1, reaching, path));
      path.remove(net);
    } else {
      path.add(net);
      for (Behind behind : Behind.of(module, steering.contents(net).net())) {
        if (!behind.net().onRail()) {
          follow(behind.net().name(), straight, reaching, path);
        }
      }
      path.remove(net);
    }
  }

  /** True when the gate that drives {@code net} hears itself through gates. */
  private boolean latches(String net) {
    SortedSet<String> seen = new TreeSet<>();
    List<String> open = new ArrayList<>(List.of(net));
    while (!open.isEmpty()) {
      Optional<Pin> gate = steering.gate(open.remove(open.size() - 1));
      for (String from : gate.map(g -> steering.feeding(g).values()).orElse(List.of())) {
        if (from.equals(net)) {
          return true;
        }
        if (seen.add(from)) {
          open.add(from);
        }
      }
    }
    return false;
  }

  private void contacts(Pin clock, String start, boolean straight, List<EdgeBy> edges) {
    NetContents net = steering.contents(start);
    List<NetContents> joined = new ArrayList<>(List.of(net));
    Behind.of(module, net.net()).stream()
        .filter(behind -> !behind.net().onRail())
        .forEach(behind -> joined.add(steering.contents(behind.net().name())));
    List<Pin> inputs = joined.stream().flatMap(n -> n.inputs().stream()).toList();
    double nanofarads =
        joined.stream()
            .flatMap(n -> n.net().ends().stream())
            .mapToDouble(end -> module.onPaper().nanofarads(end.toString()))
            .sum();
    List<Contact> contacts = new ArrayList<>(net.contacts());
    // Of two contacts at one terminal the first speaks for both.
    contacts.removeIf(contact -> contact.terminal().kind() == End.Kind.CONTROL && !contact.first());
    for (Contact contact : contacts) {
      boolean button = module.controls().get(contact.control()).kind() == Control.Kind.BUTTON;
      List<Thresholds> shapers =
          inputs.stream()
              .flatMap(p -> ElectricalTable.shipped().schmitt(p.part()).stream())
              .toList();
      boolean shaped = !shapers.isEmpty() && shapers.size() == inputs.size();
      edges.add(
          new EdgeBy(
              clock.toString(),
              contact.label(),
              button,
              straight,
              nanofarads,
              shaped,
              shaped ? heldMillis(joined, contact, nanofarads, shapers.get(0)) : 0,
              ElectricalTable.shipped().bounceMillis()));
    }
  }

  private double heldMillis(
      List<NetContents> joined, Contact contact, double nanofarads, Thresholds input) {
    OptionalInt least =
        joined.stream()
            .filter(net -> !net.inputs().isEmpty())
            .flatMap(net -> net.pulls().stream())
            .mapToInt(NetContents.Pull::ohms)
            .min();
    if (least.isEmpty()) {
      // Open on every side: nothing but the contact itself takes the charge away.
      return Double.POSITIVE_INFINITY;
    }
    int ohms = least.getAsInt();
    boolean toSupply = module.rail(contact.closesTo()).orElseThrow().supply();
    return toSupply
        ? Rc.highMillis(ohms, nanofarads, input).usual()
        : Rc.lowMillis(ohms, nanofarads, input).usual();
  }
}
