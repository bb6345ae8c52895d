package straywire.module;

import java.util.ArrayList;
import java.util.Collection;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.SortedSet;
import java.util.TreeMap;
import java.util.TreeSet;
import straywire.format.BadEntry;
import straywire.format.Nearest;
import straywire.logic.PinSpec;
import straywire.parts.Part;

/**
 * Turns what a person writes for a place into the place: {@code U1.3} or {@code U1./WE} a pin,
 * {@code U1.3/row} its row, {@code U1.3-U2.3} a jumper, everything else a label by itself. All
 * labels of a module (of parts, rails, controls, lamps, resistors, ports and their lines, words)
 * differ from each other; names of nets are apart.
 *
 * <p>Every method that resolves throws {@link BadEntry} with the nearest valid name.
 */
public final class Labels {
  /** What marks a row in the name of a point. */
  static final String ROW = "/row";

  private final Module module;
  private final Map<String, End> byLabel = new TreeMap<>();

  public Labels(Module module) {
    this.module = module;
    module.rails().forEach(r -> put(End.Kind.RAIL, r.label()));
    module.terminals().forEach(end -> byLabel.put(end.label(), end));
    module.lamps().keySet().forEach(label -> put(End.Kind.LAMP, label));
    module.passives().ends().forEach(end -> byLabel.put(end.toString(), end));
    module.ports().values().forEach(lines -> lines.forEach(l -> put(End.Kind.PORT, l)));
  }

  private void put(End.Kind kind, String label) {
    byLabel.put(label, new End(kind, label, 0));
  }

  /** Every label, sorted: what a symptom can be about. */
  public SortedSet<String> all() {
    SortedSet<String> all = new TreeSet<>(byLabel.keySet());
    all.addAll(module.parts().keySet());
    all.addAll(module.ports().keySet());
    module.controlWords().forEach(word -> all.add(word.label()));
    module.lampWords().forEach(word -> all.add(word.label()));
    return all;
  }

  /** Every place a jumper can end, pins by number, in order. */
  public List<String> ends() {
    List<String> ends = new ArrayList<>();
    module
        .parts()
        .forEach(
            (label, fitted) ->
                fitted.part().pins().forEach(pin -> ends.add(label + "." + pin.number())));
    ends.addAll(byLabel.keySet());
    return ends;
  }

  public End end(String text) {
    End labelled = byLabel.get(text);
    if (labelled != null) {
      return labelled;
    }
    int dot = text.indexOf('.');
    if (dot > 0) {
      String label = text.substring(0, dot);
      Fitted fitted = module.parts().get(label);
      if (fitted != null) {
        return End.pin(label, pinNumber(label, fitted.part(), text.substring(dot + 1)));
      }
      if (module.passives().resistors().containsKey(label)) {
        throw new BadEntry(label + " goes to a rail and has one place for wires; write " + label);
      }
      List<String> dotted = byLabel.keySet().stream().filter(l -> l.contains(".")).toList();
      Optional<String> rail = Nearest.to(text, dotted);
      if (rail.isPresent()) {
        throw new BadEntry("nothing is labelled " + text + "; nearest is " + rail.get());
      }
      throw new BadEntry(
          "no part is labelled " + label + Nearest.hint(label, module.parts().keySet()));
    }
    Fitted fitted = module.parts().get(text);
    if (fitted != null) {
      PinSpec first = fitted.part().pin(1);
      throw new BadEntry(
          text
              + " is a part; name one of its pins, such as "
              + text
              + ".1 or "
              + text
              + "."
              + first.name());
    }
    if (module.passives().series().containsKey(text)) {
      throw new BadEntry(
          text
              + " lies between two lines; write "
              + text
              + ".1 or "
              + text
              + ".2, or say in its line which rail it goes to");
    }
    if (all().contains(text)) {
      throw new BadEntry(text + " is several places; name one of them");
    }
    TreeSet<String> known = new TreeSet<>(byLabel.keySet());
    known.addAll(module.parts().keySet());
    throw new BadEntry("nothing is labelled " + text + Nearest.hint(text, known));
  }

  private static int pinNumber(String label, Part part, String pin) {
    String of = label + " (" + part.type() + ")";
    if (pin.matches("[0-9]+")) {
      if (pin.length() <= 3) {
        int number = Integer.parseInt(pin);
        if (number >= 1 && number <= part.pinCount()) {
          return number;
        }
      }
      throw new BadEntry(of + " has no pin " + pin + "; its pins are 1 to " + part.pinCount());
    }
    List<PinSpec> named = part.pins().stream().filter(p -> p.name().equals(pin)).toList();
    if (named.size() == 1) {
      return named.get(0).number();
    }
    if (named.size() > 1) {
      List<String> numbers = named.stream().map(p -> String.valueOf(p.number())).toList();
      throw new BadEntry(
          of + " has several pins " + pin + "; write a number: " + String.join(", ", numbers));
    }
    List<String> names = part.pins().stream().map(PinSpec::name).toList();
    Optional<String> nearest = Nearest.to(pin, names);
    String hint =
        nearest
            .map(n -> "; nearest is " + n + " (pin " + (names.indexOf(n) + 1) + ")")
            .orElseGet(() -> Nearest.hint(pin, names));
    throw new BadEntry(of + " has no pin " + pin + hint);
  }

  /** A leg as {@code U1.3}, a row as {@code U1.3/row}; ends that are not pins by their label. */
  public Point point(String text) {
    if (text.endsWith(ROW)) {
      return new Point(end(text.substring(0, text.length() - ROW.length())), false);
    }
    End end = end(text);
    return new Point(end, end.kind() == End.Kind.PIN);
  }

  /** A jumper by its two ends, in either direction. */
  public Jumper jumper(String text) {
    for (int dash = text.indexOf('-'); dash >= 0; dash = text.indexOf('-', dash + 1)) {
      Optional<End> from = tryEnd(text.substring(0, dash));
      Optional<End> to = tryEnd(text.substring(dash + 1));
      if (from.isPresent() && to.isPresent() && !from.equals(to)) {
        return module.jumpers().stream()
            .filter(j -> j.touches(from.get()) && j.touches(to.get()))
            .findFirst()
            .orElseThrow(() -> noJumper(text));
      }
    }
    throw noJumper(text);
  }

  private BadEntry noJumper(String text) {
    return new BadEntry("no jumper is " + text + Nearest.hint(text, names(module.jumpers())));
  }

  private static List<String> names(List<Jumper> jumpers) {
    return jumpers.stream().map(Jumper::name).toList();
  }

  private Optional<End> tryEnd(String text) {
    try {
      return Optional.of(end(text));
    } catch (BadEntry e) {
      return Optional.empty();
    }
  }

  public String part(String text) {
    return known("part", text, module.parts().keySet());
  }

  public String lamp(String text) {
    return known("lamp", text, module.lamps().keySet());
  }

  public String control(String text) {
    return known("control", text, module.controls().keySet());
  }

  public String rail(String text) {
    return known("rail", text, module.rails().stream().map(RailSegment::label).toList());
  }

  /** Any label, or a pin. */
  public String place(String text) {
    SortedSet<String> all = all();
    if (all.contains(text)) {
      return text;
    }
    if (text.contains(".")) {
      return end(text).toString();
    }
    throw new BadEntry("nothing is labelled " + text + Nearest.hint(text, all));
  }

  public List<String> buttons() {
    return module.controls().values().stream()
        .filter(c -> c.kind() == Control.Kind.BUTTON)
        .map(Control::label)
        .toList();
  }

  public String button(String text) {
    if (buttons().contains(text)) {
      return text;
    }
    if (module.controls().containsKey(text)) {
      throw new BadEntry(text + " is a switch; set it high or low");
    }
    return known("button", text, buttons());
  }

  /** Labels of words of lamps and of single lamps. */
  List<String> lookedAt() {
    return WordValues.ofLamps(module).labels();
  }

  /** The same labels, when each of them can be looked at. */
  List<String> look(List<String> what) {
    List<String> lamps = lookedAt();
    if (what.isEmpty()) {
      throw new BadEntry("nothing to look at" + Nearest.hint("", lamps));
    }
    what.forEach(label -> known("lamp or word of lamps", label, lamps));
    return what;
  }

  private static String known(String what, String text, Collection<String> labels) {
    if (!labels.contains(text)) {
      throw new BadEntry("no " + what + " is labelled " + text + Nearest.hint(text, labels));
    }
    return text;
  }
}
