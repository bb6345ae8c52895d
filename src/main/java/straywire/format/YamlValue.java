package straywire.format;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.math.BigDecimal;
import java.math.BigInteger;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.snakeyaml.engine.v2.api.LoadSettings;
import org.snakeyaml.engine.v2.api.lowlevel.Compose;
import org.snakeyaml.engine.v2.api.lowlevel.Parse;
import org.snakeyaml.engine.v2.events.AliasEvent;
import org.snakeyaml.engine.v2.events.Event;
import org.snakeyaml.engine.v2.exceptions.Mark;
import org.snakeyaml.engine.v2.exceptions.MarkedYamlEngineException;
import org.snakeyaml.engine.v2.exceptions.YamlEngineException;
import org.snakeyaml.engine.v2.nodes.MappingNode;
import org.snakeyaml.engine.v2.nodes.Node;
import org.snakeyaml.engine.v2.nodes.NodeTuple;
import org.snakeyaml.engine.v2.nodes.ScalarNode;
import org.snakeyaml.engine.v2.nodes.SequenceNode;
import org.snakeyaml.engine.v2.nodes.Tag;

/**
 * A value in a YAML file together with the line it stands on and its path from the top, so that
 * every complaint can name both.
 */
public final class YamlValue {
  private final String file;
  private final String path;
  private final int line;
  private final Node node;

  private YamlValue(String file, String path, int line, Node node) {
    this.file = file;
    this.path = path;
    this.line = line;
    this.node = node;
  }

  /**
   * The top of a document.
   *
   * @param file for complaints
   * @throws InputError when the text is not one YAML document
   */
  public static YamlValue parse(String file, String text) {
    // References to whole lists or maps would make one line stand for several places.
    LoadSettings settings =
        LoadSettings.builder().setLabel(file).setMaxAliasesForCollections(0).build();
    try {
      Optional<Node> top = new Compose(settings).composeString(text);
      if (top.isEmpty()) {
        throw new InputError(file, 0, "the file is empty");
      }
      return new YamlValue(file, "", lineOf(top.get()), top.get());
    } catch (MarkedYamlEngineException e) {
      throw new InputError(file, troubleLine(e), "not YAML: " + oneLine(e.getProblem()));
    } catch (YamlEngineException e) {
      // The only unmarked trouble left: the limit set above.
      throw new InputError(
          file,
          firstAlias(settings, text),
          "a list or mapping is used twice by *name; write it out");
    }
  }

  private static int firstAlias(LoadSettings settings, String text) {
    for (Event event : new Parse(settings).parseString(text)) {
      if (event instanceof AliasEvent) {
        return event.getStartMark().map(Mark::getLine).orElse(-1) + 1;
      }
    }
    return 0;
  }

  /** What never ends is complained of where it begins. */
  private static int troubleLine(MarkedYamlEngineException e) {
    boolean atEnd = e.getProblem().contains("end of stream");
    Optional<Mark> mark =
        atEnd && e.getContextMark().isPresent() ? e.getContextMark() : e.getProblemMark();
    return mark.map(m -> m.getLine() + 1).orElse(0);
  }

  private static String oneLine(String text) {
    return text.replaceAll("\\s+", " ");
  }

  private static int lineOf(Node node) {
    return node.getStartMark().map(Mark::getLine).orElse(-1) + 1;
  }

  public int line() {
    return line;
  }

  /** Says what is wrong here, with file, line and path in front. */
  public InputError wrong(String message) {
    return new InputError(file, line, path.isEmpty() ? message : path + ": " + message);
  }

  /** The fields of a mapping, in the order of the file. */
  public Map<String, YamlValue> fields() {
    if (!(node instanceof MappingNode mapping)) {
      throw wrong(
          "expected fields, each with a colon and a space, such as \"name: value\", got "
              + described());
    }
    Map<String, YamlValue> fields = new LinkedHashMap<>();
    for (NodeTuple tuple : mapping.getValue()) {
      int keyLine = lineOf(tuple.getKeyNode());
      if (!(tuple.getKeyNode() instanceof ScalarNode key)) {
        throw new InputError(file, keyLine, "a field's name is one word");
      }
      String name = key.getValue();
      String childPath = path.isEmpty() ? name : path + "." + name;
      YamlValue child = new YamlValue(file, childPath, keyLine, tuple.getValueNode());
      YamlValue before = fields.putIfAbsent(name, child);
      if (before != null) {
        throw child.wrong("stands twice, first on line " + before.line);
      }
    }
    return fields;
  }

  /**
   * The fields of a mapping that knows only some names.
   *
   * @throws InputError when one is missing, unknown, or stands twice
   */
  public Map<String, YamlValue> fields(List<String> required, List<String> optional) {
    Map<String, YamlValue> fields = fields();
    List<String> known = new ArrayList<>(required);
    known.addAll(optional);
    fields.forEach(
        (name, value) -> {
          if (!known.contains(name)) {
            String place = path.isEmpty() ? "" : path + ": ";
            throw new InputError(
                file, value.line, place + "unknown field " + name + Nearest.hint(name, known));
          }
        });
    for (String name : required) {
      if (!fields.containsKey(name)) {
        throw wrong("the field " + name + " is missing");
      }
    }
    return fields;
  }

  public List<YamlValue> items() {
    if (!(node instanceof SequenceNode sequence)) {
      throw wrong("expected a list, got " + described());
    }
    List<YamlValue> items = new ArrayList<>();
    for (Node item : sequence.getValue()) {
      items.add(new YamlValue(file, path, lineOf(item), item));
    }
    return items;
  }

  public boolean isList() {
    return node instanceof SequenceNode;
  }

  /** A scalar exactly as written, so that {@code 0001} stays {@code 0001}. */
  public String word() {
    if (!(node instanceof ScalarNode scalar) || scalar.getTag().equals(Tag.NULL)) {
      throw wrong("expected a word, got " + described());
    }
    return scalar.getValue();
  }

  /** Words for a person. */
  public String text() {
    if (!(node instanceof ScalarNode scalar) || !scalar.getTag().equals(Tag.STR)) {
      throw wrong("expected words, got " + described() + "; put words in quotes");
    }
    return scalar.getValue();
  }

  public String oneOf(List<String> choices) {
    String word = word();
    if (!choices.contains(word)) {
      throw wrong(word + " is not one of " + String.join(", ", choices));
    }
    return word;
  }

  public int integer(int least, int most) {
    if (node instanceof ScalarNode scalar && scalar.getTag().equals(Tag.INT)) {
      BigInteger value = new BigInteger(scalar.getValue());
      if (value.compareTo(BigInteger.valueOf(least)) >= 0
          && value.compareTo(BigInteger.valueOf(most)) <= 0) {
        return value.intValueExact();
      }
    }
    throw wrong("expected a whole number from " + least + " to " + most + ", got " + described());
  }

  /** A number above 0, not infinite. */
  public double positive() {
    String word = word();
    double value;
    try {
      value = Double.parseDouble(word);
    } catch (NumberFormatException e) {
      value = Double.NaN;
    }
    if (!(value > 0) || Double.isInfinite(value)) {
      throw wrong("expected a number above 0, got " + word);
    }
    return value;
  }

  public boolean yesNo() {
    if (node instanceof ScalarNode scalar && scalar.getTag().equals(Tag.BOOL)) {
      return scalar.getValue().equals("true");
    }
    throw wrong("expected true or false, got " + described());
  }

  private String described() {
    if (node instanceof MappingNode) {
      return "fields";
    }
    if (node instanceof SequenceNode) {
      return "a list";
    }
    String value = ((ScalarNode) node).getValue();
    return value.isEmpty() ? "nothing" : oneLine(value);
  }

  /** As JSON, with numbers and truth values as YAML 1.2 takes them. */
  public JsonNode toJson() {
    return toJson(node, false);
  }

  /** As JSON with every scalar a string exactly as written. */
  public JsonNode toJsonOfWords() {
    return toJson(node, true);
  }

  private static JsonNode toJson(Node node, boolean words) {
    JsonNodeFactory json = JsonNodeFactory.instance;
    if (node instanceof MappingNode mapping) {
      ObjectNode object = json.objectNode();
      for (NodeTuple tuple : mapping.getValue()) {
        String key = tuple.getKeyNode() instanceof ScalarNode scalar ? scalar.getValue() : "?";
        object.set(key, toJson(tuple.getValueNode(), words));
      }
      return object;
    }
    if (node instanceof SequenceNode sequence) {
      ArrayNode array = json.arrayNode();
      sequence.getValue().forEach(item -> array.add(toJson(item, words)));
      return array;
    }
    ScalarNode scalar = (ScalarNode) node;
    String value = scalar.getValue();
    if (!words && scalar.getTag().equals(Tag.BOOL)) {
      return json.booleanNode(value.equals("true"));
    }
    if (!words && scalar.getTag().equals(Tag.NULL)) {
      return json.nullNode();
    }
    boolean number = scalar.getTag().equals(Tag.INT) || scalar.getTag().equals(Tag.FLOAT);
    if (!words && number && value.matches("-?[0-9.]+([eE][-+]?[0-9]+)?")) {
      return scalar.getTag().equals(Tag.INT)
          ? json.numberNode(new BigInteger(value))
          : json.numberNode(new BigDecimal(value));
    }
    return json.textNode(value);
  }
}
