package straywire.review;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.SortedSet;
import java.util.TreeMap;
import java.util.TreeSet;
import straywire.advice.PinRole;
import straywire.electrical.ElectricalTable;
import straywire.electrical.NetContents;
import straywire.electrical.NetContents.Pin;
import straywire.electrical.Rc;
import straywire.electrical.Thresholds;
import straywire.module.Contact;
import straywire.module.Control;
import straywire.module.End;
import straywire.module.Module;
import straywire.module.Net;
import straywire.module.Pass;
import straywire.module.RailSegment;
import straywire.parts.Part;
import straywire.review.ReviewFact.EdgeBy;

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
    path.add(net);
    beyond(net).forEach(other -> follow(other, false, reaching, path));
    if (gate.isPresent()) {
      Map<Integer, String> feeding = steering.feeding(gate.get());
      long free =
          feeding.values().stream().filter(n -> !steering.contents(n).net().onRail()).count();
      feeding.values().forEach(n -> follow(n, straight && free == 1, reaching, path));
    } else {
      steering
          .behind(steering.contents(net))
          .forEach(other -> follow(other.name(), straight, reaching, path));
    }
    path.remove(net);
  }

  /** Lines that a change-over may join to {@code net}; one that is joined to a rail ends there. */
  private List<String> beyond(String net) {
    List<String> beyond = new ArrayList<>();
    for (Pass pass : module.passes()) {
      List<String> names =
          pass.ends().stream()
              .flatMap(end -> module.netOf(end).stream())
              .filter(n -> !n.onRail())
              .map(Net::name)
              .toList();
      if (names.size() == 2 && names.contains(net)) {
        beyond.add(names.get(0).equals(net) ? names.get(1) : names.get(0));
      }
    }
    return beyond;
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
      boolean toSupply = module.rail(contact.closesTo()).orElseThrow().supply();
      edges.add(edge(clock, net, contact.label(), contact.control(), straight, toSupply));
    }
    for (Control control : module.controls().values()) {
      List<End> here = new ArrayList<>(control.terminals());
      here.retainAll(net.net().ends());
      if (!control.passes().isEmpty() && !here.isEmpty() && !net.net().onRail()) {
        List<RailSegment> rails = rails(control);
        // Between two lines it has a say; with a rail at it, the edge is its own.
        boolean own = straight && !rails.isEmpty();
        boolean toSupply = rails.stream().anyMatch(RailSegment::supply);
        edges.add(edge(clock, net, control.label(), control.label(), own, toSupply));
      }
    }
  }

  /** The rails at the terminals of a control. */
  private List<RailSegment> rails(Control control) {
    return control.terminals().stream()
        .flatMap(end -> module.netOf(end).stream())
        .flatMap(net -> module.railOf(net).stream())
        .toList();
  }

  private EdgeBy edge(
      Pin clock,
      NetContents net,
      String label,
      String control,
      boolean straight,
      boolean toSupply) {
    List<NetContents> joined = new ArrayList<>(List.of(net));
    joined.addAll(steering.behind(net));
    double nanofarads =
        joined.stream()
            .flatMap(n -> n.net().ends().stream())
            .mapToDouble(end -> module.onPaper().nanofarads(end.toString()))
            .sum();
    List<Pin> inputs = joined.stream().flatMap(n -> n.inputs().stream()).toList();
    List<Thresholds> shapers =
        inputs.stream().flatMap(p -> ElectricalTable.shipped().schmitt(p.part()).stream()).toList();
    boolean shaped = !shapers.isEmpty() && shapers.size() == inputs.size();
    return new EdgeBy(
        clock.toString(),
        label,
        module.controls().get(control).kind() == Control.Kind.BUTTON,
        straight,
        nanofarads,
        shaped,
        shaped ? heldMillis(joined, toSupply, nanofarads, shapers.get(0)) : 0,
        ElectricalTable.shipped().bounceMillis());
  }

  private static double heldMillis(
      List<NetContents> joined, boolean toSupply, double nanofarads, Thresholds input) {
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
    return toSupply
        ? Rc.highMillis(ohms, nanofarads, input).usual()
        : Rc.lowMillis(ohms, nanofarads, input).usual();
  }
}
