package straywire.sitting;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import straywire.format.BadEntry;
import straywire.format.Nearest;
import straywire.module.Entry;
import straywire.module.EntryWords;
import straywire.module.LampState;
import straywire.module.Module;
import straywire.module.Point;
import straywire.module.Word;

/** The one reading that a step asks for, and how a few keystrokes give it. */
public sealed interface Wanted {

  /**
   * Makes the reading's entry, or entries, of a short answer.
   *
   * @throws BadEntry when the answer does not fit, with what would be right
   */
  List<Entry> read(String answer, Module module);

  /** What to type, with an example. */
  String howToAnswer();

  /** True when this entry is the reading asked for, or one of several. */
  boolean answeredBy(Entry entry, Module module);

  /** Lamps to look at, by word. */
  record Lamps(List<String> words) implements Wanted {
    public Lamps {
      words = List.copyOf(words);
    }

    @Override
    public List<Entry> read(String answer, Module module) {
      List<String> marks = byWord(Arrays.asList(answer.strip().split("[\\s,]+")), module);
      if (marks.stream().allMatch(m -> m.matches("[10df-]+|0[xX][0-9a-fA-F]+|=[0-9]+"))
          && marks.size() <= words.size()) {
        StringBuilder line = new StringBuilder("see");
        for (int i = 0; i < marks.size(); i++) {
          line.append(' ').append(words.get(i)).append(' ').append(marks.get(i));
        }
        return List.of(new EntryWords(module).parse(line.toString()));
      }
      try {
        return List.of(new EntryWords(module).parse("see " + answer.replace(",", " ")));
      } catch (BadEntry e) {
        throw new BadEntry("expected " + howToAnswer() + "; got " + answer.strip());
      }
    }

    /** Marks with gaps inside a word, put together where their number is right. */
    private List<String> byWord(List<String> marks, Module module) {
      String all = String.join("", marks);
      if (marks.size() <= words.size() || all.length() != lamps(module).size()) {
        return marks;
      }
      List<String> whole = new ArrayList<>();
      int at = 0;
      for (String word : words) {
        int lamps = new Lamps(List.of(word)).lamps(module).size();
        whole.add(all.substring(at, at + lamps));
        at += lamps;
      }
      return whole;
    }

    @Override
    public String howToAnswer() {
      return "lamps of "
          + String.join(" and ", words)
          + ", high bit first: 1 lit, 0 dark, d dim, f flickering, - not looked at";
    }

    private static final Pattern BUT = Pattern.compile("(?:ok,?\\s+)?but\\s+(.+)");

    /**
     * As {@link #read}, where one picture is expected: {@code ok} when it is what the lamps show,
     * {@code but R3 dim R5} when single lamps differ; one without a state is the other way round.
     *
     * @param pictures as expected, each once
     */
    List<Entry> read(String answer, Module module, List<String> pictures) {
      String typed = answer.strip();
      Matcher but = BUT.matcher(typed);
      if (!typed.equals("ok") && !but.matches()) {
        return read(answer, module);
      }
      if (pictures.size() != 1) {
        throw new BadEntry(
            "no one picture is expected here; type what the lamps show: " + howToAnswer());
      }
      Map<String, LampState> shown = new TreeMap<>(seen(pictures.get(0), module));
      if (but.matches()) {
        change(shown, List.of(but.group(1).split("[\\s,]+")), module);
      }
      return List.of(new Entry.Seen(shown));
    }

    /** The lamps of an expected picture; what may be either was not looked at. */
    private Map<String, LampState> seen(String picture, Module module) {
      String line = "see " + picture.replace(",", " ").replace('?', '-');
      return ((Entry.Seen) new EntryWords(module).parse(line)).lamps();
    }

    private static void change(Map<String, LampState> shown, List<String> but, Module module) {
      EntryWords words = new EntryWords(module);
      for (int i = 0; i < but.size(); i++) {
        String lamp = but.get(i);
        LampState expected = shown.getOrDefault(lamp, LampState.NOT_LOOKED);
        boolean named = i + 1 < but.size() && !shown.containsKey(but.get(i + 1));
        if (named) {
          i++;
          shown.putAll(((Entry.Seen) words.parse("see " + lamp + " " + but.get(i))).lamps());
        } else if (expected == LampState.LIT || expected == LampState.DARK) {
          shown.put(lamp, expected == LampState.LIT ? LampState.DARK : LampState.LIT);
        } else {
          throw new BadEntry(
              shown.containsKey(lamp)
                  ? lamp + " may be either; say which, such as " + lamp + " lit"
                  : "the step asks for no lamp " + lamp + Nearest.hint(lamp, shown.keySet()));
        }
      }
    }

    @Override
    public boolean answeredBy(Entry entry, Module module) {
      return entry instanceof Entry.Seen seen && seen.lamps().keySet().containsAll(lamps(module));
    }

    /** The lamps, word by word, high bit first. */
    public List<String> lamps(Module module) {
      return words.stream()
          .flatMap(w -> module.lampWord(w).map(Word::members).orElse(List.of(w)).stream())
          .toList();
    }
  }

  /** A meter reading. */
  record Volts(Point point) implements Wanted {
    @Override
    public List<Entry> read(String answer, Module module) {
      return List.of(new EntryWords(module).parse("measure " + point + " " + answer));
    }

    @Override
    public String howToAnswer() {
      return "volts, such as 0.2";
    }

    @Override
    public boolean answeredBy(Entry entry, Module module) {
      return entry instanceof Entry.Measured e && e.point().equals(point);
    }
  }

  /** Meter readings at several points in turn. */
  record Round(List<Point> points) implements Wanted {
    public Round {
      points = List.copyOf(points);
    }

    @Override
    public List<Entry> read(String answer, Module module) {
      String joined = answer.strip().replaceAll("(?<=[0-9])\\s+(?=m?[vV]\\b)", "");
      List<String> volts = Arrays.asList(joined.split("\\s+"));
      if (volts.size() != points.size()) {
        throw new BadEntry("expected " + points.size() + " readings in volts, got " + volts.size());
      }
      EntryWords words = new EntryWords(module);
      List<Entry> entries = new ArrayList<>();
      for (int i = 0; i < volts.size(); i++) {
        entries.add(words.parse("measure " + points.get(i) + " " + volts.get(i)));
      }
      return entries;
    }

    @Override
    public String howToAnswer() {
      return points.size() + " readings in volts, in this order, such as 0 0 0.1";
    }

    @Override
    public boolean answeredBy(Entry entry, Module module) {
      return entry instanceof Entry.Measured e && points.contains(e.point());
    }
  }

  /** A logic probe reading. */
  record Shows(Point point) implements Wanted {
    @Override
    public List<Entry> read(String answer, Module module) {
      return List.of(new EntryWords(module).parse("probe " + point + " " + whole(answer, HOW)));
    }

    private static final List<String> HOW = List.of("low", "high", "neither", "pulses");

    @Override
    public String howToAnswer() {
      return String.join(", ", HOW) + " (the first letter will do)";
    }

    @Override
    public boolean answeredBy(Entry entry, Module module) {
      return entry instanceof Entry.Probed e && e.point().equals(point);
    }
  }

  /** Whether two points are joined, power off. */
  record Joined(Point from, Point to) implements Wanted {
    @Override
    public List<Entry> read(String answer, Module module) {
      return List.of(new Entry.Continuity(from, to, yes(answer, List.of("yes", "no"))));
    }

    @Override
    public String howToAnswer() {
      return "yes when it beeps, no when it does not (the first letter will do)";
    }

    @Override
    public boolean answeredBy(Entry entry, Module module) {
      return entry instanceof Entry.Continuity e && e.from().equals(from) && e.to().equals(to);
    }
  }

  /** Whether something looks as it should. */
  record AsMeant(String subject) implements Wanted {
    @Override
    public List<Entry> read(String answer, Module module) {
      return List.of(new Entry.Inspected(subject, yes(answer, List.of("ok", "wrong"))));
    }

    @Override
    public String howToAnswer() {
      return "ok or wrong (the first letter will do)";
    }

    @Override
    public boolean answeredBy(Entry entry, Module module) {
      return entry instanceof Entry.Inspected e && e.subject().equals(subject);
    }
  }

  /** A part exchanged. */
  record Done(String part) implements Wanted {
    @Override
    public List<Entry> read(String answer, Module module) {
      whole(answer, List.of("done"));
      return List.of(new Entry.Exchanged(part));
    }

    @Override
    public String howToAnswer() {
      return "done, once the other part is in";
    }

    @Override
    public boolean answeredBy(Entry entry, Module module) {
      return entry instanceof Entry.Exchanged e && e.part().equals(part);
    }
  }

  /** A question about what was noticed. */
  record Noticed(String symptom, String place) implements Wanted {
    @Override
    public List<Entry> read(String answer, Module module) {
      boolean yes = yes(answer, List.of("yes", "no"));
      return List.of(answer(yes ? Entry.Answer.YES : Entry.Answer.NO));
    }

    /** The entry for an answer; "unknown" is an answer as well. */
    Entry answer(Entry.Answer answer) {
      return new Entry.Symptom(symptom, place, answer, List.of(), true);
    }

    @Override
    public String howToAnswer() {
      return "yes or no (the first letter will do)";
    }

    @Override
    public boolean answeredBy(Entry entry, Module module) {
      return entry instanceof Entry.Symptom e
          && e.symptom().equals(symptom)
          && e.place().equals(place);
    }
  }

  /** The word that an answer begins. */
  private static String whole(String answer, List<String> words) {
    String typed = answer.strip();
    return words.stream()
        .filter(word -> !typed.isEmpty() && word.startsWith(typed))
        .findFirst()
        .orElseThrow(
            () ->
                new BadEntry(
                    "expected "
                        + words.stream().collect(Collectors.joining(" or "))
                        + ", got "
                        + (typed.isEmpty() ? "nothing" : typed)));
  }

  private static boolean yes(String answer, List<String> yesThenNo) {
    return whole(answer, yesThenNo).equals(yesThenNo.get(0));
  }
}
