package straywire.format;

import com.fasterxml.jackson.databind.JsonNode;
import com.networknt.schema.SchemaLocation;
import com.networknt.schema.SchemaRegistry;
import com.networknt.schema.SpecificationVersion;
import java.util.Comparator;
import java.util.Optional;

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
    return Loaded.schema(this).validate(json).stream()
        .min(
            Comparator.comparing(
                    (com.networknt.schema.Error e) -> e.getInstanceLocation().toString())
                .thenComparing(com.networknt.schema.Error::getMessage))
        .map(m -> "does not fit docs/schema/" + title + ".schema.json: " + m.getMessage());
  }

  /** Costs the loading of the validator; so it stands apart. */
  private static final class Loaded {
    private static final String AT = "https://straywire.invalid/schema/";
    private static final SchemaRegistry REGISTRY =
        SchemaRegistry.withDefaultDialect(
            SpecificationVersion.DRAFT_2020_12,
            builder -> builder.schemaIdResolvers(r -> r.mapPrefix(AT, "classpath:schema/")));

    static com.networknt.schema.Schema schema(Schema which) {
      return REGISTRY.getSchema(SchemaLocation.of(AT + which.title + ".schema.json"));
    }
  }
}
