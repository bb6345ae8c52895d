package straywire.web;

import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.util.List;
import java.util.Set;
import java.util.TreeSet;
import java.util.concurrent.TimeUnit;
import straywire.advice.SymptomTable;
import straywire.faults.Edit;
import straywire.faults.Hypothesis;
import straywire.format.BadEntry;
import straywire.module.BenchLog;
import straywire.module.End;
import straywire.module.Entry;
import straywire.module.EntryFormat;
import straywire.module.EntryWords;
import straywire.module.Module;
import straywire.sitting.Dialogue;
import straywire.sitting.Proposed;
import straywire.sitting.Sitting;
import straywire.sitting.Situation;
import straywire.sitting.SituationJson;
import straywire.sitting.StepWords;
import straywire.steps.Outlook.Suspect;

/**
 * A sitting that several windows look at. One entry at a time; whoever waits for news wakes when
 * the log grew. The number of the latest entry is the version of what is shown: a log only grows.
 */
final class PageSitting {
  private static final ObjectMapper MAPPER = new ObjectMapper();

  private static final JsonNodeFactory JSON = JsonNodeFactory.instance;

  private final Sitting sitting;
  private final Module module;
  private final Dialogue dialogue;
  private final SituationJson situations;
  private final EntryWords typed;
  private final EntryFormat format;
  private final StepWords words;
  private final ObjectNode drawing;
  private int version;
  private boolean over;
  private String view;

  PageSitting(Sitting sitting) {
    this.sitting = sitting;
    module = sitting.workbench().module();
    dialogue = new Dialogue(sitting);
    situations = new SituationJson(module);
    typed = new EntryWords(module, SymptomTable.shipped().ids());
    format = new EntryFormat(module);
    words = new StepWords(module);
    drawing = new ModuleDrawing(module).json();
    refresh();
  }

  ObjectNode drawing() {
    return drawing;
  }

  /** How it stands, one line of JSON. */
  synchronized String view() {
    return view;
  }

  synchronized int version() {
    return version;
  }

  /**
   * Waits until there is something newer to show, or for as long as said.
   *
   * @param milliseconds at most, above 0
   * @return false when the sitting is over and nothing more will come
   */
  synchronized boolean awaitAfter(int shown, long milliseconds) throws InterruptedException {
    long until = System.nanoTime() + TimeUnit.MILLISECONDS.toNanos(milliseconds);
    long left = milliseconds;
    while (version <= shown && !over && left > 0) {
      wait(left);
      left = TimeUnit.NANOSECONDS.toMillis(until - System.nanoTime());
    }
    return !over;
  }

  /** Lets everybody go who waits. */
  synchronized void end() {
    over = true;
    notifyAll();
  }

  /** Does what one line asks: a line of the dialogue, or {@code {"words": ...}} as typed. */
  synchronized String reply(String line) {
    ObjectNode answer = said(line);
    answer.remove("state");
    if (sitting.log().lines().size() != version) {
      refresh();
      notifyAll();
    }
    answer.putRawValue("view", new com.fasterxml.jackson.databind.util.RawValue(view));
    return text(answer);
  }

  private ObjectNode said(String line) {
    try {
      JsonNode asked = MAPPER.readTree(line);
      if (asked != null && asked.path("words").isTextual()) {
        return inWords(asked.get("words").textValue());
      }
    } catch (JsonProcessingException e) {
      // The dialogue says what is wrong with it.
    }
    return dialogue.reply(line);
  }

  /** Own words: an entry as the terminal takes it, or else an answer to the step asked for. */
  private ObjectNode inWords(String said) {
    ObjectNode answer = JSON.objectNode();
    try {
      String first = said.strip().split("\\s+", 2)[0];
      List<Integer> numbers =
          typed.verbs().contains(first)
              ? List.of(sitting.enter(typed.parse(said.strip())))
              : sitting.answer(said.strip());
      ArrayNode entered = answer.putArray("entered");
      numbers.forEach(entered::add);
    } catch (BadEntry e) {
      answer.put("error", e.getMessage());
    }
    return answer;
  }

  private void refresh() {
    Situation now = sitting.now();
    BenchLog log = sitting.log();
    version = log.lines().size();
    ObjectNode node = JSON.objectNode().put("version", version);
    node.set("state", situations.of(now, log));
    node.set("log", entries(log));
    node.set("places", places(now));
    now.next().ifPresent(step -> node.set("step", step(step, now)));
    view = text(node);
  }

  private ArrayNode entries(BenchLog log) {
    Set<Integer> standing = new TreeSet<>();
    log.standing().forEach(line -> standing.add(line.number()));
    ArrayNode entries = JSON.arrayNode();
    for (BenchLog.Line line : log.lines()) {
      ObjectNode node =
          entries
              .addObject()
              .put("n", line.number())
              .put("words", typed.print(line.entry()))
              .put("stands", standing.contains(line.number()));
      if (line.entry() instanceof Entry.Withdrawn) {
        node.put("withdraws", true);
      }
    }
    return entries;
  }

  /** The ends that each listed fault changes, by the fault's id. */
  private ObjectNode places(Situation now) {
    ObjectNode places = JSON.objectNode();
    for (Suspect suspect : now.outlook().suspects().stream().limit(12).toList()) {
      for (Hypothesis fault : suspect.members().stream().limit(12).toList()) {
        ArrayNode ends = places.putArray(fault.id());
        for (Edit edit : fault.edits()) {
          edit.touches(module).stream().map(End::toString).forEach(ends::add);
        }
      }
    }
    return places;
  }

  /** The step in the short lines of the terminal, beside its JSON in the state. */
  private ObjectNode step(Proposed step, Situation now) {
    ObjectNode node = JSON.objectNode();
    ArrayNode before = node.putArray("handling");
    words.handling(step.before(), now.controls()).forEach(before::add);
    ArrayNode after = node.putArray("after");
    step.after().forEach(entry -> after.add(typed.print(entry)));
    node.put("reading", words.reading(step.wanted()));
    node.put("how", step.wanted().howToAnswer());
    ArrayNode moves = node.putArray("moves");
    step.before().forEach(entry -> moves.add(format.write(entry)));
    return node;
  }

  private static String text(ObjectNode node) {
    try {
      return MAPPER.writeValueAsString(node);
    } catch (JsonProcessingException e) {
      throw new IllegalStateException("A tree of fields can always be written", e);
    }
  }
}
