package straywire.module;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import straywire.format.BadEntry;
import straywire.format.EnumWords;
import straywire.format.Nearest;

/** Entries for what is told in words: symptoms, repairs, notes and findings. */
final class TalkVerbs {
  private static final String NOTHING = "nothing";

  /** Behind an answer whose question was put. */
  private static final String ASKED = "asked";

  private final Module module;
  private final Labels labels;
  private final List<String> symptoms;

  TalkVerbs(Module module, List<String> symptoms) {
    this.module = module;
    this.symptoms = List.copyOf(symptoms);
    labels = new Labels(module);
  }

  List<EntryVerb<?>> all() {
    List<EntryVerb<?>> all = new ArrayList<>();
    all.add(
        new EntryVerb<>(
            Entry.Symptom.class,
            "symptom",
            "symptom all-zeros memory yes",
            this::symptom,
            TalkVerbs::symptom,
            this::nextOfSymptom));
    all.add(
        new EntryVerb<>(
            Entry.Repaired.class,
            "repaired",
            "repaired put the jumper U1.3-U2.3 back",
            typed -> new Entry.Repaired(Wording.line("repaired", typed.rest())),
            Entry.Repaired::action,
            before -> List.of()));
    all.add(
        new EntryVerb<>(
            Entry.Exchanged.class,
            "exchanged",
            "exchanged U3",
            typed -> {
              String part = labels.part(typed.next("a part"));
              typed.end();
              return new Entry.Exchanged(part);
            },
            Entry.Exchanged::part,
            before -> before.isEmpty() ? List.copyOf(module.parts().keySet()) : List.of()));
    all.add(
        new EntryVerb<>(
            Entry.Instruments.class,
            "have",
            "have eyes meter",
            typed -> new Entry.Instruments(Wording.instruments(listOrNothing(typed))),
            e -> listOrNothing(e.atHand(), " "),
            before -> EntryVerb.without(Wording.INSTRUMENTS, before)));
    all.add(
        new EntryVerb<>(
            Entry.Withdrawn.class,
            "withdraw",
            "withdraw 7",
            typed -> {
              int number = typed.number();
              typed.end();
              return new Entry.Withdrawn(number);
            },
            e -> String.valueOf(e.number()),
            before -> List.of()));
    all.add(
        new EntryVerb<>(
            Entry.Look.class,
            "look",
            "look memory bus",
            typed -> new Entry.Look(labels.look(typed.all("a lamp or word of lamps"))),
            e -> String.join(" ", e.what()),
            before -> EntryVerb.without(labels.lookedAt(), before)));
    all.add(
        new EntryVerb<>(
            Entry.Note.class,
            "note",
            "note the board was moved",
            typed -> new Entry.Note(Wording.line("note", typed.rest())),
            Entry.Note::text,
            before -> List.of()));
    all.add(
        new EntryVerb<>(
            Entry.Finding.class,
            "finding",
            "finding jumper-missing U1.3-U2.3 : the write wire was loose",
            TalkVerbs::finding,
            e -> listOrNothing(e.faults(), " ; ") + " : " + e.words(),
            before -> List.of()));
    all.add(
        new EntryVerb<>(
            Entry.Expected.class,
            "expect",
            "expect jumper-missing U1.3-U2.3 within 3",
            TalkVerbs::expected,
            e -> listOrNothing(e.faults(), " ; ") + " within " + e.withinSteps(),
            before -> List.of()));
    return all;
  }

  private Entry.Symptom symptom(Typed typed) {
    List<String> answers = EnumWords.words(Entry.Answer.values());
    String id = Wording.symptom(typed.next("a symptom, such as all-zeros"));
    if (!symptoms.isEmpty() && !symptoms.contains(id)) {
      throw new BadEntry("no symptom is called " + id + Nearest.hint(id, symptoms));
    }
    String place = "";
    if (typed.more() && !answers.contains(typed.peek())) {
      place = labels.place(typed.next("a place"));
    }
    String answer = typed.more() ? typed.oneOf(answers) : EnumWords.word(Entry.Answer.YES);
    List<Integer> entries = new ArrayList<>();
    boolean asked = typed.more() && typed.peek().equals(ASKED);
    if (asked) {
      typed.next(ASKED);
    }
    while (typed.more()) {
      entries.add(typed.number());
    }
    return new Entry.Symptom(id, place, EnumWords.of(Entry.Answer.class, answer), entries, asked);
  }

  private static String symptom(Entry.Symptom symptom) {
    List<String> words = new ArrayList<>(List.of(symptom.symptom()));
    if (!symptom.place().isEmpty()) {
      words.add(symptom.place());
    }
    words.add(EnumWords.word(symptom.answer()));
    if (symptom.asked()) {
      words.add(ASKED);
    }
    symptom.entries().forEach(n -> words.add(String.valueOf(n)));
    return String.join(" ", words);
  }

  private List<String> nextOfSymptom(List<String> before) {
    List<String> answers = EnumWords.words(Entry.Answer.values());
    if (before.isEmpty()) {
      return symptoms;
    }
    if (before.size() == 1) {
      List<String> next = new ArrayList<>(answers);
      next.addAll(labels.all());
      return next;
    }
    return before.size() == 2 && !answers.contains(before.get(1)) ? answers : List.of();
  }

  private static Entry.Finding finding(Typed typed) {
    String rest = typed.rest();
    int colon = rest.indexOf(" : ");
    if (colon < 0) {
      throw new BadEntry("expected what was found, then \" : \" and words for it");
    }
    return new Entry.Finding(
        faults(rest.substring(0, colon)), Wording.line("words", rest.substring(colon + 3)));
  }

  private static Entry.Expected expected(Typed typed) {
    String rest = typed.rest();
    int within = rest.lastIndexOf(" within ");
    String steps = within < 0 ? "" : rest.substring(within + " within ".length());
    if (!steps.matches("[0-9]{1,6}")) {
      throw new BadEntry("expected what must be found, then \"within\" and a number of steps");
    }
    return new Entry.Expected(faults(rest.substring(0, within)), Integer.parseInt(steps));
  }

  private static List<String> faults(String text) {
    return text.strip().equals(NOTHING)
        ? List.of()
        : Wording.faults(Arrays.stream(text.split(" ; ", -1)).map(String::strip).toList());
  }

  private static List<String> listOrNothing(Typed typed) {
    List<String> all = typed.all("an instrument, or " + NOTHING);
    return all.equals(List.of(NOTHING)) ? List.of() : all;
  }

  private static String listOrNothing(List<String> list, String between) {
    return list.isEmpty() ? NOTHING : String.join(between, list);
  }
}
