package straywire.module;

import com.fasterxml.jackson.core.JsonGenerator;
import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.core.StreamReadFeature;
import com.fasterxml.jackson.databind.DeserializationFeature;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.json.JsonMapper;
import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.nio.charset.StandardCharsets;
import java.time.DateTimeException;
import java.time.Instant;
import java.time.format.DateTimeFormatter;
import java.util.Locale;
import java.util.Optional;
import java.util.zip.CRC32;
import straywire.format.BadEntry;
import straywire.format.NotJson;

/**
 * One line of a bench log: format version, number, perhaps the time, the entry's own fields,
 * perhaps a checksum.
 *
 * @param number from 0, which is the header
 * @param fields without version, number, time and checksum
 */
record LogLine(int number, ObjectNode fields) {
  static final int VERSION = 1;

  private static final ObjectMapper JSON =
      JsonMapper.builder()
          .enable(StreamReadFeature.STRICT_DUPLICATE_DETECTION)
          .enable(DeserializationFeature.FAIL_ON_TRAILING_TOKENS)
          .enable(JsonGenerator.Feature.WRITE_BIGDECIMAL_AS_PLAIN)
          .build();

  /** The line's JSON as it stands; empty when it is not one whole JSON object. */
  static Optional<ObjectNode> json(String text) {
    try {
      JsonNode node = JSON.readTree(text);
      return node instanceof ObjectNode object ? Optional.of(object) : Optional.empty();
    } catch (JsonProcessingException e) {
      return Optional.empty();
    }
  }

  /**
   * @throws BadEntry when the line is not of this format, or its checksum does not fit
   */
  static LogLine parse(String text) {
    ObjectNode object = json(text).orElseThrow(() -> new BadEntry(whyNotJson(text)));
    JsonFields fields = new JsonFields(object);
    int version = fields.integer("v", 1);
    if (version != VERSION) {
      throw new BadEntry(
          "format version " + version + " is unknown; this program reads version " + VERSION);
    }
    int number = fields.integer("n", 0);
    if (fields.has("t")) {
      checkTime(fields.text("t"));
    }
    if (fields.has("sum")) {
      checkSum(text.strip(), fields.text("sum"));
    }
    object.remove("v");
    object.remove("n");
    object.remove("t");
    object.remove("sum");
    return new LogLine(number, object);
  }

  /** The line without its line end. */
  String text(Optional<Instant> time, boolean checksum) {
    ObjectNode object = JsonNodeFactory.instance.objectNode().put("v", VERSION).put("n", number);
    time.ifPresent(t -> object.put("t", t.toString()));
    object.setAll(fields);
    try {
      String text = JSON.writeValueAsString(object);
      if (!checksum) {
        return text;
      }
      String summed = text.substring(0, text.length() - 1);
      return summed + ",\"sum\":\"" + sum(summed) + "\"}";
    } catch (JsonProcessingException e) {
      throw new IllegalStateException("A tree of fields can always be written", e);
    }
  }

  private static String whyNotJson(String text) {
    if (text.isBlank()) {
      return "the line is empty; each line holds one entry";
    }
    try {
      JsonNode node = JSON.readTree(text);
      return "expected an object in braces, got "
          + node.getNodeType().name().toLowerCase(Locale.ROOT);
    } catch (JsonProcessingException e) {
      return NotJson.why(e);
    }
  }

  private static void checkTime(String time) {
    try {
      DateTimeFormatter.ISO_OFFSET_DATE_TIME.parse(time);
    } catch (DateTimeException e) {
      throw new BadEntry("t: expected a time such as 2026-01-31T17:05:00Z, got " + time);
    }
  }

  private static void checkSum(String line, String sum) {
    String tail = ",\"sum\":\"" + sum + "\"}";
    if (!line.endsWith(tail)) {
      throw new BadEntry("sum: comes last, written ,\"sum\":\"" + sum + "\"}");
    }
    String right = sum(line.substring(0, line.length() - tail.length()));
    if (!right.equals(sum)) {
      throw new BadEntry("sum: the line gives " + right + ", not " + sum + "; it was changed");
    }
  }

  /** CRC-32 of the UTF-8 bytes, 8 hexadecimal digits. */
  private static String sum(String text) {
    CRC32 crc = new CRC32();
    crc.update(text.getBytes(StandardCharsets.UTF_8));
    return String.format(Locale.ROOT, "%08x", crc.getValue());
  }
}
