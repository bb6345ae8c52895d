package straywire.sitting;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.stream.Collectors;
import straywire.advice.SymptomTable;
import straywire.faults.LegPlace;
import straywire.module.ControlState;
import straywire.module.End;
import straywire.module.Entry;
import straywire.module.EntryWords;
import straywire.module.Fitted;
import straywire.module.Jumper;
import straywire.module.Module;
import straywire.module.Point;
import straywire.module.Word;
import straywire.observe.Step;

/** Says a step in short lines: what to touch and set, what to expect, what it is good for. */
public final class StepWords {
  private final Module module;
  private final EntryWords typed;
  private final SymptomTable symptoms = SymptomTable.shipped();

  public StepWords(Module module) {
    this.module = module;
    typed = new EntryWords(module);
  }

  /** The whole step in one line. Equal for equal steps from equal positions of the controls. */
  public String line(Proposed step, ControlState state) {
    List<String> parts = handling(step.before(), state);
    parts.add(reading(step.wanted()));
    return String.join(", ", parts);
  }

  /** A step by itself in one line, as a check to make some time. */
  public String check(Step step) {
    return line(Proposed.of(step, true, 1, 0, List.of()), ControlState.atStart(module));
  }

  /** What the hand does, one line each; partly moved words are shown as they then stand. */
  public List<String> handling(List<Entry> entries, ControlState state) {
    List<String> lines = new ArrayList<>();
    ControlState now = state;
    for (Entry entry : entries) {
      now = now.after(entry);
      lines.add(typed.print(entry) + (entry instanceof Entry.Set set ? words(set, now) : ""));
    }
    return lines;
  }

  private String words(Entry.Set set, ControlState after) {
    Map<String, String> standing = new TreeMap<>();
    for (Word word : module.controlWords()) {
      long moved = word.members().stream().filter(set.levels()::containsKey).count();
      if (moved > 0 && moved < word.members().size()) {
        standing.put(
            word.label(),
            word.members().stream()
                .map(m -> after.levels().get(m) ? "1" : "0")
                .collect(Collectors.joining()));
      }
    }
    return standing.isEmpty()
        ? ""
        : standing.entrySet().stream()
            .map(e -> e.getKey() + " " + e.getValue())
            .collect(Collectors.joining(", ", " (", ")"));
  }

  /** What to read, in one line. */
  public String reading(Wanted wanted) {
    if (wanted instanceof Wanted.Lamps w) {
      return "look at " + String.join(" and ", w.words());
    }
    if (wanted instanceof Wanted.Volts w) {
      return "measure " + point(w.point());
    }
    if (wanted instanceof Wanted.Round w) {
      return "measure in turn the legs "
          + w.points().stream().map(this::shortPoint).collect(Collectors.joining(", "));
    }
    if (wanted instanceof Wanted.Shows w) {
      return "touch " + point(w.point()) + " with the logic probe";
    }
    if (wanted instanceof Wanted.Joined w) {
      return "does it beep from " + point(w.from()) + " to " + point(w.to()) + "?";
    }
    if (wanted instanceof Wanted.AsMeant w) {
      return "look over " + subject(w.subject());
    }
    if (wanted instanceof Wanted.Done w) {
      Fitted part = module.parts().get(w.part());
      return "put a known good "
          + part.part().type()
          + " "
          + part.family().name()
          + " in place of "
          + w.part();
    }
    Wanted.Noticed asked = (Wanted.Noticed) wanted;
    String question =
        symptoms
            .symptom(asked.symptom())
            .map(s -> s.question())
            .orElse("is it so: " + asked.symptom() + "?");
    return asked.place().isEmpty() ? question : asked.place() + ": " + question;
  }

  /** A point as a finger finds it. */
  public String point(Point point) {
    End end = point.end();
    if (end.kind() != End.Kind.PIN) {
      return end.toString();
    }
    Fitted part = module.parts().get(end.label());
    return (point.leg() ? "the leg of " : "the row of ")
        + end.label()
        + " pin "
        + end.pin()
        + " ("
        + part.part().pin(end.pin()).name()
        + ", "
        + LegPlace.of(end.pin(), part.part().pinCount()).words()
        + ")";
  }

  private String shortPoint(Point point) {
    End end = point.end();
    return end + " (" + module.parts().get(end.label()).part().pin(end.pin()).name() + ")";
  }

  private String subject(String subject) {
    if (!subject.contains(" ")) {
      return "the supply: which lead is plus";
    }
    String label = subject.substring(subject.indexOf(' ') + 1);
    return switch (subject.substring(0, subject.indexOf(' '))) {
      case "jumper" -> "the jumper " + label + ", both ends" + net(label);
      case "part" ->
          "part "
              + label
              + " ("
              + module.parts().get(label).part().type()
              + "): marking, notch, count of pins";
      case "leg" -> "the leg " + label + ": in its hole, clear of its neighbours";
      case "lamp" -> "lamp " + label + ": its resistor, which way round";
      case "control" -> "control " + label + ": its contact";
      default -> "the link of rail " + label;
    };
  }

  private String net(String jumper) {
    return module.jumpers().stream()
        .filter(j -> j.name().equals(jumper))
        .findFirst()
        .map(Jumper::net)
        .map(n -> " (net " + n + ")")
        .orElse("");
  }

  /** What a step is good for, in one line. */
  public String why(Proposed step) {
    return switch (step.purpose()) {
      case EXERCISE -> "the by-hand exercise, until something differs";
      case CONFIRM -> "shows whether the repair cured it";
      case CAUTION -> "safety comes first; nothing else is asked for before it is answered";
      case SEARCH -> whatItTells(step.expected());
    };
  }

  private static String whatItTells(List<String> expected) {
    Map<String, List<String>> ranks = new TreeMap<>();
    for (int i = 0; i < expected.size(); i++) {
      ranks.computeIfAbsent(expected.get(i), e -> new ArrayList<>()).add(String.valueOf(i + 1));
    }
    if (ranks.size() < 2) {
      return "tells the leading suspects from the others";
    }
    return ranks.values().stream()
        .sorted((a, b) -> a.get(0).compareTo(b.get(0)))
        .map(r -> String.join(" and ", r))
        .collect(Collectors.joining(" from ", "tells suspect ", ""));
  }
}
