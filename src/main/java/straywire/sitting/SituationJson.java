package straywire.sitting;

import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.TreeMap;
import straywire.advice.Caution;
import straywire.advice.Hint;
import straywire.advice.Normal;
import straywire.faults.Hypothesis;
import straywire.module.BenchLog;
import straywire.module.Control;
import straywire.module.Entry;
import straywire.module.EntryFormat;
import straywire.module.Module;
import straywire.steps.Outlook;
import straywire.steps.Outlook.Ground;
import straywire.steps.Outlook.Suspect;
import straywire.steps.Unseen;

/**
 * How a sitting stands, as JSON: fields in a fixed order, numbers rounded, so that the same log
 * gives the same bytes. Described in {@code docs/dialogue.md}.
 */
public final class SituationJson {
  private static final JsonNodeFactory JSON = JsonNodeFactory.instance;

  /** Suspects listed; the rest is counted. */
  private static final int MOST_SUSPECTS = 12;

  /** Faults listed of one suspect. */
  private static final int MOST_FAULTS = 12;

  private static final int MOST_GROUNDS = 6;

  private final Module module;
  private final EntryFormat format;
  private final StepWords words;

  public SituationJson(Module module) {
    this.module = module;
    format = new EntryFormat(module);
    words = new StepWords(module);
  }

  /**
   * The whole situation.
   *
   * @param log of which it is the situation, for the numbers of its entries
   */
  public ObjectNode of(Situation now, BenchLog log) {
    ObjectNode state = JSON.objectNode();
    state.put("module", module.name());
    state.put("entries", now.entries());
    state.put("stage", word(now.stage()));
    state.put("verdict", word(now.outlook().verdict()));
    state.put("may-finish", now.mayFinish());
    state.put("power", now.controls().power() ? "on" : "off");
    state.set("controls", switches(now));
    ArrayNode held = state.putArray("held");
    now.controls().held().forEach(held::add);
    state.set("lamps", lamps(now));
    state.put("uncertainty-bits", rounded(now.outlook().uncertainty(), 4));
    state.set("suspects", suspects(now, log));
    int left = Math.max(0, now.outlook().suspects().size() - MOST_SUSPECTS);
    state.put("suspects-left-out", left);
    now.next().ifPresent(next -> state.set("next", step(next, now)));
    ArrayNode others = state.putArray("others");
    now.others().forEach(step -> others.add(step(step, now)));
    ArrayNode contradictions = state.putArray("contradictions");
    now.contradictions().forEach(contradictions::add);
    advice(now, state);
    return state;
  }

  /** What a sound-looking module may still hide. */
  public ArrayNode hidden(List<Unseen.Hidden> hidden) {
    ArrayNode list = JSON.arrayNode();
    for (Unseen.Hidden one : hidden) {
      ObjectNode node = fault(one.hypothesis());
      node.put("probability", rounded(one.probability(), 6));
      node.put("no-lamp-shows-it", one.invisible());
      one.check().ifPresent(step -> node.put("check", words.check(step)));
      list.add(node);
    }
    return list;
  }

  private ObjectNode switches(Situation now) {
    Map<String, Boolean> levels = new TreeMap<>();
    for (Control control : module.controls().values()) {
      if (control.kind() == Control.Kind.SWITCH) {
        levels.put(control.label(), now.controls().levels().get(control.label()));
      }
    }
    return levels.isEmpty()
        ? JSON.objectNode()
        : (ObjectNode) format.write(new Entry.Set(levels)).get("set");
  }

  private static ArrayNode lamps(Situation now) {
    ArrayNode lamps = JSON.arrayNode();
    for (Situation.LampForecast word : now.lamps()) {
      ObjectNode node = lamps.addObject().put("word", word.word());
      ArrayNode members = node.putArray("lamps");
      word.members().forEach(members::add);
      node.put("seen", word.seen());
      node.put("nothing-wrong", word.healthy());
      node.put("leading-suspect", word.leader());
    }
    return lamps;
  }

  private static ArrayNode suspects(Situation now, BenchLog log) {
    List<BenchLog.Line> standing = log.standing();
    ArrayNode suspects = JSON.arrayNode();
    List<Suspect> all = now.outlook().suspects();
    for (int i = 0; i < Math.min(MOST_SUSPECTS, all.size()); i++) {
      Suspect suspect = all.get(i);
      ObjectNode node = suspects.addObject();
      node.put("rank", i + 1);
      node.put("probability", rounded(suspect.probability(), 6));
      node.put("with-another", rounded(suspect.withAnother(), 6));
      ArrayNode faults = node.putArray("faults");
      suspect.members().stream().limit(MOST_FAULTS).forEach(h -> faults.add(fault(h)));
      node.put("faults-left-out", Math.max(0, suspect.members().size() - MOST_FAULTS));
      grounds(node.putArray("for"), suspect, standing, true);
      grounds(node.putArray("against"), suspect, standing, false);
    }
    return suspects;
  }

  /** A fault with its words, its repair and the rule that suggests it. */
  public static ObjectNode fault(Hypothesis hypothesis) {
    return JSON.objectNode()
        .put("id", hypothesis.id())
        .put("words", hypothesis.words())
        .put("repair", hypothesis.repair())
        .put("rule", hypothesis.rule())
        .put("reason", hypothesis.reason());
  }

  private static void grounds(
      ArrayNode into, Suspect suspect, List<BenchLog.Line> standing, boolean speaksFor) {
    suspect.grounds().stream()
        .filter(g -> g.logFactor() > 0 == speaksFor)
        .limit(MOST_GROUNDS)
        .forEach(
            (Ground g) ->
                into.addObject()
                    .put("entry", standing.get(g.entry()).number())
                    .put("log-factor", rounded(g.logFactor(), 3)));
  }

  /** A step as a program reads it, and in words. */
  ObjectNode step(Proposed step, Situation now) {
    ObjectNode node = JSON.objectNode();
    node.put("purpose", word(step.purpose()));
    node.put("words", words.line(step, now.controls()));
    node.put("why", words.why(step));
    if (step.purpose() == Proposed.Purpose.CAUTION) {
      now.caution().ifPresent(caution -> node.set("caution", caution(caution)));
    }
    ArrayNode before = node.putArray("do");
    step.before().forEach(entry -> before.add(format.write(entry)));
    node.set("read", wanted(step.wanted()));
    ArrayNode after = node.putArray("then");
    step.after().forEach(entry -> after.add(format.write(entry)));
    node.put("seconds", rounded(step.seconds(), 1));
    node.put("bits", rounded(step.bits(), 4));
    ArrayNode expected = node.putArray("expected");
    step.expected().forEach(expected::add);
    return node;
  }

  private static ObjectNode wanted(Wanted wanted) {
    ObjectNode node = JSON.objectNode();
    if (wanted instanceof Wanted.Lamps w) {
      ArrayNode look = node.putArray("seen");
      w.words().forEach(look::add);
    } else if (wanted instanceof Wanted.Volts w) {
      node.put("measured", w.point().toString());
    } else if (wanted instanceof Wanted.Round w) {
      ArrayNode points = node.putArray("measured");
      w.points().forEach(point -> points.add(point.toString()));
    } else if (wanted instanceof Wanted.Shows w) {
      node.put("probed", w.point().toString());
    } else if (wanted instanceof Wanted.Joined w) {
      node.putArray("continuity").add(w.from().toString()).add(w.to().toString());
    } else if (wanted instanceof Wanted.AsMeant w) {
      node.put("inspected", w.subject());
    } else if (wanted instanceof Wanted.Done w) {
      node.put("exchanged", w.part());
    } else if (wanted instanceof Wanted.Noticed w) {
      node.put("symptom", w.symptom());
      if (!w.place().isEmpty()) {
        node.put("place", w.place());
      }
    }
    return node;
  }

  private static ObjectNode caution(Caution caution) {
    return JSON.objectNode()
        .put("rule", caution.rule())
        .put("urgent", caution.urgent())
        .put("text", caution.text());
  }

  private static void advice(Situation now, ObjectNode state) {
    ArrayNode cautions = state.putArray("cautions");
    for (Caution caution : now.advice().cautions()) {
      cautions.add(caution(caution));
    }
    ArrayNode normal = state.putArray("normal");
    for (Normal said : now.advice().normal()) {
      normal
          .addObject()
          .put("rule", said.rule())
          .put("entry", said.entry())
          .put("text", said.text());
    }
    ArrayNode hints = state.putArray("hints");
    for (Hint hint : now.advice().hints()) {
      hints.addObject().put("rule", hint.rule()).put("text", hint.text());
    }
  }

  /** Such as {@code nothing-wrong}. */
  static String word(Enum<?> constant) {
    return constant.name().toLowerCase(Locale.ROOT).replace('_', '-');
  }

  /** Whether a sitting may stop, in a word. */
  public static String word(Outlook.Verdict verdict) {
    return word((Enum<?>) verdict);
  }

  private static BigDecimal rounded(double number, int decimals) {
    BigDecimal rounded =
        BigDecimal.valueOf(number).setScale(decimals, RoundingMode.HALF_EVEN).stripTrailingZeros();
    return rounded.scale() < 0 ? rounded.setScale(0) : rounded;
  }
}
