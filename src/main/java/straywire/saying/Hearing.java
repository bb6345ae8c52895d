package straywire.saying;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collection;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;
import java.util.function.Predicate;
import straywire.advice.SymptomEntry;
import straywire.advice.SymptomTable;
import straywire.format.Nearest;
import straywire.module.Entry;
import straywire.module.Module;

/**
 * Understands free words about one module. Words are compared as sets, rare ones counting more;
 * words that mean the same, endings and small misspellings are alike.
 */
public final class Hearing {
  /** At least so alike is heard, 0 to 1. */
  private static final double CLEAR = 0.55;

  /** So much more alike than anything else. */
  private static final double LEAD = 0.1;

  /** At least so alike may be meant. */
  private static final double MAYBE = 0.38;

  /** May be meant beside the likeliest. */
  private static final double BESIDE = 0.25;

  private static final int MOST = 6;

  /** What is left when one of two says "not" and the other does not. */
  private static final double TURNED_ROUND = 0.5;

  private static final String NOT = "not";
  private static final int SHORTEST_MISSPELT = 4;
  private static final int SHORTEST_ENDING = 5;
  private static final List<String> ENDINGS = List.of("ing", "ed", "es", "s", "e");

  private final Module module;
  private final WordTable table;
  private final Predicate<String> here;
  private final Map<String, String> same = new HashMap<>();
  private final List<Phrase> phrases = new ArrayList<>();
  private final Map<String, Double> weights = new HashMap<>();

  /** One way to say something, as its words. */
  private record Phrase(String target, boolean symptom, Set<String> words) {}

  private record Hit(Phrase phrase, double alike) {
    static final Comparator<Hit> FALLING =
        Comparator.comparingDouble(Hit::alike).reversed().thenComparing(h -> h.phrase().target());
  }

  /**
   * Ears for one module.
   *
   * @param here whether a symptom, by its id, makes sense at the module; asked only for what is
   *     heard
   * @param words a table of the user's own in place of the shipped one
   */
  public Hearing(Module module, Predicate<String> here, Optional<Path> words) {
    this(module, here, words.map(WordTable::read).orElseGet(WordTable::shipped));
  }

  Hearing(Module module, Predicate<String> here, WordTable table) {
    this.module = module;
    this.here = here;
    this.table = table;
    table.same().forEach((word, first) -> same.put(stem(word), stem(first)));
    table.say().forEach((id, ways) -> ways.forEach(way -> add(id, true, way)));
    table.help().forEach((command, ways) -> ways.forEach(way -> add(command, false, way)));
    Map<String, Integer> counts = new HashMap<>();
    phrases.forEach(p -> p.words().forEach(w -> counts.merge(w, 1, Integer::sum)));
    counts.forEach((word, n) -> weights.put(word, Math.log(1 + (double) phrases.size() / n)));
  }

  private void add(String target, boolean symptom, String way) {
    phrases.add(new Phrase(target, symptom, words(split(way))));
  }

  /** What a line means; parts of it that each mean something are taken each for itself. */
  public Heard hear(String line) {
    List<String> clauses =
        Arrays.stream(line.split("[,;.!?]+(?=\\s|$)| and ", -1)).filter(c -> !c.isBlank()).toList();
    Heard whole = one(line);
    if (clauses.size() < 2 || (whole instanceof Heard.Clear clear && onlyHelp(clear))) {
      return whole;
    }
    List<Meaning> meanings = new ArrayList<>();
    for (String clause : clauses) {
      if (!(one(clause) instanceof Heard.Clear clear)) {
        return whole;
      }
      clear.meanings().stream().filter(m -> !meanings.contains(m)).forEach(meanings::add);
    }
    return new Heard.Clear(meanings);
  }

  private static boolean onlyHelp(Heard.Clear clear) {
    return clear.meanings().stream().allMatch(Meaning.Help.class::isInstance);
  }

  /** Signs of danger in a line of any kind. */
  public List<Entry.Symptom> danger(String line) {
    List<String> split = split(line);
    boolean not = split.stream().anyMatch(table.not()::contains);
    TreeSet<String> symptoms = new TreeSet<>();
    split.stream()
        .filter(table.danger()::containsKey)
        .forEach(w -> symptoms.add(table.danger().get(w)));
    Entry.Answer answer = not ? Entry.Answer.NO : Entry.Answer.YES;
    return symptoms.stream().map(s -> symptom(s, split, answer)).toList();
  }

  /** Everything that makes sense at the module, in the order of the table of symptoms. */
  public List<Meaning> all() {
    return SymptomTable.shipped().ids().stream()
        .filter(table.say()::containsKey)
        .filter(here)
        .map(id -> told(symptom(id, List.of(), Entry.Answer.YES)))
        .toList();
  }

  private Heard one(String line) {
    List<Entry.Symptom> danger = danger(line);
    if (!danger.isEmpty()) {
      return new Heard.Clear(danger.stream().map(this::told).toList());
    }
    List<String> split = split(line);
    Optional<String> named =
        split(line.replace('-', '_')).stream()
            .map(w -> w.replace('_', '-'))
            .filter(table.say()::containsKey)
            .filter(here)
            .findFirst();
    if (named.isPresent()) {
      return new Heard.Clear(List.of(told(symptom(named.get(), split, Entry.Answer.YES))));
    }
    List<Hit> hits = hits(words(split));
    if (hits.isEmpty()) {
      return new Heard.Nothing();
    }
    double best = hits.get(0).alike();
    boolean alone = hits.size() == 1 || hits.get(1).alike() < best - LEAD;
    if (best >= CLEAR && alone) {
      return new Heard.Clear(List.of(meaning(hits.get(0), split)));
    }
    return new Heard.Several(
        hits.stream()
            .filter(hit -> hit.alike() >= best - BESIDE)
            .limit(MOST)
            .map(hit -> meaning(hit, split))
            .toList());
  }

  /** The best way of saying each thing, where it is alike enough and makes sense here. */
  private List<Hit> hits(Set<String> said) {
    Map<String, Hit> best = new HashMap<>();
    for (Phrase phrase : phrases) {
      double alike = alike(said, phrase.words());
      if (alike >= MAYBE) {
        best.merge(
            phrase.target() + phrase.symptom(),
            new Hit(phrase, alike),
            (a, b) -> a.alike() >= b.alike() ? a : b);
      }
    }
    return best.values().stream()
        .filter(hit -> !hit.phrase().symptom() || here.test(hit.phrase().target()))
        .sorted(Hit.FALLING)
        .toList();
  }

  private double alike(Set<String> said, Set<String> phrase) {
    double common = 0;
    double all = 0;
    for (String word : said) {
      double weight = weights.getOrDefault(word, 2.0);
      all += weight;
      common += phrase.contains(word) ? weight : 0;
    }
    for (String word : phrase) {
      all += weights.get(word);
    }
    if (phrase.stream().noneMatch(word -> !word.equals(NOT) && said.contains(word))) {
      return 0;
    }
    double alike = 2 * common / all;
    return said.contains(NOT) == phrase.contains(NOT) ? alike : alike * TURNED_ROUND;
  }

  private Meaning meaning(Hit hit, List<String> split) {
    String target = hit.phrase().target();
    return hit.phrase().symptom()
        ? told(symptom(target, split, Entry.Answer.YES))
        : new Meaning.Help(target, table.help().get(target).get(0));
  }

  private Meaning told(Entry.Symptom entry) {
    String place = entry.place().isEmpty() ? "" : entry.place() + ": ";
    String not = entry.answer() == Entry.Answer.NO ? "not so: " : "";
    List<String> ways = table.say().getOrDefault(entry.symptom(), List.of(entry.symptom()));
    return new Meaning.Told(entry, place + not + ways.get(0));
  }

  private Entry.Symptom symptom(String id, List<String> split, Entry.Answer answer) {
    SymptomEntry.About about = SymptomTable.shipped().symptom(id).orElseThrow().about();
    return new Entry.Symptom(id, place(about, split), answer, List.of());
  }

  /** The first label in the line that such a symptom can be about. */
  private String place(SymptomEntry.About about, List<String> split) {
    List<String> labels = new ArrayList<>();
    if (about == SymptomEntry.About.WORD || about == SymptomEntry.About.LAMP) {
      module.lampWords().forEach(word -> labels.add(word.label()));
      labels.addAll(module.lamps().keySet());
    } else if (about == SymptomEntry.About.PART) {
      labels.addAll(module.parts().keySet());
    }
    return split.stream().flatMap(word -> label(word, labels).stream()).findFirst().orElse("");
  }

  private static Optional<String> label(String word, Collection<String> labels) {
    return labels.stream().filter(label -> label.equalsIgnoreCase(word)).findFirst();
  }

  private static List<String> split(String line) {
    String plain = line.toLowerCase(Locale.ROOT).replaceAll("['’]", "").replace("let go", "letgo");
    plain = plain.replaceAll("power(ed|s)?[ -]?(up|on)", "powerup").replace('-', ' ');
    return Arrays.stream(plain.split("[^\\p{Alnum}_]+")).filter(w -> !w.isEmpty()).toList();
  }

  private Set<String> words(List<String> split) {
    TreeSet<String> words = new TreeSet<>();
    for (String word : split) {
      if (table.not().contains(word)) {
        words.add(NOT);
      } else if (label(word, module.lamps().keySet()).isPresent()) {
        words.addAll(List.of("one", "lamp"));
      } else if (label(word, module.parts().keySet()).isPresent()) {
        words.add("chip");
      } else if (same.containsKey(stem(word)) || !table.little().contains(word)) {
        words.add(meant(word));
      }
    }
    return words;
  }

  /** The word that stands for it, a misspelling put right when it is like one that is known. */
  private String meant(String word) {
    String stem = stem(word);
    if (same.containsKey(stem)) {
      return same.get(stem);
    }
    // While the phrases themselves are read there is nothing to put right by.
    if (weights.isEmpty() || weights.containsKey(stem) || stem.length() < SHORTEST_MISSPELT) {
      return stem;
    }
    TreeSet<String> known = new TreeSet<>(weights.keySet());
    known.addAll(same.keySet());
    // Hardly anybody misspells how a word begins.
    known.removeIf(k -> k.length() < SHORTEST_MISSPELT || k.charAt(0) != stem.charAt(0));
    return Nearest.to(stem, known).map(k -> same.getOrDefault(k, k)).orElse(stem);
  }

  private static String stem(String word) {
    for (String ending : ENDINGS) {
      boolean ends = word.endsWith(ending) && !word.endsWith("ss");
      if (ends && word.length() >= SHORTEST_ENDING) {
        String stem = word.substring(0, word.length() - ending.length());
        return stem.endsWith("e") ? stem.substring(0, stem.length() - 1) : stem;
      }
    }
    return word;
  }
}
