package straywire.pages;

import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.util.List;
import java.util.Locale;
import straywire.logic.PinSpec;
import straywire.parts.Family;
import straywire.parts.Part;
import straywire.parts.PartLibrary;
import straywire.parts.PartNotes;

/** Parts and families as JSON, fields in a fixed order; docs/formats/part.md names them. */
public final class PartJson {
  private static final JsonNodeFactory JSON = JsonNodeFactory.instance;

  private final PartLibrary library;

  public PartJson(PartLibrary library) {
    this.library = library;
  }

  /** Type, title, group and number of pins of each. */
  public ObjectNode listed(List<Part> parts) {
    ObjectNode list = JSON.objectNode();
    ArrayNode items = list.putArray("parts");
    parts.forEach(part -> items.add(head(part)));
    return list;
  }

  private ObjectNode head(Part part) {
    return JSON.objectNode()
        .put("type", part.type())
        .put("title", part.title())
        .put("group", library.notes(part.type()).orElseThrow().group().word())
        .put("pin-count", part.pinCount());
  }

  /** All that is known of a part. */
  public ObjectNode shown(Part part) {
    PartNotes notes = library.notes(part.type()).orElseThrow();
    ObjectNode json = head(part).put("function", part.function());
    ArrayNode pins = json.putArray("pins");
    for (PinSpec pin : part.pins()) {
      pins.addObject()
          .put("number", pin.number())
          .put("name", pin.name())
          .put("kind", pin.kind().name().toLowerCase(Locale.ROOT).replace('_', '-'));
    }
    json.put("table", notes.table());
    json.put("open-input", notes.openInput());
    texts(json, "mistakes", notes.mistakes());
    texts(json, "disagreements", notes.disagreements());
    texts(json, "sources", notes.sources());
    return json;
  }

  /** A family's profile; volts at a supply of 5 V. */
  public ObjectNode shown(Family family) {
    ObjectNode json = JSON.objectNode().put("family", family.name());
    json.put("input-low-max", family.inputLowMax());
    json.put("input-high-min", family.inputHighMin());
    json.put("open-reads-high", family.openReadsHigh());
    json.put("feeds-through-inputs", family.feedsThroughInputs());
    band(json, "meter-low", family.low());
    band(json, "meter-high", family.high());
    band(json, "meter-open", family.open());
    texts(json, "sources", library.familySources(family.name()));
    return json;
  }

  private static void band(ObjectNode json, String name, Family.Band band) {
    json.putObject(name)
        .put("least", band.least())
        .put("usual", band.usual())
        .put("most", band.most());
  }

  private static void texts(ObjectNode json, String name, List<String> texts) {
    ArrayNode array = json.putArray(name);
    texts.forEach(array::add);
  }
}
