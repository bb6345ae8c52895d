package straywire.module;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import straywire.format.BadEntry;

/** Names with values, as typed: {@code address 0001 drive low}. */
final class ValueWords<S> {
  private final WordValues<S> values;

  ValueWords(WordValues<S> values) {
    this.values = values;
  }

  Map<String, S> parse(Typed typed) {
    Map<String, String> pairs = new LinkedHashMap<>();
    while (typed.more()) {
      String label = typed.next("a name");
      String value = typed.next("a value for " + label);
      // A single switch or lamp may be typed as its mark: 1 for high or lit.
      String written = values.word(label).isPresent() ? value : values.nameOf(value);
      if (pairs.put(label, written) != null) {
        throw new BadEntry(label + " is given twice");
      }
    }
    return values.spread(pairs);
  }

  String print(Map<String, S> states) {
    List<String> words = new ArrayList<>();
    values.gather(states).forEach((label, value) -> words.addAll(List.of(label, value)));
    return String.join(" ", words);
  }

  List<String> next(List<String> before) {
    if (before.size() % 2 == 0) {
      List<String> named = new ArrayList<>();
      for (int i = 0; i < before.size(); i += 2) {
        named.add(before.get(i));
      }
      return EntryVerb.without(values.labels(), named);
    }
    String label = before.get(before.size() - 1);
    return values.singles().contains(label) ? values.names() : List.of();
  }
}
