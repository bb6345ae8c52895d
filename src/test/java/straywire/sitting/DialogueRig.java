package straywire.sitting;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import straywire.casebook.SimulatedBench;
import straywire.casebook.Workbench;
import straywire.module.Entry;
import straywire.module.EntryFormat;
import straywire.module.Labels;
import straywire.module.Point;
import straywire.observe.Step;

/**
 * A test rig as another program would be one: knows the sitting by the lines of the dialogue only.
 */
final class DialogueRig {
  private static final ObjectMapper JSON = new ObjectMapper();

  private final Workbench workbench;
  private final EntryFormat format;
  private final Dialogue dialogue;
  private final String fault;
  private SimulatedBench bench;

  DialogueRig(Workbench workbench, String fault, long seed) {
    this.workbench = workbench;
    this.fault = fault;
    format = new EntryFormat(workbench.module());
    dialogue = new Dialogue(Sitting.unrecorded(workbench));
    bench =
        new SimulatedBench(
            workbench.module(), workbench.hypothesis(fault).orElseThrow(), workbench.table(), seed);
  }

  private JsonNode say(ObjectNode line) throws IOException {
    JsonNode reply = JSON.readTree(dialogue.reply(line.toString()).toString());
    if (reply.has("error")) {
      throw new IllegalStateException(line + " gave " + reply.get("error"));
    }
    return reply;
  }

  private JsonNode command(String command) throws IOException {
    return say(JsonNodeFactory.instance.objectNode().put("command", command));
  }

  /** The last line of the dialogue: closed, or where it was after the most lines allowed. */
  JsonNode workToTheEnd(int most) throws IOException {
    JsonNode reply = command("outlook");
    for (int i = 0; i < most; i++) {
      JsonNode state = reply.get("state");
      switch (state.get("stage").asText()) {
        case "closed" -> {
          return reply;
        }
        case "confirmed" -> reply = command("finish");
        case "repairing" -> reply = repair(state);
        default -> reply = answer(state.get("next"));
      }
    }
    return reply;
  }

  private JsonNode repair(JsonNode state) throws IOException {
    JsonNode faults = state.get("suspects").get(0).get("faults");
    int member = 0;
    for (int i = 0; i < faults.size(); i++) {
      member = faults.get(i).get("id").asText().equals(fault) ? i + 1 : member;
    }
    if (member == 0) {
      throw new IllegalStateException("the rig cannot find wrong what is named: " + faults);
    }
    bench = new SimulatedBench(workbench.module(), workbench.nothingWrong(), workbench.table(), 12);
    ObjectNode set = JsonNodeFactory.instance.objectNode();
    set.set("set", state.get("controls"));
    bench.act(format.read(set));
    return say(
        JsonNodeFactory.instance.objectNode().put("command", "repaired").put("fault", member));
  }

  private JsonNode answer(JsonNode step) throws IOException {
    for (JsonNode handling : step.get("do")) {
      bench.act(format.read((ObjectNode) handling));
    }
    ArrayNode readings = JsonNodeFactory.instance.arrayNode();
    for (Entry reading : read(step.get("read"))) {
      readings.add(format.write(reading));
    }
    for (JsonNode handling : step.get("then")) {
      bench.act(format.read((ObjectNode) handling));
    }
    ObjectNode line = JsonNodeFactory.instance.objectNode();
    line.set("answer", readings.size() == 1 ? readings.get(0) : readings);
    return say(line);
  }

  private List<Entry> read(JsonNode wanted) {
    Labels labels = new Labels(workbench.module());
    if (wanted.has("seen")) {
      return List.of(bench.look(texts(wanted.get("seen"))));
    }
    if (wanted.has("measured")) {
      List<Entry> readings = new ArrayList<>();
      for (String at : texts(wanted.get("measured"))) {
        Point point = labels.point(at);
        readings.add(new Entry.Measured(point, bench.measure(point)));
      }
      return readings;
    }
    if (wanted.has("inspected")) {
      return bench.perform(new Step.Inspect(wanted.get("inspected").asText()));
    }
    List<String> ends = texts(wanted.get("continuity"));
    return bench.perform(new Step.Beep(labels.point(ends.get(0)), labels.point(ends.get(1))));
  }

  private static List<String> texts(JsonNode oneOrMore) {
    List<String> texts = new ArrayList<>();
    if (oneOrMore.isArray()) {
      oneOrMore.forEach(t -> texts.add(t.asText()));
    } else {
      texts.add(oneOrMore.asText());
    }
    return texts;
  }

  /** The faults of the finding, as the log of the dialogue has them. */
  List<String> finding() throws IOException {
    for (JsonNode line : command("log").get("log")) {
      if (line.has("finding")) {
        return texts(line.get("finding"));
      }
    }
    return List.of();
  }
}
