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

  /** The contacts of a control: one, or two of a change-over. */
  public List<Contact> contacts(Control control) {
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
            control.changeOver().stream().map(other -> other.contact(control, !toSupply)))
        .toList();
  }

  /** A contact by its label. */
  public Optional<Contact> contact(String label) {
    return contacts().stream().filter(c -> c.label().equals(label)).findFirst();
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

  public Optional<Word> lampWord(String label) {
    return lampWords.stream().filter(w -> w.label().equals(label)).findFirst();
  }

  public Optional<Word> controlWord(String label) {
    return controlWords.stream().filter(w -> w.label().equals(label)).findFirst();
  }
}
