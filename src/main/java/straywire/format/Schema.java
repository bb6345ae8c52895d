package straywire.format;

import com.fasterxml.jackson.databind.JsonNode;
import com.networknt.schema.JsonSchema;
import com.networknt.schema.JsonSchemaFactory;
import com.networknt.schema.SchemaLocation;
import com.networknt.schema.SpecVersion;
import com.networknt.schema.ValidationMessage;
import java.util.Comparator;
import java.util.Optional;
import java.util.Set;

/** The JSON Schemas of {@code docs/schema}, loaded when first asked. */
public enum Schema {
  MODULE("module"),
  /** Of one line of a bench log. */
  BENCH_LOG("bench-log"),
  /** Of all lines of a case, as a list. */
  CASE("case");

  private final String title;

  Schema(String title) {
    this.title = title;
  }

  /** One line on the first place, in path order, where the schema does not fit. */
  public Optional<String> firstProblem(JsonNode json) {
    Set<ValidationMessage> messages = Loaded.schema(this).validate(json);
    return messages.stream()
        .min(
            Comparator.comparing((ValidationMessage m) -> m.getInstanceLocation().toString())
                .thenComparing(ValidationMessage::getMessage))
        .map(m -> "does not fit docs/schema/" + title + ".schema.json: " + m.getMessage());
  }

  /** Costs the loading of the validator; so it stands apart. */
  private static final class Loaded {
    private static final String AT = "https://straywire.invalid/schema/";
    private static final JsonSchemaFactory FACTORY =
        JsonSchemaFactory.getInstance(
            SpecVersion.VersionFlag.V202012,
            builder -> builder.schemaMappers(m -> m.mapPrefix(AT, "classpath:schema/")));

    static JsonSchema schema(Schema which) {
      return FACTORY.getSchema(SchemaLocation.of(AT + which.title + ".schema.json"));
    }
  }
}
