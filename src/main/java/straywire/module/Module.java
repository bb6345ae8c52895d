package straywire.module;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Optional;
import java.util.SortedMap;
import java.util.TreeMap;
import java.util.stream.Stream;
import straywire.parts.PartLibrary;

/**
 * A module as meant. Maps are sorted by label, lists keep the order of the file.
 *
 * @param parts by label
 * @param controlWords words over controls
 * @param lampWords words over lamps
 * @param ports port name to its lines, high bit first
 * @param neighbours pairs of ends that lie side by side beyond those a DIP's legs imply
 * @param exercise the by-hand exercise: what to set, press and look at, in order
 * @param passives resistors, and what sets the times of timers
 * @param onPaper what only the wiring review looks at
 */
public record Module(
    String name,
    String title,
    String about,
    SortedMap<String, Fitted> parts,
    List<RailSegment> rails,
    List<Net> nets,
    SortedMap<String, Control> controls,
    SortedMap<String, Lamp> lamps,
    SortedMap<String, List<String>> ports,
    List<Word> controlWords,
    List<Word> lampWords,
    List<List<End>> neighbours,
    List<Entry> exercise,
    PartLibrary library,
    Passives passives,
    OnPaper onPaper) {
  public Module {
    parts = Collections.unmodifiableSortedMap(new TreeMap<>(parts));
    rails = List.copyOf(rails);
    nets = List.copyOf(nets);
    controls = Collections.unmodifiableSortedMap(new TreeMap<>(controls));
    lamps = Collections.unmodifiableSortedMap(new TreeMap<>(lamps));
    ports = Collections.unmodifiableSortedMap(new TreeMap<>(ports));
    controlWords = List.copyOf(controlWords);
    lampWords = List.copyOf(lampWords);
    neighbours = List.copyOf(neighbours);
    exercise = List.copyOf(exercise);
  }

  /** Every contact of every control, the first of each before the other. */
  public List<Contact> contacts() {
    return controls.values().stream().flatMap(c -> contacts(c).stream()).toList();
  }

  /** The contacts of a control to rails: one, two of a change-over, none of one between lines. */
  public List<Contact> contacts(Control control) {
    if (!control.passes().isEmpty()) {
      return List.of();
    }
    boolean toSupply = rail(control.closesTo()).map(RailSegment::supply).orElse(false);
    Contact first =
        new Contact(
            control.label(),
            control.label(),
            control.terminal(),
            control.closesTo(),
            toSupply,
            control.pullTo(),
            control.pullOhms());
    return Stream.concat(
            Stream.of(first),
            control.changeOver().flatMap(other -> other.contact(control, !toSupply)).stream())
        .toList();
  }

  /** Every contact of every change-over between lines, that of the position low first. */
  public List<Pass> passes() {
    return controls.values().stream().flatMap(c -> c.passes().stream()).toList();
  }

  /** The contacts of a control, to rails and between lines. */
  public List<ControlContact> everyContact(Control control) {
    return Stream.<ControlContact>concat(contacts(control).stream(), control.passes().stream())
        .toList();
  }

  /** The contacts of every control, to rails and between lines. */
  public List<ControlContact> everyContact() {
    return controls.values().stream().flatMap(c -> everyContact(c).stream()).toList();
  }

  /** Every place where a wire of a control ends. */
  public List<End> terminals() {
    return controls.values().stream().flatMap(c -> c.terminals().stream()).toList();
  }

  /** A contact to a rail by its label. */
  public Optional<Contact> contact(String label) {
    return contacts().stream().filter(c -> c.label().equals(label)).findFirst();
  }

  /** A contact between lines by its label. */
  public Optional<Pass> pass(String label) {
    return passes().stream().filter(p -> p.label().equals(label)).findFirst();
  }

  public List<Jumper> jumpers() {
    List<Jumper> jumpers = new ArrayList<>();
    nets.forEach(net -> jumpers.addAll(net.jumpers()));
    return jumpers;
  }

  public Optional<Net> netOf(End end) {
    return nets.stream().filter(n -> n.ends().contains(end)).findFirst();
  }

  public Optional<RailSegment> rail(String label) {
    return rails.stream().filter(r -> r.label().equals(label)).findFirst();
  }

  /** The segment that a net starts from; empty for one that is not on a rail. */
  public Optional<RailSegment> railOf(Net net) {
    return net.onRail() ? rail(net.ends().get(0).label()) : Optional.empty();
  }

  public Optional<Word> lampWord(String label) {
    return lampWords.stream().filter(w -> w.label().equals(label)).findFirst();
  }

  public Optional<Word> controlWord(String label) {
    return controlWords.stream().filter(w -> w.label().equals(label)).findFirst();
  }
}
