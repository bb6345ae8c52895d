package straywire.format;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.databind.node.ObjectNode;
import com.networknt.schema.Error;
import com.networknt.schema.Schema;
import com.networknt.schema.SchemaLocation;
import com.networknt.schema.SchemaRegistry;
import com.networknt.schema.SpecificationVersion;
import java.util.Comparator;
import java.util.Optional;
import org.snakeyaml.engine.v2.nodes.MappingNode;
import org.snakeyaml.engine.v2.nodes.Node;
import org.snakeyaml.engine.v2.nodes.NodeTuple;
import org.snakeyaml.engine.v2.nodes.ScalarNode;
import org.snakeyaml.engine.v2.nodes.SequenceNode;

/**
 * Holds a part file against docs/schema/part.schema.json. The validator costs start-up time, so
 * shipped files meet it in the tests only.
 */
public final class PartSchema {
  private static final String AT = "https://straywire.invalid/schema/";
  private static final Schema SCHEMA =
      SchemaRegistry.withDefaultDialect(
              SpecificationVersion.DRAFT_2020_12,
              builder -> builder.schemaIdResolvers(r -> r.mapPrefix(AT, "classpath:schema/")))
          .getSchema(SchemaLocation.of(AT + "part.schema.json"));

  private PartSchema() {}

  /**
   * Refuses a file that does not fit.
   *
   * @throws InputError naming the first misfit in the order of the file's fields
   */
  public static void check(String file, String text) {
    Node root = Fields.root(file, text);
    Optional<Error> first =
        SCHEMA.validate(json(root)).stream()
            .min(
                Comparator.comparing((Error e) -> e.getInstanceLocation().toString())
                    .thenComparing(Error::getMessage));
    if (first.isPresent()) {
      Error misfit = first.get();
      Node place = root;
      for (int i = 0; i < misfit.getInstanceLocation().getNameCount(); i++) {
        place = inside(place, misfit.getInstanceLocation().getName(i));
      }
      throw new InputError(
          file,
          Fields.lineOf(place),
          "does not fit docs/schema/part.schema.json: " + misfit.getMessage());
    }
  }

  /** Plain text stays text, even where it looks like a number; only true and false are flags. */
  private static JsonNode json(Node node) {
    JsonNodeFactory make = JsonNodeFactory.instance;
    if (node instanceof MappingNode mapping) {
      ObjectNode object = make.objectNode();
      for (NodeTuple entry : mapping.getValue()) {
        object.set(key(entry), json(entry.getValueNode()));
      }
      return object;
    }
    if (node instanceof SequenceNode sequence) {
      return make.arrayNode().addAll(sequence.getValue().stream().map(PartSchema::json).toList());
    }
    String value = ((ScalarNode) node).getValue();
    boolean flag = value.equals("true") || value.equals("false");
    return flag ? make.booleanNode(value.equals("true")) : make.textNode(value);
  }

  private static String key(NodeTuple entry) {
    return entry.getKeyNode() instanceof ScalarNode scalar ? scalar.getValue() : "";
  }

  private static Node inside(Node node, String name) {
    if (node instanceof MappingNode mapping) {
      return mapping.getValue().stream()
          .filter(e -> key(e).equals(name))
          .map(NodeTuple::getValueNode)
          .findFirst()
          .orElse(node);
    }
    if (node instanceof SequenceNode sequence && name.matches("[0-9]+")) {
      return sequence.getValue().get(Integer.parseInt(name));
    }
    return node;
  }
}
