package straywire.web;

import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.util.List;
import straywire.logic.PinSpec;
import straywire.module.End;
import straywire.module.Fitted;
import straywire.module.Module;
import straywire.module.Net;
import straywire.module.Word;

/** What a page needs to draw a module as meant; it never changes during a sitting. */
final class ModuleDrawing {
  private final Module module;

  ModuleDrawing(Module module) {
    this.module = module;
  }

  ObjectNode json() {
    ObjectNode drawing = JsonNodeFactory.instance.objectNode();
    drawing.put("name", module.name()).put("title", module.title()).put("about", module.about());
    parts(drawing.putArray("parts"));
    ArrayNode controls = drawing.putArray("controls");
    module
        .controls()
        .values()
        .forEach(
            c ->
                controls
                    .addObject()
                    .put("label", c.label())
                    .put("title", c.title())
                    .put("button", c.kind() == straywire.module.Control.Kind.BUTTON));
    ArrayNode lamps = drawing.putArray("lamps");
    module
        .lamps()
        .values()
        .forEach(l -> lamps.addObject().put("label", l.label()).put("title", l.title()));
    words(drawing.putArray("control-words"), module.controlWords());
    words(drawing.putArray("lamp-words"), module.lampWords());
    ArrayNode rails = drawing.putArray("rails");
    module.rails().forEach(rail -> rails.add(rail.label()));
    ArrayNode nets = drawing.putArray("nets");
    for (Net net : module.nets()) {
      ObjectNode node = nets.addObject().put("label", net.name());
      ArrayNode ends = node.putArray("ends");
      net.ends().forEach(end -> ends.add(end.toString()));
    }
    return drawing;
  }

  private void parts(ArrayNode parts) {
    for (Fitted part : module.parts().values()) {
      ObjectNode node =
          parts
              .addObject()
              .put("label", part.label())
              .put("type", part.part().type())
              .put("family", part.family().name())
              .put("title", part.part().title())
              .put("note", part.note())
              .put("fitted", part.fitted());
      ArrayNode pins = node.putArray("pins");
      for (PinSpec pin : part.part().pins()) {
        pins.addObject()
            .put("number", pin.number())
            .put("name", pin.name())
            .put("net", net(End.pin(part.label(), pin.number())));
      }
    }
  }

  private String net(End end) {
    return module.netOf(end).map(Net::name).orElse("");
  }

  private static void words(ArrayNode into, List<Word> words) {
    for (Word word : words) {
      ArrayNode members = into.addObject().put("label", word.label()).putArray("members");
      word.members().forEach(members::add);
    }
  }
}
