package straywire.saying;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;
import straywire.advice.SymptomTable;
import straywire.format.BadEntry;
import straywire.format.TextFile;
import straywire.format.YamlValue;

/**
 * The words of {@code tables/words.yaml}.
 *
 * @param little words that tell nothing
 * @param not words that turn the meaning round
 * @param same the word that stands for another
 * @param danger symptom by the word that is heard in any line
 * @param say ways to report each symptom, in the order of the table
 * @param help ways to ask, by what to type
 */
record WordTable(
    Set<String> little,
    Set<String> not,
    Map<String, String> same,
    Map<String, String> danger,
    Map<String, List<String>> say,
    Map<String, List<String>> help) {
  private static final String FILE = "words.yaml";

  /** What the shell knows to do, and so can be asked for. */
  private static final List<String> COMMANDS =
      List.of("next", "symptoms", "undo", "why", "repair", "help", "quit");

  static WordTable shipped() {
    return Shipped.SHIPPED;
  }

  /** Read when first asked for, and once. */
  private static final class Shipped {
    static final WordTable SHIPPED = parse(FILE, TextFile.shipped("/tables/" + FILE));
  }

  static WordTable read(Path file) {
    return parse(file.toString(), TextFile.read(file));
  }

  static WordTable parse(String file, String text) {
    List<String> all = List.of("little", "not", "same", "danger", "say", "help");
    Map<String, YamlValue> fields = YamlValue.parse(file, text).fields(all, List.of());
    Map<String, String> same = new TreeMap<>();
    for (YamlValue row : fields.get("same").items()) {
      List<String> words = words(row);
      for (String word : words) {
        if (same.putIfAbsent(word, words.get(0)) != null) {
          throw row.wrong(word + " is in two rows of words that mean the same");
        }
      }
    }
    Map<String, String> danger = new TreeMap<>();
    fields
        .get("danger")
        .fields()
        .forEach(
            (symptom, row) -> {
              known(symptom, row);
              words(row).forEach(word -> danger.put(word, symptom));
            });
    Map<String, List<String>> say = new LinkedHashMap<>();
    fields
        .get("say")
        .fields()
        .forEach(
            (symptom, row) -> {
              known(symptom, row);
              say.put(symptom, phrases(row));
            });
    Map<String, List<String>> help = new LinkedHashMap<>();
    fields
        .get("help")
        .fields(List.of(), COMMANDS)
        .forEach((command, row) -> help.put(command, phrases(row)));
    return new WordTable(
        new TreeSet<>(words(fields.get("little"))),
        new TreeSet<>(words(fields.get("not"))),
        same,
        danger,
        say,
        help);
  }

  private static void known(String symptom, YamlValue row) {
    try {
      SymptomTable.shipped().check(symptom);
    } catch (BadEntry e) {
      throw row.wrong(e.getMessage());
    }
  }

  private static List<String> words(YamlValue row) {
    return Arrays.asList(row.word().strip().split("\\s+"));
  }

  private static List<String> phrases(YamlValue row) {
    List<String> phrases = new ArrayList<>();
    row.items().forEach(item -> phrases.add(item.word()));
    if (phrases.isEmpty()) {
      throw row.wrong("expected at least one way to say it");
    }
    return List.copyOf(phrases);
  }
}
