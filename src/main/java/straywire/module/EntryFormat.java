package straywire.module;

import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.function.BiConsumer;
import java.util.function.Function;
import straywire.format.BadEntry;
import straywire.format.EnumWords;
import straywire.format.Nearest;

/**
 * Entries as JSON objects, for bench logs and for the machine dialogue. The first field is the verb
 * and tells the kind. Words of controls and lamps are spread on reading and gathered on writing, so
 * that writing what was read gives the same bytes.
 */
public final class EntryFormat {
  /** Kind of entry, its fields (the verb first), and how they are read and written. */
  private record Form<E extends Entry>(
      Class<E> type,
      List<String> fields,
      Function<JsonFields, E> read,
      BiConsumer<E, ObjectNode> write) {
    String verb() {
      return fields.get(0);
    }

    void writeTo(Entry entry, ObjectNode object) {
      write.accept(type.cast(entry), object);
    }
  }

  private final Labels labels;
  private final WordValues<Boolean> controls;
  private final WordValues<LampState> lamps;
  private final List<Form<?>> forms;

  public EntryFormat(Module module) {
    labels = new Labels(module);
    controls = WordValues.ofControls(module);
    lamps = WordValues.ofLamps(module);
    forms = List.copyOf(forms());
  }

  private List<Form<?>> forms() {
    List<Form<?>> all = new ArrayList<>();
    all.add(
        new Form<>(
            Entry.Power.class,
            List.of("power"),
            f -> new Entry.Power(f.oneOf("power", List.of("on", "off")).equals("on")),
            (e, o) -> o.put("power", e.on() ? "on" : "off")));
    all.add(
        new Form<>(
            Entry.Set.class,
            List.of("set"),
            f -> new Entry.Set(controls.spread(f.texts("set", "controls with levels"))),
            (e, o) -> putAll(o.putObject("set"), controls.gather(e.levels()))));
    all.add(
        new Form<>(
            Entry.Press.class,
            List.of("press"),
            f -> new Entry.Press(labels.button(f.text("press"))),
            (e, o) -> o.put("press", e.button())));
    all.add(
        new Form<>(
            Entry.Hold.class,
            List.of("hold"),
            f -> new Entry.Hold(labels.button(f.text("hold"))),
            (e, o) -> o.put("hold", e.button())));
    all.add(
        new Form<>(
            Entry.Release.class,
            List.of("release"),
            f -> new Entry.Release(labels.button(f.text("release"))),
            (e, o) -> o.put("release", e.button())));
    all.add(
        new Form<>(
            Entry.Seen.class,
            List.of("seen"),
            f -> new Entry.Seen(lamps.spread(f.texts("seen", "lamps with what was seen"))),
            (e, o) -> putAll(o.putObject("seen"), lamps.gather(e.lamps()))));
    all.add(
        new Form<>(
            Entry.Measured.class,
            List.of("measured", "volts"),
            f ->
                new Entry.Measured(
                    labels.point(f.text("measured")), Wording.volts(f.number("volts"))),
            (e, o) ->
                o.put("measured", e.point().toString()).put("volts", Wording.decimal(e.volts()))));
    all.add(
        new Form<>(
            Entry.Probed.class,
            List.of("probed", "shows"),
            f ->
                new Entry.Probed(
                    labels.point(f.text("probed")),
                    EnumWords.of(
                        Entry.ProbeShows.class,
                        f.oneOf("shows", EnumWords.words(Entry.ProbeShows.values())))),
            (e, o) ->
                o.put("probed", e.point().toString()).put("shows", EnumWords.word(e.shows()))));
    all.add(
        new Form<>(
            Entry.Continuity.class,
            List.of("continuity", "joined"),
            this::readContinuity,
            (e, o) -> {
              o.putArray("continuity").add(e.from().toString()).add(e.to().toString());
              o.put("joined", e.joined());
            }));
    all.add(
        new Form<>(
            Entry.Symptom.class,
            List.of("symptom", "place", "answer", "entries", "asked"),
            this::readSymptom,
            EntryFormat::writeSymptom));
    all.add(
        new Form<>(
            Entry.Inspected.class,
            List.of("inspected", "as-meant"),
            f ->
                new Entry.Inspected(
                    Wording.inspected(f.text("inspected"), labels), f.yesNo("as-meant")),
            (e, o) -> o.put("inspected", e.subject()).put("as-meant", e.asMeant())));
    all.add(
        new Form<>(
            Entry.Repaired.class,
            List.of("repaired"),
            f -> new Entry.Repaired(f.line("repaired")),
            (e, o) -> o.put("repaired", e.action())));
    all.add(
        new Form<>(
            Entry.Exchanged.class,
            List.of("exchanged"),
            f -> new Entry.Exchanged(labels.part(f.text("exchanged"))),
            (e, o) -> o.put("exchanged", e.part())));
    all.add(
        new Form<>(
            Entry.Instruments.class,
            List.of("instruments"),
            f -> new Entry.Instruments(Wording.instruments(f.texts("instruments"))),
            (e, o) -> addAll(o.putArray("instruments"), e.atHand())));
    all.add(
        new Form<>(
            Entry.Withdrawn.class,
            List.of("withdrawn"),
            f -> new Entry.Withdrawn(f.integer("withdrawn", 1)),
            (e, o) -> o.put("withdrawn", e.number())));
    all.add(
        new Form<>(
            Entry.Look.class,
            List.of("look"),
            f -> new Entry.Look(labels.look(f.texts("look"))),
            (e, o) -> addAll(o.putArray("look"), e.what())));
    all.add(
        new Form<>(
            Entry.Note.class,
            List.of("note"),
            f -> new Entry.Note(f.line("note")),
            (e, o) -> o.put("note", e.text())));
    all.add(
        new Form<>(
            Entry.Finding.class,
            List.of("finding", "words"),
            f -> new Entry.Finding(Wording.faults(f.texts("finding")), f.line("words")),
            (e, o) -> {
              addAll(o.putArray("finding"), e.faults());
              o.put("words", e.words());
            }));
    all.add(
        new Form<>(
            Entry.Expected.class,
            List.of("expected", "within-steps"),
            f ->
                new Entry.Expected(
                    Wording.faults(f.texts("expected")), f.integer("within-steps", 0)),
            (e, o) -> {
              addAll(o.putArray("expected"), e.faults());
              o.put("within-steps", e.withinSteps());
            }));
    return all;
  }

  /** The verbs, in the order of the documentation. */
  public List<String> verbs() {
    return forms.stream().map(Form::verb).toList();
  }

  /**
   * Reads one entry.
   *
   * @param object the entry's own fields, without number, version and the like
   * @throws BadEntry when it is not exactly one entry that fits the module
   */
  public Entry read(ObjectNode object) {
    List<Form<?>> named = forms.stream().filter(form -> object.has(form.verb())).toList();
    if (named.isEmpty()) {
      throw new BadEntry(
          object.isEmpty()
              ? "there is no entry; write one of " + String.join(", ", verbs())
              : "no entry is called "
                  + object.fieldNames().next()
                  + Nearest.hint(object.fieldNames().next(), verbs()));
    }
    if (named.size() > 1) {
      throw new BadEntry(
          "one entry at a time, got " + named.get(0).verb() + " and " + named.get(1).verb());
    }
    JsonFields fields = new JsonFields(object);
    fields.allowOnly(named.get(0).fields());
    return named.get(0).read().apply(fields);
  }

  /** The entry's own fields, always in the same order. */
  public ObjectNode write(Entry entry) {
    ObjectNode object = JsonNodeFactory.instance.objectNode();
    forms.stream()
        .filter(form -> form.type().isInstance(entry))
        .findFirst()
        .orElseThrow()
        .writeTo(entry, object);
    return object;
  }

  private Entry.Continuity readContinuity(JsonFields fields) {
    List<String> points = fields.texts("continuity");
    if (points.size() != 2) {
      throw new BadEntry("continuity: expected two points, got " + points.size());
    }
    Point from = labels.point(points.get(0));
    Point to = labels.point(points.get(1));
    if (from.equals(to)) {
      throw new BadEntry("continuity: expected two points, got " + from + " twice");
    }
    return new Entry.Continuity(from, to, fields.yesNo("joined"));
  }

  private Entry.Symptom readSymptom(JsonFields fields) {
    String place = fields.has("place") ? labels.place(fields.text("place")) : "";
    String answer = fields.oneOf("answer", EnumWords.words(Entry.Answer.values()));
    return new Entry.Symptom(
        Wording.symptom(fields.text("symptom")),
        place,
        EnumWords.of(Entry.Answer.class, answer),
        fields.has("entries") ? fields.integers("entries", 1) : List.of(),
        fields.has("asked") && fields.yesNo("asked"));
  }

  private static void writeSymptom(Entry.Symptom symptom, ObjectNode object) {
    object.put("symptom", symptom.symptom());
    if (!symptom.place().isEmpty()) {
      object.put("place", symptom.place());
    }
    object.put("answer", EnumWords.word(symptom.answer()));
    if (!symptom.entries().isEmpty()) {
      ArrayNode entries = object.putArray("entries");
      symptom.entries().forEach(entries::add);
    }
    if (symptom.asked()) {
      object.put("asked", true);
    }
  }

  private static void putAll(ObjectNode object, Map<String, String> values) {
    values.forEach(object::put);
  }

  private static void addAll(ArrayNode array, List<String> values) {
    values.forEach(array::add);
  }
}
