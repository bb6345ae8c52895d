package straywire.advice;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;
import org.snakeyaml.engine.v2.api.Load;
import org.snakeyaml.engine.v2.api.LoadSettings;
import straywire.format.BadEntry;
import straywire.format.InputError;
import straywire.format.Nearest;
import straywire.format.TextFile;

/**
 * All symptoms, in the order of {@code tables/symptoms.yaml}.
 *
 * @param entries ids differ
 */
public record SymptomTable(List<SymptomEntry> entries) {
  private static final String TABLE = "tables/symptoms.yaml";
  private static final Set<String> FIELDS = Set.of("id", "question", "kind", "about", "seconds");

  public SymptomTable {
    entries = List.copyOf(entries);
  }

  /**
   * The table that ships with the tool.
   *
   * @throws InputError when an entry lacks a field, has another or a bad value, or repeats an id
   */
  public static SymptomTable shipped() {
    return Shipped.SHIPPED;
  }

  /** Read when first asked for, and once. */
  private static final class Shipped {
    static final SymptomTable SHIPPED = parse(TABLE, TextFile.shipped("/" + TABLE));
  }

  static SymptomTable parse(String file, String yaml) {
    LoadSettings settings = LoadSettings.builder().setLabel(TABLE).build();
    return read(file, new Load(settings).loadFromString(yaml));
  }

  /**
   * Insists that there is a symptom with this id.
   *
   * @throws BadEntry that names the nearest
   */
  public void check(String id) {
    if (symptom(id).isEmpty()) {
      throw new BadEntry("no symptom is called " + id + Nearest.hint(id, ids()));
    }
  }

  /** All ids, in the order of the table. */
  public List<String> ids() {
    return entries.stream().map(SymptomEntry::id).toList();
  }

  /** The symptom with this id. */
  public Optional<SymptomEntry> symptom(String id) {
    return entries.stream().filter(e -> e.id().equals(id)).findFirst();
  }

  private static SymptomTable read(String file, Object table) {
    if (!(table instanceof List<?> rows)) {
      throw new InputError(file, 0, "a list of symptoms is needed");
    }
    List<SymptomEntry> entries = new ArrayList<>();
    Set<String> ids = new TreeSet<>();
    for (Object row : rows) {
      if (!(row instanceof Map<?, ?> fields) || !fields.keySet().equals(FIELDS)) {
        throw new InputError(
            file, 0, "symptom " + row + " needs the fields " + new TreeSet<>(FIELDS) + " only");
      }
      SymptomEntry entry = entry(file, fields);
      if (!ids.add(entry.id())) {
        throw new InputError(file, 0, "symptom " + entry.id() + " is there twice");
      }
      entries.add(entry);
    }
    return new SymptomTable(entries);
  }

  private static SymptomEntry entry(String file, Map<?, ?> fields) {
    String id = String.valueOf(fields.get("id"));
    if (!(fields.get("seconds") instanceof Integer seconds) || seconds <= 0) {
      throw new InputError(
          file,
          0,
          "symptom " + id + ": seconds is a whole number above 0, got " + fields.get("seconds"));
    }
    return new SymptomEntry(
        id,
        String.valueOf(fields.get("question")),
        word(file, id, "kind", fields, SymptomEntry.Kind.values()),
        word(file, id, "about", fields, SymptomEntry.About.values()),
        seconds);
  }

  private static <T extends Enum<T>> T word(
      String file, String id, String field, Map<?, ?> fields, T[] values) {
    String word = String.valueOf(fields.get(field));
    return Arrays.stream(values)
        .filter(v -> v.name().toLowerCase(Locale.ROOT).equals(word))
        .findFirst()
        .orElseThrow(
            () ->
                new InputError(
                    file,
                    0,
                    "symptom "
                        + id
                        + ": "
                        + field
                        + " is one of "
                        + Arrays.toString(values).toLowerCase(Locale.ROOT)
                        + ", got "
                        + word));
  }
}
