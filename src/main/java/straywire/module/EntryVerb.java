package straywire.module;

import java.util.List;
import java.util.function.Function;

/**
 * How one kind of entry is typed.
 *
 * @param name first word of the line
 * @param parse takes the words after the name
 * @param print gives the words after the name
 * @param next what can follow the words after the name, all of them whole
 */
record EntryVerb<E extends Entry>(
    Class<E> type,
    String name,
    String example,
    Function<Typed, E> parse,
    Function<E, String> print,
    Function<List<String>, List<String>> next) {

  String printed(Entry entry) {
    return name + " " + print.apply(type.cast(entry));
  }

  static List<String> without(List<String> all, List<String> some) {
    return all.stream().filter(word -> !some.contains(word)).toList();
  }
}
