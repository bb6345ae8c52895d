package straywire.parts;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import java.util.regex.Pattern;
import straywire.format.Fields;
import straywire.format.InputError;
import straywire.logic.LogicCompiler;
import straywire.logic.LogicParser;
import straywire.logic.PinKind;
import straywire.logic.PinSpec;
import straywire.logic.Statement;

/**
 * A part as its file describes it (docs/formats/part.md).
 *
 * @param table the function table, ready to be worked through
 */
record PartFile(Part part, PartNotes notes, FunctionTable table, List<Statement> logic) {
  static final String FORMAT = "straywire-part/1";

  private static final Set<String> FIELDS =
      Set.of(
          "format",
          "type",
          "title",
          "function",
          "group",
          "bus",
          "pins",
          "logic",
          "table",
          "open-input",
          "mistakes",
          "disagreements",
          "sources");

  private static final Map<String, PinKind> KINDS = new LinkedHashMap<>();

  static {
    KINDS.put("input", PinKind.INPUT);
    KINDS.put("output", PinKind.OUTPUT);
    KINDS.put("three-state", PinKind.TRISTATE);
    KINDS.put("open-collector", PinKind.OPEN_COLLECTOR);
    KINDS.put("bidirectional", PinKind.BIDIRECTIONAL);
    KINDS.put("supply", PinKind.SUPPLY);
    KINDS.put("ground", PinKind.GROUND);
    KINDS.put("unconnected", PinKind.NOT_CONNECTED);
  }

  private static final Pattern TYPE = Pattern.compile("[0-9A-Za-z][0-9A-Za-z-]*");

  /**
   * @param file name used in messages
   * @throws InputError naming file, line and what would be right
   */
  static PartFile read(String file, String text) {
    Fields fields = Fields.read(file, text);
    fields.refuseOthers(FIELDS);
    if (!fields.text("format").equals(FORMAT)) {
      throw new InputError(file, fields.line("format"), "format: expected " + FORMAT);
    }
    String type = fields.text("type");
    if (!TYPE.matcher(type).matches()) {
      throw new InputError(
          file, fields.line("type"), "type: expected letters and digits as in 74x00, not " + type);
    }
    List<PinSpec> pins = pins(file, fields.fields("pins"));
    List<Statement> logic =
        LogicParser.parse(file, fields.blockLine("logic"), fields.block("logic"));
    Part part =
        new Part(
            type,
            fields.text("title"),
            fields.text("function"),
            pins,
            fields.flag("bus"),
            LogicCompiler.compile(file, pins, logic));
    FunctionTable table =
        FunctionTable.read(file, fields.blockLine("table"), fields.block("table"), part);
    PartNotes notes =
        new PartNotes(
            group(file, fields),
            fields.text("open-input"),
            fields.texts("mistakes"),
            fields.texts("sources"),
            fields.texts("disagreements"),
            fields.block("logic"),
            fields.block("table"));
    return new PartFile(part, notes, table, logic);
  }

  private static PartGroup group(String file, Fields fields) {
    String word = fields.textOr("group", PartGroup.OTHER.word());
    return PartGroup.of(word)
        .orElseThrow(
            () ->
                new InputError(
                    file,
                    fields.line("group"),
                    "group: expected one of "
                        + String.join(", ", PartGroup.words())
                        + ", not "
                        + word));
  }

  private static List<PinSpec> pins(String file, Fields groups) {
    groups.refuseOthers(KINDS.keySet());
    Map<Integer, PinSpec> pins = new TreeMap<>();
    Map<String, Integer> names = new TreeMap<>();
    for (String kind : groups.names()) {
      Fields group = groups.fields(kind);
      for (String number : group.names()) {
        PinSpec pin =
            new PinSpec(pinNumber(file, group, number), group.text(number), KINDS.get(kind));
        if (pins.put(pin.number(), pin) != null) {
          throw new InputError(file, group.line(number), "pin " + number + " is given twice");
        }
        Integer other = names.put(pin.name(), pin.number());
        if (other != null && pin.kind() != PinKind.NOT_CONNECTED) {
          throw new InputError(
              file,
              group.line(number),
              "pins " + other + " and " + number + " are both named " + pin.name());
        }
      }
    }
    checkComplete(file, groups, pins);
    return List.copyOf(pins.values());
  }

  private static int pinNumber(String file, Fields group, String number) {
    if (!number.matches("[1-9][0-9]?")) {
      throw new InputError(
          file, group.line(number), "expected a pin number from 1 to 99, not " + number);
    }
    return Integer.parseInt(number);
  }

  private static void checkComplete(String file, Fields groups, Map<Integer, PinSpec> pins) {
    int expected = 1;
    for (int number : pins.keySet()) {
      if (number != expected) {
        throw new InputError(file, groups.line(""), "pins: pin " + expected + " is missing");
      }
      expected++;
    }
    if (pins.size() % 2 == 1) {
      throw new InputError(
          file,
          groups.line(""),
          "pins: an odd number of pins, " + pins.size() + "; one is missing");
    }
    for (PinKind kind : List.of(PinKind.SUPPLY, PinKind.GROUND)) {
      if (pins.values().stream().noneMatch(p -> p.kind() == kind)) {
        String name = kind == PinKind.SUPPLY ? "supply" : "ground";
        throw new InputError(file, groups.line(""), "pins: no " + name + " pin");
      }
    }
  }
}
