package straywire.advice;

import java.util.ArrayList;
import java.util.Collections;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeMap;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import straywire.advice.WiringFact.BusFact;
import straywire.advice.WiringFact.BusMember;
import straywire.advice.WiringFact.Inverter;
import straywire.advice.WiringFact.PinFact;
import straywire.advice.WiringFact.Side;
import straywire.module.End;
import straywire.module.Jumper;
import straywire.module.Module;
import straywire.module.Net;
import straywire.module.Word;

/**
 * Parallel jumpers in bit order, told from words, ports and numbered pin names. Exchanging two
 * lines at one end of their jumpers gives the same wiring as exchanging them at the other, so each
 * set of parallel jumpers counts once.
 */
final class Buses {
  private static final Pattern NUMBERED = Pattern.compile("(\\D*)(\\d+)(\\D*)");

  private final Module module;
  private final Map<End, PinFact> pins = new HashMap<>();
  private final Map<String, String> inverterInput = new HashMap<>();
  private final Map<String, Net> nets = new HashMap<>();
  private final Set<Set<Jumper>> known = new HashSet<>();
  private final List<WiringFact> facts = new ArrayList<>();

  private Buses(Module module, List<PinFact> pins, List<Inverter> inverters) {
    this.module = module;
    pins.forEach(p -> this.pins.put(End.pin(p.part(), p.number()), p));
    inverters.forEach(i -> inverterInput.put(i.output(), i.input()));
    module.nets().forEach(n -> nets.put(n.name(), n));
  }

  static List<WiringFact> of(Module module, List<PinFact> pins, List<Inverter> inverters) {
    Buses buses = new Buses(module, pins, inverters);
    for (Word word : module.controlWords()) {
      buses.lines(word.label(), Side.IN, buses.netsOf(End.Kind.CONTROL, word.members()));
    }
    for (Word word : module.lampWords()) {
      buses.outward(word.label(), buses.netsOf(End.Kind.LAMP, word.members()));
    }
    for (Map.Entry<String, List<String>> port : new TreeMap<>(module.ports()).entrySet()) {
      buses.outward(port.getKey(), buses.netsOf(End.Kind.PORT, port.getValue()));
    }
    for (String part : module.parts().keySet()) {
      buses.numberedPins(part);
    }
    return buses.facts;
  }

  private List<Net> netsOf(End.Kind kind, List<String> labels) {
    List<Net> found = new ArrayList<>();
    labels.forEach(l -> module.netOf(new End(kind, l, 0)).ifPresent(found::add));
    return found;
  }

  /** Lines towards lamps or a port, and the lines before the inverters that feed them. */
  private void outward(String name, List<Net> lines) {
    lines(name, Side.OUT, lines);
    List<Net> before = new ArrayList<>();
    for (Net line : lines) {
      line.ends().stream()
          .map(e -> inverterInput.getOrDefault(e.toString(), ""))
          .filter(pin -> !pin.isEmpty())
          .findFirst()
          .flatMap(this::netOfPin)
          .ifPresent(before::add);
    }
    if (before.size() == lines.size()) {
      lines(name + " before the inverters", Side.OUT, before);
    }
  }

  private Optional<Net> netOfPin(String pin) {
    return pins.values().stream()
        .filter(p -> p.pin().equals(pin) && nets.containsKey(p.net()))
        .map(p -> nets.get(p.net()))
        .findFirst();
  }

  /** Every net's first jumper, every net's second jumper, and so on. */
  private void lines(String name, Side side, List<Net> lines) {
    boolean distinct = new HashSet<>(lines).size() == lines.size();
    if (lines.size() < 2 || !distinct || lines.stream().anyMatch(Net::onRail)) {
      return;
    }
    int runs = lines.stream().mapToInt(n -> n.jumpers().size()).min().orElse(0);
    for (int run = 0; run < runs; run++) {
      List<Jumper> parallel = new ArrayList<>();
      List<End> ends = new ArrayList<>();
      for (Net line : lines) {
        parallel.add(line.jumpers().get(run));
        ends.add(parallel.get(parallel.size() - 1).to());
      }
      add(name + "/" + (run + 1), side, parallel, ends);
    }
  }

  /** Pins that differ only in the number within their name, such as D1 to D4. */
  private void numberedPins(String part) {
    Map<String, Map<Integer, End>> stems = new TreeMap<>();
    for (PinFact pin : pins.values()) {
      Matcher name = NUMBERED.matcher(pin.name());
      if (pin.part().equals(part)
          && pin.tie() == Tie.NONE
          && nets.containsKey(pin.net())
          && name.matches()) {
        stems
            .computeIfAbsent(
                name.group(1) + "#" + name.group(3), k -> new TreeMap<>(Collections.reverseOrder()))
            .put(Integer.parseInt(name.group(2)), End.pin(part, pin.number()));
      }
    }
    stems.forEach(
        (stem, ends) -> {
          numbered(part + " " + stem + " in", ends, false);
          numbered(part + " " + stem + " out", ends, true);
        });
  }

  private void numbered(String name, Map<Integer, End> ends, boolean from) {
    List<Jumper> parallel = new ArrayList<>();
    List<End> at = new ArrayList<>();
    for (End end : ends.values()) {
      nets.get(pins.get(end).net()).jumpers().stream()
          .filter(j -> (from ? j.from() : j.to()).equals(end))
          .findFirst()
          .ifPresent(
              j -> {
                parallel.add(j);
                at.add(end);
              });
    }
    if (parallel.size() == ends.size() && ends.size() > 1) {
      add(name, Side.INNER, parallel, at);
    }
  }

  private void add(String name, Side side, List<Jumper> parallel, List<End> ends) {
    if (!slice(name, side, "all", parallel, ends)) {
      return;
    }
    for (int i = 0; i < parallel.size(); i++) {
      Jumper jumper = parallel.get(i);
      facts.add(new BusMember(name, i, jumper.net(), jumper.name(), ends.get(i).toString()));
    }
    int half = parallel.size() / 2;
    if (parallel.size() >= 6 && parallel.size() % 2 == 0) {
      slice(name, side, "high", parallel.subList(0, half), ends.subList(0, half));
      slice(name, side, "low", parallel.subList(half, 2 * half), ends.subList(half, 2 * half));
    }
  }

  private boolean slice(
      String name, Side side, String slice, List<Jumper> parallel, List<End> ends) {
    if (!known.add(Set.copyOf(parallel))) {
      return false;
    }
    List<String> places = new ArrayList<>();
    for (int i = 0; i < parallel.size(); i++) {
      places.add(parallel.get(i).name());
      places.add(ends.get(i).toString());
    }
    facts.add(new BusFact(name, side, slice, parallel.size(), role(parallel), places));
    return true;
  }

  /** What the pins that listen on these lines are for: the first that says more than data. */
  private PinRole role(List<Jumper> parallel) {
    return nets.get(parallel.get(0).net()).ends().stream()
        .filter(pins::containsKey)
        .map(pins::get)
        .filter(p -> p.listens() && p.role() != PinRole.DATA_IN && p.role() != PinRole.DATA_OUT)
        .map(PinFact::role)
        .findFirst()
        .orElse(PinRole.DATA_IN);
  }
}
