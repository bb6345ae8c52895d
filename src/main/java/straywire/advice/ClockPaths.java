package straywire.advice;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.SortedSet;
import java.util.TreeMap;
import java.util.TreeSet;
import straywire.advice.ReviewFact.EdgeBy;
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
    List<Contact> contacts = new ArrayList<>(net.contacts());
    // Of two contacts at one terminal the first speaks for both.
    contacts.removeIf(contact -> contact.terminal().kind() == End.Kind.CONTROL && !contact.first());
    for (Contact contact : contacts) {
      boolean button = module.controls().get(contact.control()).kind() == Control.Kind.BUTTON;
      double nanofarads =
          module.onPaper().nanofarads(contact.terminal().label())
              + net.inputs().stream()
                  .mapToDouble(p -> module.onPaper().nanofarads(p.toString()))
                  .sum();
      List<Thresholds> shapers =
          net.inputs().stream()
              .flatMap(p -> ElectricalTable.shipped().schmitt(p.part()).stream())
              .toList();
      boolean shaped = !shapers.isEmpty() && shapers.size() == net.inputs().size();
      edges.add(
          new EdgeBy(
              clock.toString(),
              contact.label(),
              button,
              straight,
              nanofarads,
              shaped,
              shaped ? heldMillis(net, contact, nanofarads, shapers.get(0)) : 0,
              ElectricalTable.shipped().bounceMillis()));
    }
  }

  private double heldMillis(NetContents net, Contact contact, double nanofarads, Thresholds input) {
    if (net.pulls().isEmpty()) {
      // Open on every side: nothing but the contact itself takes the charge away.
      return Double.POSITIVE_INFINITY;
    }
    int ohms = net.pulls().stream().mapToInt(NetContents.Pull::ohms).min().orElseThrow();
    boolean toSupply = module.rail(contact.closesTo()).orElseThrow().supply();
    return toSupply
        ? Rc.highMillis(ohms, nanofarads, input).usual()
        : Rc.lowMillis(ohms, nanofarads, input).usual();
  }
}
