package straywire.sitting;

import com.fasterxml.jackson.core.JsonGenerator;
import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.core.StreamReadFeature;
import com.fasterxml.jackson.databind.DeserializationFeature;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.json.JsonMapper;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.io.BufferedReader;
import java.io.IOException;
import java.io.PrintWriter;
import java.util.ArrayList;
import java.util.Iterator;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;
import straywire.format.BadEntry;
import straywire.format.NotJson;
import straywire.module.Control;
import straywire.module.Entry;
import straywire.module.EntryFormat;
import straywire.module.Fitted;
import straywire.module.Labels;
import straywire.module.Module;
import straywire.saying.Heard;
import straywire.saying.Meaning;

/**
 * A sitting driven by a program: one JSON object a line in, one line out for each. Described, with
 * a whole sitting, in {@code docs/dialogue.md}.
 */
public final class Dialogue {
  /** Version of the dialogue; a field added does not change it. */
  public static final int VERSION = 1;

  private static final ObjectMapper MAPPER =
      JsonMapper.builder()
          .enable(StreamReadFeature.STRICT_DUPLICATE_DETECTION)
          .enable(DeserializationFeature.FAIL_ON_TRAILING_TOKENS)
          .enable(JsonGenerator.Feature.WRITE_BIGDECIMAL_AS_PLAIN)
          .build();

  private static final JsonNodeFactory JSON = JsonNodeFactory.instance;

  private static final List<String> COMMANDS =
      List.of(
          "outlook",
          "next",
          "symptoms",
          "dont-know",
          "accept",
          "undo",
          "repaired",
          "levels",
          "hidden",
          "log",
          "finish",
          "quit");

  private final Sitting sitting;
  private final Module module;
  private final EntryFormat format;
  private final SituationJson situations;
  private boolean over;

  public Dialogue(Sitting sitting) {
    this.sitting = sitting;
    module = sitting.workbench().module();
    format = new EntryFormat(module);
    situations = new SituationJson(module);
  }

  /** Talks until the program says quit or has no more to say. */
  public void run(BufferedReader in, PrintWriter out) throws IOException {
    say(out, hello());
    String line = in.readLine();
    while (line != null) {
      if (!line.isBlank()) {
        say(out, reply(line));
      }
      line = over ? null : in.readLine();
    }
  }

  private static void say(PrintWriter out, ObjectNode answer) {
    out.print(text(answer) + "\n");
    out.flush();
  }

  private static String text(ObjectNode answer) {
    try {
      return MAPPER.writeValueAsString(answer);
    } catch (JsonProcessingException e) {
      throw new IllegalStateException("A tree of fields can always be written", e);
    }
  }

  private static ObjectNode versioned() {
    return JSON.objectNode().put("v", VERSION);
  }

  /** The first line: what the module has to work with, and how the sitting stands. */
  private ObjectNode hello() {
    ObjectNode about = JSON.objectNode().put("name", module.name()).put("title", module.title());
    ObjectNode controls = about.putObject("control-words");
    module.controlWords().forEach(w -> addAll(controls.putArray(w.label()), w.members()));
    addAll(about.putArray("switches"), controls(Control.Kind.SWITCH));
    addAll(about.putArray("buttons"), controls(Control.Kind.BUTTON));
    ObjectNode lamps = about.putObject("lamp-words");
    module.lampWords().forEach(w -> addAll(lamps.putArray(w.label()), w.members()));
    ObjectNode parts = about.putObject("parts");
    module.parts().forEach((label, part) -> parts.put(label, part.part().type()));
    ObjectNode hello = versioned();
    hello.set("module", about);
    hello.put("asks", "What do you notice?");
    hello.set("state", state());
    return hello;
  }

  private List<String> controls(Control.Kind kind) {
    return module.controls().values().stream()
        .filter(c -> c.kind() == kind)
        .map(Control::label)
        .toList();
  }

  private ObjectNode state() {
    return situations.of(sitting.now(), sitting.log());
  }

  /** The answer to one line; never throws for what the line says. */
  public ObjectNode reply(String line) {
    ObjectNode asked;
    try {
      asked = parsed(line);
    } catch (BadEntry e) {
      return versioned().put("error", e.getMessage());
    }
    ObjectNode answer = versioned();
    if (asked.has("id")) {
      answer.set("id", asked.get("id"));
    }
    try {
      answer.setAll(done(asked));
    } catch (BadEntry e) {
      answer.put("error", e.getMessage());
    }
    return answer;
  }

  private static ObjectNode parsed(String line) {
    JsonNode node;
    try {
      node = MAPPER.readTree(line);
    } catch (JsonProcessingException e) {
      throw new BadEntry(NotJson.why(e));
    }
    if (node instanceof ObjectNode object) {
      return object;
    }
    throw new BadEntry("expected an object in braces, such as {\"command\":\"next\"}");
  }

  private ObjectNode done(ObjectNode asked) {
    if (asked.has("v") && asked.get("v").asInt(0) != VERSION) {
      throw new BadEntry(
          "version " + asked.get("v") + " of the dialogue is unknown; this one is " + VERSION);
    }
    List<String> kinds =
        List.of("entry", "answer", "words", "command").stream().filter(asked::has).toList();
    if (kinds.size() != 1) {
      throw new BadEntry("expected exactly one of entry, answer, words, command");
    }
    if (asked.has("entry")) {
      allow(asked, "entry");
      return entered(List.of(sitting.enter(format.read(object(asked, "entry")))));
    }
    if (asked.has("answer")) {
      allow(asked, "answer");
      return entered(answered(asked));
    }
    if (asked.has("words")) {
      allow(asked, "words");
      return words(asked.get("words").asText());
    }
    return commanded(asked);
  }

  /** Free words: entered when they are clear, else what they may mean. */
  private ObjectNode words(String said) {
    Heard heard = sitting.workbench().hearing().hear(said);
    if (heard instanceof Heard.Nothing) {
      throw new BadEntry(
          "words: nothing known is meant by \"" + said + "\"; the command symptoms lists all");
    }
    if (heard instanceof Heard.Several several) {
      ObjectNode answer = JSON.objectNode();
      answer.set("pick", meanings(several.meanings()));
      return answer;
    }
    List<Meaning> meanings = ((Heard.Clear) heard).meanings();
    List<Entry> told = new ArrayList<>();
    for (Meaning meaning : meanings) {
      if (meaning instanceof Meaning.Told t) {
        told.add(t.entry());
      }
    }
    ObjectNode answer = told.isEmpty() ? JSON.objectNode() : entered(sitting.enterTogether(told));
    answer.set("heard", meanings(meanings));
    return answer;
  }

  private ArrayNode meanings(List<Meaning> meanings) {
    ArrayNode all = JSON.arrayNode();
    for (Meaning meaning : meanings) {
      ObjectNode one = all.addObject().put("words", meaning.words());
      if (meaning instanceof Meaning.Told told) {
        one.set("entry", format.write(told.entry()));
      } else if (meaning instanceof Meaning.Help help) {
        one.put("help", help.command());
      }
    }
    return all;
  }

  /** A short answer as typed, the reading as an entry, or all readings of a round as a list. */
  private List<Integer> answered(ObjectNode asked) {
    JsonNode answer = asked.get("answer");
    if (answer.isTextual()) {
      return sitting.answer(answer.textValue());
    }
    if (answer instanceof ArrayNode list && !list.isEmpty()) {
      List<Entry> readings = new ArrayList<>();
      for (JsonNode one : list) {
        if (!(one instanceof ObjectNode reading)) {
          throw new BadEntry("answer: expected a list of entries");
        }
        readings.add(format.read(reading));
      }
      return sitting.answer(readings);
    }
    return sitting.answer(List.of(format.read(object(asked, "answer"))));
  }

  private static ObjectNode object(ObjectNode asked, String field) {
    if (asked.get(field) instanceof ObjectNode object) {
      return object;
    }
    throw new BadEntry(field + ": expected an object such as {\"power\":\"on\"}");
  }

  private static void allow(ObjectNode asked, String... fields) {
    Set<String> known = new TreeSet<>(List.of("v", "id"));
    known.addAll(List.of(fields));
    for (Iterator<String> names = asked.fieldNames(); names.hasNext(); ) {
      String name = names.next();
      if (!known.contains(name)) {
        throw new BadEntry("no field is called " + name + " here");
      }
    }
  }

  private ObjectNode entered(List<Integer> numbers) {
    ObjectNode answer = JSON.objectNode();
    ArrayNode entered = answer.putArray("entered");
    numbers.forEach(entered::add);
    answer.set("state", state());
    return answer;
  }

  private ObjectNode commanded(ObjectNode asked) {
    String command = asked.get("command").asText();
    if (!command.equals("levels") && !command.equals("repaired")) {
      allow(asked, "command");
    }
    return switch (command) {
      case "outlook" -> JSON.objectNode().set("state", state());
      case "next" -> next();
      case "symptoms" ->
          JSON.objectNode().set("symptoms", meanings(sitting.workbench().hearing().all()));
      case "dont-know" -> entered(List.of(sitting.skip()));
      case "accept" -> entered(List.of(sitting.accept()));
      case "undo" -> undone();
      case "repaired" -> repaired(asked);
      case "levels" -> levels(asked);
      case "hidden" -> JSON.objectNode().set("hidden", situations.hidden(sitting.hidden()));
      case "log" -> log();
      case "finish" -> entered(List.of(sitting.finish()));
      case "quit" -> quit();
      default ->
          throw new BadEntry(
              "no command is called " + command + "; known are " + String.join(", ", COMMANDS));
    };
  }

  private ObjectNode next() {
    Situation now = sitting.now();
    ObjectNode answer = JSON.objectNode();
    answer.put("stage", SituationJson.word(now.stage()));
    now.next().ifPresent(step -> answer.set("next", situations.step(step, now)));
    return answer;
  }

  private ObjectNode undone() {
    List<Integer> withdrawn = sitting.undo();
    ObjectNode answer = JSON.objectNode();
    ArrayNode numbers = answer.putArray("withdrawn");
    withdrawn.forEach(numbers::add);
    answer.set("state", state());
    return answer;
  }

  private ObjectNode repaired(ObjectNode asked) {
    allow(asked, "command", "fault");
    JsonNode fault = asked.has("fault") ? asked.get("fault") : JSON.numberNode(1);
    if (!fault.isInt()) {
      throw new BadEntry("fault: expected which fault of the leading suspect, from 1");
    }
    return entered(sitting.repaired(fault.intValue()));
  }

  private ObjectNode log() {
    ObjectNode answer = JSON.objectNode();
    ArrayNode lines = answer.putArray("log");
    sitting
        .log()
        .lines()
        .forEach(
            line -> {
              ObjectNode node = lines.addObject().put("n", line.number());
              node.setAll(format.write(line.entry()));
            });
    return answer;
  }

  private ObjectNode quit() {
    over = true;
    return JSON.objectNode().put("bye", true);
  }

  private ObjectNode levels(ObjectNode asked) {
    allow(asked, "command", "set", "part");
    ExpectedLevels levels = new ExpectedLevels(module, sitting.workbench().table(), sitting.log());
    if (asked.has("set")) {
      ObjectNode set = JSON.objectNode();
      set.set("set", asked.get("set"));
      levels.act(format.read(set));
    }
    List<String> parts = new ArrayList<>(module.parts().keySet());
    if (asked.has("part")) {
      parts = List.of(new Labels(module).part(asked.get("part").asText()));
    }
    ObjectNode answer = JSON.objectNode();
    ObjectNode all = answer.putObject("levels");
    for (String label : parts) {
      Fitted part = module.parts().get(label);
      ArrayNode pins = all.putArray(label);
      for (ExpectedLevels.PinLevel pin : levels.of(part)) {
        pins.addObject()
            .put("pin", pin.pin().number())
            .put("name", pin.pin().name())
            .put("level", pin.level())
            .put("volts", pin.volts());
      }
    }
    ObjectNode lamps = answer.putObject("lamps");
    for (Map.Entry<String, String> word : levels.lamps().entrySet()) {
      lamps.put(word.getKey(), word.getValue());
    }
    return answer;
  }

  private static void addAll(ArrayNode array, List<String> values) {
    values.forEach(array::add);
  }
}
