package straywire.module;

import java.util.ArrayList;
import java.util.List;
import straywire.format.BadEntry;
import straywire.format.Nearest;

/**
 * Entries as a person types them in a terminal, one line each: {@code set address 0001 drive low},
 * {@code measure U1.3 row 0.2}. Printing an entry and parsing the line gives the entry again.
 */
public final class EntryWords {
  private final List<EntryVerb<?>> verbs;

  public EntryWords(Module module) {
    this(module, List.of());
  }

  /**
   * Words for a module whose symptoms are known.
   *
   * @param symptoms ids that can be typed; when there are none, any id is taken
   */
  public EntryWords(Module module, List<String> symptoms) {
    List<EntryVerb<?>> all = new ArrayList<>();
    all.addAll(new HandVerbs(module).all());
    all.addAll(new EyeVerbs(module).all());
    all.addAll(new TalkVerbs(module, symptoms).all());
    verbs = List.copyOf(all);
  }

  /** The verbs, in the order of the documentation. */
  public List<String> verbs() {
    return verbs.stream().map(EntryVerb::name).toList();
  }

  /** An example line for each verb, in the same order. */
  public List<String> examples() {
    return verbs.stream().map(EntryVerb::example).toList();
  }

  /**
   * Makes an entry of a typed line.
   *
   * @throws BadEntry in one line, with what would be right
   */
  public Entry parse(String line) {
    Typed typed = new Typed(line);
    String name = typed.next("an entry, such as " + verbs.get(0).example());
    EntryVerb<?> verb =
        verbs.stream()
            .filter(v -> v.name().equals(name))
            .findFirst()
            .orElseThrow(
                () -> new BadEntry("no entry starts with " + name + Nearest.hint(name, verbs())));
    try {
      return verb.parse().apply(typed);
    } catch (BadEntry e) {
      throw new BadEntry(name + ": " + e.getMessage());
    }
  }

  /** The entry as the line that a person would type. */
  public String print(Entry entry) {
    return verbs.stream()
        .filter(verb -> verb.type().isInstance(entry))
        .findFirst()
        .orElseThrow()
        .printed(entry);
  }

  /**
   * What can stand in place of the last of {@code words}, given those before it.
   *
   * @param words words typed so far; the last may be begun only, or empty
   * @return whole words that begin as the last does, in a sensible order; empty when anything or
   *     nothing fits
   */
  public List<String> completions(List<String> words) {
    if (words.size() <= 1) {
      return begun(verbs(), words.isEmpty() ? "" : words.get(0));
    }
    String last = words.get(words.size() - 1);
    List<String> before = words.subList(1, words.size() - 1);
    return verbs.stream()
        .filter(verb -> verb.name().equals(words.get(0)))
        .findFirst()
        .map(verb -> begun(verb.next().apply(before), last))
        .orElse(List.of());
  }

  private static List<String> begun(List<String> all, String start) {
    return all.stream().filter(word -> word.startsWith(start)).toList();
  }
}
