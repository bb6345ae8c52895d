package straywire.advice;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.lang.reflect.RecordComponent;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.stream.Stream;
import straywire.review.Finding;
import straywire.review.ReviewFact;

/**
 * The facts that fire a rule, what it then gives, and facts that nearly fire it. A fact is written
 * as its name with the fields that matter; what is left out is empty, 0, false or the first value.
 *
 * @param gives texts that must be part of what the rule concludes
 * @param lacks why {@code nearly} does not fire the rule
 */
record RuleExample(
    String rule, List<Object> fires, List<String> gives, List<Object> nearly, String lacks) {
  static final Path FOLDER = Path.of("src/test/resources/rules");

  private static final Map<String, Class<?>> KINDS = kinds();

  static Map<String, RuleExample> all() {
    Map<String, RuleExample> all = new TreeMap<>();
    try (Stream<Path> files = Files.list(FOLDER)) {
      for (Path file : files.sorted().toList()) {
        RuleExample example = of(new ObjectMapper().readTree(file.toFile()));
        if (!file.getFileName().toString().equals(example.rule() + ".json")) {
          throw new IllegalArgumentException(file + " is about " + example.rule());
        }
        all.put(example.rule(), example);
      }
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
    return all;
  }

  static RuleExample of(JsonNode file) {
    List<String> gives = new ArrayList<>();
    file.at("/fires/gives").forEach(text -> gives.add(text.asText()));
    return new RuleExample(
        file.get("rule").asText(),
        facts(file.at("/fires/facts")),
        gives,
        facts(file.at("/nearly/facts")),
        file.at("/nearly/lacks").asText());
  }

  private static List<Object> facts(JsonNode list) {
    List<Object> facts = new ArrayList<>();
    list.forEach(one -> one.properties().forEach(e -> facts.add(fact(e.getKey(), e.getValue()))));
    return facts;
  }

  private static Object fact(String name, JsonNode fields) {
    Class<?> kind = KINDS.get(name);
    if (kind == null) {
      throw new IllegalArgumentException("No fact is named " + name);
    }
    RecordComponent[] components = kind.getRecordComponents();
    List<String> known = Arrays.stream(components).map(RecordComponent::getName).toList();
    fields
        .fieldNames()
        .forEachRemaining(
            field -> {
              if (!known.contains(field)) {
                throw new IllegalArgumentException(name + " has no field " + field);
              }
            });
    try {
      return kind.getDeclaredConstructor(
              Arrays.stream(components).map(RecordComponent::getType).toArray(Class<?>[]::new))
          .newInstance(
              Arrays.stream(components)
                  .map(c -> value(c.getType(), fields.path(c.getName())))
                  .toArray());
    } catch (ReflectiveOperationException e) {
      throw new IllegalArgumentException("Fact " + name + " " + fields, e);
    }
  }

  private static Object value(Class<?> type, JsonNode json) {
    if (type == String.class) {
      return json.asText();
    }
    if (type == int.class) {
      return json.asInt();
    }
    if (type == double.class) {
      return json.asDouble();
    }
    if (type == boolean.class) {
      return json.asBoolean();
    }
    if (type == List.class) {
      List<String> texts = new ArrayList<>();
      json.forEach(t -> texts.add(t.asText()));
      return List.copyOf(texts);
    }
    return Arrays.stream(type.getEnumConstants())
        .filter(v -> json.isMissingNode() || v.toString().equals(json.asText()))
        .findFirst()
        .orElseThrow(() -> new IllegalArgumentException(type + " has no value " + json));
  }

  private static Map<String, Class<?>> kinds() {
    Map<String, Class<?>> kinds = new TreeMap<>();
    Stream.of(WiringFact.class, LogFact.class, ReviewFact.class)
        .flatMap(c -> Arrays.stream(c.getDeclaredClasses()))
        .filter(Class::isRecord)
        .forEach(c -> kinds.put(c.getSimpleName(), c));
    kinds.put(Finding.class.getSimpleName(), Finding.class);
    return kinds;
  }
}
