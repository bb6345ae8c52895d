package straywire.module;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import straywire.format.BadEntry;
import straywire.format.Nearest;

/** Typed reading of the fields of one entry; every complaint names the field. */
final class JsonFields {
  private final ObjectNode object;

  JsonFields(ObjectNode object) {
    this.object = object;
  }

  void allowOnly(List<String> known) {
    object
        .fieldNames()
        .forEachRemaining(
            name -> {
              if (!known.contains(name)) {
                throw new BadEntry("unknown field " + name + Nearest.hint(name, known));
              }
            });
  }

  boolean has(String name) {
    return object.has(name);
  }

  private JsonNode need(String name) {
    JsonNode value = object.get(name);
    if (value == null) {
      throw new BadEntry("the field " + name + " is missing");
    }
    return value;
  }

  private static BadEntry wrong(String name, String expected, JsonNode got) {
    return new BadEntry(name + ": expected " + expected + ", got " + got);
  }

  private static String textOf(String name, JsonNode value) {
    if (!value.isTextual()) {
      throw wrong(name, "a text", value);
    }
    return value.textValue();
  }

  String text(String name) {
    return textOf(name, need(name));
  }

  /** Words for a person: not blank, on one line, without blanks around. */
  String line(String name) {
    return Wording.line(name, text(name));
  }

  String oneOf(String name, List<String> choices) {
    String text = text(name);
    if (!choices.contains(text)) {
      throw new BadEntry(name + ": " + text + " is not one of " + String.join(", ", choices));
    }
    return text;
  }

  boolean yesNo(String name) {
    JsonNode value = need(name);
    if (!value.isBoolean()) {
      throw wrong(name, "true or false", value);
    }
    return value.booleanValue();
  }

  double number(String name) {
    JsonNode value = need(name);
    if (!value.isNumber()) {
      throw wrong(name, "a number", value);
    }
    return value.doubleValue();
  }

  private static int integerOf(String name, JsonNode value, int least) {
    if (!value.isIntegralNumber() || !value.canConvertToInt() || value.intValue() < least) {
      throw wrong(name, "a whole number from " + least, value);
    }
    return value.intValue();
  }

  int integer(String name, int least) {
    return integerOf(name, need(name), least);
  }

  private Iterable<JsonNode> items(String name) {
    JsonNode value = need(name);
    if (!value.isArray()) {
      throw wrong(name, "a list", value);
    }
    return value;
  }

  List<String> texts(String name) {
    List<String> texts = new ArrayList<>();
    items(name).forEach(item -> texts.add(textOf(name, item)));
    return texts;
  }

  List<Integer> integers(String name, int least) {
    List<Integer> integers = new ArrayList<>();
    items(name).forEach(item -> integers.add(integerOf(name, item, least)));
    return integers;
  }

  Map<String, String> texts(String name, String expected) {
    JsonNode value = need(name);
    if (!value.isObject()) {
      throw wrong(name, expected, value);
    }
    Map<String, String> texts = new LinkedHashMap<>();
    value
        .properties()
        .forEach(
            field ->
                texts.put(field.getKey(), textOf(name + "." + field.getKey(), field.getValue())));
    return texts;
  }
}
