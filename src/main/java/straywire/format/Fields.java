package straywire.format;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.snakeyaml.engine.v2.api.LoadSettings;
import org.snakeyaml.engine.v2.api.lowlevel.Compose;
import org.snakeyaml.engine.v2.exceptions.MarkedYamlEngineException;
import org.snakeyaml.engine.v2.exceptions.YamlEngineException;
import org.snakeyaml.engine.v2.nodes.MappingNode;
import org.snakeyaml.engine.v2.nodes.Node;
import org.snakeyaml.engine.v2.nodes.NodeTuple;
import org.snakeyaml.engine.v2.nodes.ScalarNode;
import org.snakeyaml.engine.v2.nodes.SequenceNode;

/** Named fields of a YAML file, each with the line it stands on. */
public final class Fields {
  private final String file;
  private final String place;
  private final int line;
  private final Map<String, Node> values = new LinkedHashMap<>();
  private final Map<String, Integer> lines = new LinkedHashMap<>();

  private Fields(String file, String place, Node node) {
    this.file = file;
    this.place = place;
    this.line = lineOf(node);
    if (!(node instanceof MappingNode mapping)) {
      throw new InputError(file, line, place + ": expected \"name: value\" lines");
    }
    for (NodeTuple entry : mapping.getValue()) {
      String name = scalar(entry.getKeyNode(), "a field name");
      if (values.put(name, entry.getValueNode()) != null) {
        throw new InputError(file, lineOf(entry.getKeyNode()), name + " is given twice");
      }
      lines.put(name, lineOf(entry.getKeyNode()));
    }
  }

  /** The whole document. */
  public static Fields read(String file, String text) {
    return new Fields(file, file, root(file, text));
  }

  static Node root(String file, String text) {
    try {
      LoadSettings settings = LoadSettings.builder().setLabel(file).build();
      Optional<Node> root = new Compose(settings).composeString(text);
      return root.orElseThrow(() -> new InputError(file, 0, "the file is empty"));
    } catch (MarkedYamlEngineException e) {
      int line = e.getProblemMark().map(m -> m.getLine() + 1).orElse(0);
      throw new InputError(file, line, "not readable as YAML: " + e.getProblem());
    } catch (YamlEngineException e) {
      throw new InputError(file, 0, "not readable as YAML: " + firstLine(e));
    }
  }

  private static String firstLine(YamlEngineException e) {
    return String.valueOf(e.getMessage()).lines().findFirst().orElse("unknown reason");
  }

  static int lineOf(Node node) {
    return node.getStartMark().map(m -> m.getLine() + 1).orElse(0);
  }

  public void refuseOthers(Set<String> allowed) {
    for (Map.Entry<String, Integer> field : lines.entrySet()) {
      if (!allowed.contains(field.getKey())) {
        String fields = String.join(", ", allowed.stream().sorted().toList());
        throw new InputError(
            file, field.getValue(), "unknown field " + field.getKey() + "; known are " + fields);
      }
    }
  }

  public Set<String> names() {
    return values.keySet();
  }

  boolean has(String name) {
    return values.containsKey(name);
  }

  /** Line of the field's name. */
  public int line(String name) {
    return lines.getOrDefault(name, line);
  }

  /** Line on which the first line of a {@code |} block stands. */
  public int blockLine(String name) {
    Node value = value(name);
    boolean block = value instanceof ScalarNode s && s.getScalarStyle().toString().matches("[|>]");
    return lineOf(value) + (block ? 1 : 0);
  }

  public String text(String name) {
    return scalar(value(name), name).strip();
  }

  /** As written, with its indentation. */
  public String block(String name) {
    return scalar(value(name), name);
  }

  public String textOr(String name, String otherwise) {
    return has(name) ? text(name) : otherwise;
  }

  public boolean flag(String name) {
    String text = textOr(name, "false");
    if (!text.equals("true") && !text.equals("false")) {
      throw new InputError(file, line(name), name + ": expected true or false, not " + text);
    }
    return text.equals("true");
  }

  public double number(String name) {
    try {
      return Double.parseDouble(text(name));
    } catch (NumberFormatException e) {
      throw new InputError(file, line(name), name + ": expected a number, not " + text(name));
    }
  }

  public List<String> texts(String name) {
    if (!has(name)) {
      return List.of();
    }
    if (!(value(name) instanceof SequenceNode sequence)) {
      throw new InputError(file, line(name), name + ": expected a list");
    }
    List<String> texts = new ArrayList<>();
    for (Node item : sequence.getValue()) {
      texts.add(scalar(item, "an item of " + name).strip());
    }
    return texts;
  }

  public Fields fields(String name) {
    return new Fields(file, name, value(name));
  }

  private Node value(String name) {
    Node value = values.get(name);
    if (value == null) {
      throw new InputError(file, line, place + ": the field " + name + " is missing");
    }
    return value;
  }

  private String scalar(Node node, String what) {
    if (node instanceof ScalarNode scalar) {
      return scalar.getValue();
    }
    throw new InputError(file, lineOf(node), what + ": expected plain text");
  }
}
