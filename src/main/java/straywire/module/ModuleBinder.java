package straywire.module;

import com.fasterxml.jackson.databind.node.ObjectNode;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.SortedMap;
import java.util.TreeMap;
import straywire.format.BadEntry;
import straywire.format.Nearest;
import straywire.format.Quantity;
import straywire.format.YamlValue;
import straywire.logic.PinKind;
import straywire.parts.Family;
import straywire.parts.Part;
import straywire.parts.PartLibrary;

/** Makes a module of a YAML tree, strictly: the first thing wrong, top to bottom, is told. */
final class ModuleBinder {
  static final String FORMAT = "straywire-module/1";
  private static final List<String> STEPS =
      List.of("power", "set", "press", "hold", "release", "look");

  private final PartLibrary library;
  private final Map<String, YamlValue> top;

  private final GivenLabels labels = new GivenLabels();
  private final RailBinder rails = new RailBinder(labels);
  private List<RailSegment> segments = List.of();
  private final SortedMap<String, Fitted> parts = new TreeMap<>();
  private final SortedMap<String, Control> controls = new TreeMap<>();
  private final SortedMap<String, Lamp> lamps = new TreeMap<>();
  private final SortedMap<String, List<String>> ports = new TreeMap<>();
  private final SortedMap<String, Resistor> resistors = new TreeMap<>();
  private final SortedMap<String, SeriesResistor> series = new TreeMap<>();
  private final List<Timing> timings = new ArrayList<>();
  private final List<Word> controlWords = new ArrayList<>();
  private final List<Word> lampWords = new ArrayList<>();

  ModuleBinder(YamlValue file, PartLibrary library) {
    this.library = library;
    this.top =
        file.fields(
            List.of("format", "name", "title", "rails", "parts", "nets"),
            List.of(
                "about",
                "controls",
                "lamps",
                "ports",
                "words",
                "neighbours",
                "exercise",
                "resistors",
                "digits",
                "timing",
                "capacitors-to-ground",
                "explained"));
  }

  Module bind() {
    YamlValue format = top.get("format");
    if (!format.word().equals(FORMAT)) {
      throw format.wrong("this program reads " + FORMAT + ", got " + format.word());
    }
    GivenLabels.check(top.get("name"), top.get("name").word(), GivenLabels.LABEL);
    top.get("title").text();
    segments = rails.read(top.get("rails").fields());
    top.get("parts").fields().forEach(this::fitted);
    if (parts.isEmpty()) {
      throw top.get("parts").wrong("a module has at least one part");
    }
    section("controls").forEach(new ControlBinder(labels, rails, controls, controlWords)::control);
    section("lamps").forEach(this::lamp);
    section("digits").forEach(this::digit);
    section("resistors").forEach(this::resistor);
    section("timing")
        .forEach((label, value) -> timings.add(new TimingBinder(parts).timing(label, value)));
    section("ports").forEach(this::port);
    section("words").forEach(this::word);
    NetBinder wiring =
        new NetBinder(new Labels(module(List.of(), List.of(), List.of(), OnPaper.NOTHING)));
    List<Net> nets = new ArrayList<>();
    top.get("nets")
        .fields()
        .forEach(
            (name, value) -> {
              GivenLabels.check(value, name, GivenLabels.RAIL_LABEL);
              nets.add(wiring.net(name, value));
            });
    List<List<End>> neighbours =
        top.containsKey("neighbours") ? wiring.neighbours(top.get("neighbours")) : List.of();
    Module wired = module(nets, neighbours, List.of(), OnPaper.NOTHING);
    ContentsBinder.check(wired, top.get("parts").fields());
    refuseSwitchedSupply(wired);
    List<Entry> exercise = top.containsKey("exercise") ? exercise(wired) : List.of();
    return module(nets, neighbours, exercise, new PaperBinder(wired).read(top));
  }

  /** What a part forgets that loses its supply by a switch is not simulated. */
  private void refuseSwitchedSupply(Module wired) {
    for (End end : wired.passes().stream().flatMap(pass -> pass.ends().stream()).toList()) {
      Optional<Net> net = wired.netOf(end).filter(n -> !n.onRail());
      net.stream()
          .flatMap(n -> n.ends().stream())
          .filter(e -> e.kind() == End.Kind.PIN && powers(e))
          .findFirst()
          .ifPresent(
              pin -> {
                throw top.get("nets")
                    .fields()
                    .get(net.orElseThrow().name())
                    .wrong(
                        pin
                            + " takes its supply through a change-over; wire it straight to a rail");
              });
    }
  }

  private boolean powers(End pin) {
    PinKind kind = parts.get(pin.label()).part().pin(pin.pin()).kind();
    return kind == PinKind.SUPPLY || kind == PinKind.GROUND;
  }

  private Module module(
      List<Net> nets, List<List<End>> neighbours, List<Entry> exercise, OnPaper onPaper) {
    return new Module(
        top.get("name").word(),
        top.get("title").text(),
        top.containsKey("about") ? top.get("about").text() : "",
        parts,
        segments,
        nets,
        controls,
        lamps,
        ports,
        controlWords,
        lampWords,
        neighbours,
        exercise,
        library,
        new Passives(resistors, series, timings),
        onPaper);
  }

  private Map<String, YamlValue> section(String name) {
    return top.containsKey(name) ? top.get(name).fields() : Map.of();
  }

  private void fitted(String label, YamlValue value) {
    labels.take(value, label, GivenLabels.LABEL, "a part");
    Map<String, YamlValue> fields =
        value.fields(List.of("type", "family"), List.of("note", "fitted", "contents"));
    YamlValue type = fields.get("type");
    Part part =
        library
            .part(type.word())
            .orElseThrow(
                () ->
                    type.wrong(
                        "unknown part type "
                            + type.word()
                            + Nearest.hint(type.word(), library.types())));
    YamlValue name = fields.get("family");
    Family family =
        library
            .family(name.word())
            .orElseThrow(
                () ->
                    name.wrong(
                        "unknown family "
                            + name.word()
                            + Nearest.hint(name.word(), library.families())));
    String note = fields.containsKey("note") ? fields.get("note").text() : "";
    boolean inPlace = !fields.containsKey("fitted") || fields.get("fitted").yesNo();
    Contents contents =
        fields.containsKey("contents")
            ? ContentsBinder.read(part, fields.get("contents"))
            : Contents.UNKNOWN;
    parts.put(label, new Fitted(label, part, family, note, inPlace, contents));
  }

  private void lamp(String label, YamlValue value) {
    labels.take(value, label, GivenLabels.LABEL, "a lamp");
    Map<String, YamlValue> fields = value.fields(List.of("to", "ohms"), List.of("title"));
    String title = fields.containsKey("title") ? fields.get("title").text() : "";
    RailSegment to = rails.at(fields.get("to"));
    int ohms = Quantity.ohms(fields.get("ohms"), 0);
    lamps.put(label, new Lamp(label, title, to.label(), ohms, !to.supply()));
  }

  /** Seven lamps and a word of them. */
  private void digit(String label, YamlValue value) {
    labels.take(value, label, GivenLabels.LABEL, "a word");
    Map<String, YamlValue> fields = value.fields(List.of("to", "ohms"), List.of("title"));
    String title = fields.containsKey("title") ? fields.get("title").text() + ", " : "";
    RailSegment to = rails.at(fields.get("to"));
    int ohms = Quantity.ohms(fields.get("ohms"), 0);
    List<String> members = new ArrayList<>();
    for (char segment = 'a'; segment <= 'g'; segment++) {
      String member = label + segment;
      labels.take(value, member, GivenLabels.LABEL, "a segment");
      lamps.put(
          member, new Lamp(member, title + "segment " + segment, to.label(), ohms, !to.supply()));
      members.add(member);
    }
    lampWords.add(new Word(label, members));
  }

  private void resistor(String label, YamlValue value) {
    Map<String, YamlValue> fields = value.fields(List.of("ohms"), List.of("to", "count"));
    int ohms = Quantity.ohms(fields.get("ohms"), 1);
    List<String> members =
        fields.containsKey("count") ? GivenLabels.row(label, fields.get("count")) : List.of(label);
    for (String member : members) {
      labels.take(value, member, GivenLabels.LABEL, "a resistor");
      if (fields.containsKey("to")) {
        String to = rails.at(fields.get("to")).label();
        resistors.put(member, new Resistor(member, to, ohms));
      } else {
        SeriesResistor between = new SeriesResistor(member, ohms);
        between
            .ends()
            .forEach(
                end -> labels.take(value, end.toString(), GivenLabels.RAIL_LABEL, "a resistor"));
        series.put(member, between);
      }
    }
  }

  private void port(String label, YamlValue value) {
    labels.take(value, label, GivenLabels.LABEL, "a port");
    List<String> lines = new ArrayList<>();
    for (YamlValue item : value.items()) {
      labels.take(item, item.word(), GivenLabels.LABEL, "a port line");
      lines.add(item.word());
    }
    if (lines.isEmpty()) {
      throw value.wrong("a port has at least one line");
    }
    ports.put(label, List.copyOf(lines));
  }

  private void word(String label, YamlValue value) {
    labels.take(value, label, GivenLabels.LABEL, "a word");
    Map<String, YamlValue> fields = value.fields(List.of(), List.of("controls", "lamps"));
    if (fields.size() != 1) {
      throw value.wrong("a word has either controls or lamps");
    }
    boolean ofLamps = fields.containsKey("lamps");
    List<String> members = new ArrayList<>();
    YamlValue list = fields.get(ofLamps ? "lamps" : "controls");
    for (YamlValue item : list.items()) {
      members.add(member(item, ofLamps, members));
    }
    if (members.isEmpty()) {
      throw list.wrong("a word has at least one member");
    }
    (ofLamps ? lampWords : controlWords).add(new Word(label, members));
  }

  private String member(YamlValue item, boolean ofLamps, List<String> before) {
    String label = item.word();
    if (ofLamps && !lamps.containsKey(label)) {
      throw item.wrong("no lamp is labelled " + label + Nearest.hint(label, lamps.keySet()));
    }
    if (!ofLamps && !controls.containsKey(label)) {
      throw item.wrong("no control is labelled " + label + Nearest.hint(label, controls.keySet()));
    }
    if (!ofLamps && controls.get(label).kind() == Control.Kind.BUTTON) {
      throw item.wrong(label + " is a button; a word of controls is made of switches");
    }
    if (before.contains(label)) {
      throw item.wrong(label + " stands twice in the word");
    }
    return label;
  }

  private List<Entry> exercise(Module wired) {
    EntryFormat format = new EntryFormat(wired);
    List<Entry> steps = new ArrayList<>();
    for (YamlValue item : top.get("exercise").items()) {
      item.fields().keySet().stream()
          .filter(field -> !STEPS.contains(field))
          .findFirst()
          .ifPresent(
              field -> {
                throw item.wrong(
                    field + " is no step; a step is one of " + String.join(", ", STEPS));
              });
      try {
        steps.add(format.read((ObjectNode) item.toJsonOfWords()));
      } catch (BadEntry e) {
        throw item.wrong(e.getMessage());
      }
    }
    return steps;
  }
}
