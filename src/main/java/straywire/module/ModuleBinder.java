package straywire.module;

import com.fasterxml.jackson.databind.node.ObjectNode;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.SortedMap;
import java.util.TreeMap;
import straywire.parts.Family;
import straywire.parts.Part;
import straywire.parts.PartLibrary;
import straywire.parts.PinKind;

/** Makes a module of a YAML tree, strictly: the first thing wrong, top to bottom, is told. */
final class ModuleBinder {
  static final String FORMAT = "straywire-module/1";
  private static final String LABEL = "[A-Za-z+][A-Za-z0-9+_-]*";
  private static final String RAIL_LABEL = LABEL + "(\\.[A-Za-z0-9+_-]+)*";
  private static final List<String> NOT_LABELS = List.of("true", "false", "null");
  private static final List<String> STEPS =
      List.of("power", "set", "press", "hold", "release", "look");

  private final PartLibrary library;
  private final Map<String, YamlValue> top;

  /** Every label to where it was given. */
  private final Map<String, String> taken = new HashMap<>();

  private final List<RailSegment> rails = new ArrayList<>();
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
    label(top.get("name"), top.get("name").word(), LABEL);
    top.get("title").text();
    top.get("rails").fields().forEach(this::rail);
    linkRails();
    top.get("parts").fields().forEach(this::fitted);
    if (parts.isEmpty()) {
      throw top.get("parts").wrong("a module has at least one part");
    }
    section("controls").forEach(this::control);
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
              label(value, name, RAIL_LABEL);
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
        rails,
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

  private static void label(YamlValue at, String label, String pattern) {
    if (!label.matches(pattern) || NOT_LABELS.contains(label)) {
      throw at.wrong(
          "\""
              + label
              + "\" is no label; a label starts with a letter and goes on with letters, digits"
              + " and any of - _ +");
    }
  }

  private void take(YamlValue at, String label, String pattern, String where) {
    label(at, label, pattern);
    String before = taken.putIfAbsent(label, where + " on line " + at.line());
    if (before != null) {
      throw at.wrong("the label " + label + " is taken by " + before);
    }
  }

  private void rail(String label, YamlValue value) {
    take(value, label, RAIL_LABEL, "a rail");
    Map<String, YamlValue> fields = value.fields(List.of("level"), List.of("linked-to"));
    boolean supply = fields.get("level").oneOf(List.of("supply", "ground")).equals("supply");
    String linkedTo = fields.containsKey("linked-to") ? fields.get("linked-to").word() : "";
    rails.add(new RailSegment(label, supply, linkedTo));
  }

  private void linkRails() {
    Map<String, YamlValue> written = top.get("rails").fields();
    for (RailSegment rail : rails) {
      Map<String, YamlValue> fields = written.get(rail.label()).fields();
      if (!fields.containsKey("linked-to")) {
        continue;
      }
      YamlValue link = fields.get("linked-to");
      RailSegment feeding = railAt(link);
      if (feeding.supply() != rail.supply()) {
        throw link.wrong(
            rail.label()
                + " is "
                + level(rail)
                + ", "
                + feeding.label()
                + " is "
                + level(feeding)
                + "; link rails of one level");
      }
      RailSegment at = feeding;
      for (int steps = 0; !at.linkedTo().isEmpty(); steps++) {
        if (at.equals(rail) || steps > rails.size()) {
          throw link.wrong("the links run in a circle; leave out one where power enters");
        }
        at = railAt(written.get(at.label()).fields().get("linked-to"));
      }
    }
  }

  private static String level(RailSegment rail) {
    return rail.supply() ? "supply" : "ground";
  }

  private RailSegment railAt(YamlValue value) {
    String label = value.word();
    return rails.stream()
        .filter(r -> r.label().equals(label))
        .findFirst()
        .orElseThrow(
            () ->
                value.wrong(
                    "no rail is labelled "
                        + label
                        + Nearest.hint(label, rails.stream().map(RailSegment::label).toList())));
  }

  private void fitted(String label, YamlValue value) {
    take(value, label, LABEL, "a part");
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

  private void control(String label, YamlValue value) {
    Map<String, YamlValue> written = value.fields();
    if (written.containsKey("low-throw") || written.containsKey("high-throw")) {
      betweenLines(label, value);
      return;
    }
    Map<String, YamlValue> fields =
        value.fields(
            List.of("kind", "closes-to"),
            List.of("title", "pull-to", "pull-ohms", "rest", "ways", "other-throw", "other-rail"));
    String kind = fields.get("kind").oneOf(List.of("switch", "button", "dip"));
    if (kind.equals("dip") && !fields.containsKey("ways")) {
      throw value.wrong("a dip is a row of switches; say how many, such as ways: 8");
    }
    if (!kind.equals("dip") && fields.containsKey("ways")) {
      throw value.wrong("ways belong to a dip, which is a row of switches");
    }
    if (kind.equals("dip")
        && (fields.containsKey("other-throw") || fields.containsKey("other-rail"))) {
      throw value.wrong("a dip has single contacts; write its change-overs as switches");
    }
    if (kind.equals("dip")) {
      take(value, label, LABEL, "a word");
      List<String> members = row(label, fields.get("ways"));
      members.forEach(member -> contact(member, value, fields, false));
      controlWords.add(new Word(label, members));
    } else {
      contact(label, value, fields, kind.equals("button"));
    }
  }

  /** Labels of equal members, numbered from 1. */
  private static List<String> row(String label, YamlValue count) {
    List<String> members = new ArrayList<>();
    for (int i = 1; i <= count.integer(1, 16); i++) {
      members.add(label + i);
    }
    return members;
  }

  private void contact(
      String label, YamlValue value, Map<String, YamlValue> fields, boolean button) {
    take(value, label, LABEL, "a control");
    String title = fields.containsKey("title") ? fields.get("title").text() : "";
    RailSegment closesTo = railAt(fields.get("closes-to"));
    if (fields.containsKey("pull-to") != fields.containsKey("pull-ohms")) {
      throw value.wrong("pull-to and pull-ohms belong together; write both or neither");
    }
    String pullTo = "";
    int pullOhms = 0;
    if (fields.containsKey("pull-to")) {
      RailSegment pull = railAt(fields.get("pull-to"));
      if (pull.supply() == closesTo.supply()) {
        throw fields
            .get("pull-to")
            .wrong(
                "the contact closes to "
                    + level(closesTo)
                    + ", so the resistor goes to "
                    + (closesTo.supply() ? "ground" : "supply")
                    + "; "
                    + pull.label()
                    + " is "
                    + level(pull));
      }
      pullTo = pull.label();
      pullOhms = Quantity.ohms(fields.get("pull-ohms"), 1);
    }
    boolean restHigh =
        fields.containsKey("rest")
            ? fields.get("rest").oneOf(List.of("low", "high")).equals("high")
            : !closesTo.supply();
    controls.put(
        label,
        new Control(
            label,
            button ? Control.Kind.BUTTON : Control.Kind.SWITCH,
            title,
            closesTo.label(),
            pullTo,
            pullOhms,
            restHigh,
            changeOver(value, fields, closesTo)));
  }

  /** A change-over whose common is a line, joined to one of two others. */
  private void betweenLines(String label, YamlValue value) {
    for (String single : List.of("closes-to", "pull-to", "pull-ohms", "ways")) {
      if (value.fields().containsKey(single)) {
        throw value.wrong(
            "the common of a change-over is a line (low-throw and high-throw) or at a rail"
                + " (closes-to), not both; a resistor at a throw is written under resistors");
      }
    }
    Map<String, YamlValue> fields =
        value.fields(List.of("kind", "low-throw", "high-throw"), List.of("title", "rest"));
    take(value, label, LABEL, "a control");
    String title = fields.containsKey("title") ? fields.get("title").text() : "";
    boolean button = fields.get("kind").oneOf(List.of("switch", "button")).equals("button");
    for (String side : List.of("low-throw", "high-throw")) {
      take(fields.get(side), fields.get(side).word(), LABEL, "a throw");
    }
    boolean restHigh =
        fields.containsKey("rest")
            && fields.get("rest").oneOf(List.of("low", "high")).equals("high");
    ChangeOver between =
        new ChangeOver.BetweenLines(
            fields.get("low-throw").word(), fields.get("high-throw").word());
    controls.put(
        label,
        new Control(
            label,
            button ? Control.Kind.BUTTON : Control.Kind.SWITCH,
            title,
            "",
            "",
            0,
            restHigh,
            Optional.of(between)));
  }

  private Optional<ChangeOver> changeOver(
      YamlValue value, Map<String, YamlValue> fields, RailSegment closesTo) {
    if (fields.containsKey("other-throw") && fields.containsKey("other-rail")) {
      throw value.wrong(
          "the common of a change-over is at a rail (other-throw) or at the line (other-rail), not"
              + " both");
    }
    if (fields.containsKey("other-throw")) {
      YamlValue other = fields.get("other-throw");
      take(other, other.word(), LABEL, "a throw");
      return Optional.of(new ChangeOver.OtherThrow(other.word()));
    }
    if (fields.containsKey("other-rail")) {
      RailSegment other = railAt(fields.get("other-rail"));
      if (other.supply() == closesTo.supply()) {
        throw fields
            .get("other-rail")
            .wrong(
                "both throws would be at "
                    + level(closesTo)
                    + "; other-rail names a rail of the other level");
      }
      return Optional.of(new ChangeOver.OtherRail(other.label()));
    }
    return Optional.empty();
  }

  private void lamp(String label, YamlValue value) {
    take(value, label, LABEL, "a lamp");
    Map<String, YamlValue> fields = value.fields(List.of("to", "ohms"), List.of("title"));
    String title = fields.containsKey("title") ? fields.get("title").text() : "";
    RailSegment to = railAt(fields.get("to"));
    int ohms = Quantity.ohms(fields.get("ohms"), 0);
    lamps.put(label, new Lamp(label, title, to.label(), ohms, !to.supply()));
  }

  /** Seven lamps and a word of them. */
  private void digit(String label, YamlValue value) {
    take(value, label, LABEL, "a word");
    Map<String, YamlValue> fields = value.fields(List.of("to", "ohms"), List.of("title"));
    String title = fields.containsKey("title") ? fields.get("title").text() + ", " : "";
    RailSegment to = railAt(fields.get("to"));
    int ohms = Quantity.ohms(fields.get("ohms"), 0);
    List<String> members = new ArrayList<>();
    for (char segment = 'a'; segment <= 'g'; segment++) {
      String member = label + segment;
      take(value, member, LABEL, "a segment");
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
        fields.containsKey("count") ? row(label, fields.get("count")) : List.of(label);
    for (String member : members) {
      take(value, member, LABEL, "a resistor");
      if (fields.containsKey("to")) {
        String to = railAt(fields.get("to")).label();
        resistors.put(member, new Resistor(member, to, ohms));
      } else {
        SeriesResistor between = new SeriesResistor(member, ohms);
        between.ends().forEach(end -> take(value, end.toString(), RAIL_LABEL, "a resistor"));
        series.put(member, between);
      }
    }
  }

  private void port(String label, YamlValue value) {
    take(value, label, LABEL, "a port");
    List<String> lines = new ArrayList<>();
    for (YamlValue item : value.items()) {
      take(item, item.word(), LABEL, "a port line");
      lines.add(item.word());
    }
    if (lines.isEmpty()) {
      throw value.wrong("a port has at least one line");
    }
    ports.put(label, List.copyOf(lines));
  }

  private void word(String label, YamlValue value) {
    take(value, label, LABEL, "a word");
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
