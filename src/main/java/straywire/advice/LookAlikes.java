package straywire.advice;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;
import org.snakeyaml.engine.v2.api.Load;
import org.snakeyaml.engine.v2.api.LoadSettings;
import straywire.advice.WiringFact.LookAlike;
import straywire.advice.WiringFact.OtherFamily;
import straywire.format.InputError;
import straywire.format.TextFile;
import straywire.module.Fitted;
import straywire.module.Module;
import straywire.parts.Part;
import straywire.parts.PartLibrary;

/**
 * Part types and families that are taken for each other, read from {@code tables/look-alikes.yaml}.
 *
 * @param types pairs of part types with the same pins
 * @param families pairs of families, as meant and as bought
 */
record LookAlikes(List<LookAlike> types, List<OtherFamily> families) {
  private static final String TABLE = "/tables/look-alikes.yaml";

  LookAlikes {
    types = List.copyOf(types);
    families = List.copyOf(families);
  }

  /** Read once: a proposal should not wait for a file. */
  private static final LookAlikes SHIPPED = load();

  /** The table that ships with the tool. */
  static LookAlikes shipped() {
    return SHIPPED;
  }

  private static LookAlikes load() {
    LoadSettings settings = LoadSettings.builder().setLabel(TABLE).build();
    return read(new Load(settings).loadFromString(TextFile.shipped(TABLE)));
  }

  private static LookAlikes read(Object table) {
    List<LookAlike> types = new ArrayList<>();
    for (Map<?, ?> row : rows(table, "types", Set.of("type", "other", "how"))) {
      String type = text(row, "type");
      String other = text(row, "other");
      types.add(new LookAlike(type, other, text(row, "how")));
      types.add(new LookAlike(other, type, text(row, "how")));
    }
    List<OtherFamily> families = new ArrayList<>();
    for (Map<?, ?> row : rows(table, "families", Set.of("family", "other", "how"))) {
      families.add(new OtherFamily(text(row, "family"), text(row, "other"), text(row, "how")));
    }
    return new LookAlikes(types, families);
  }

  private static List<Map<?, ?>> rows(Object table, String name, Set<String> fields) {
    List<Map<?, ?>> rows = new ArrayList<>();
    if (table instanceof Map<?, ?> map && map.get(name) instanceof List<?> list) {
      for (Object row : list) {
        if (!(row instanceof Map<?, ?> entry) || !entry.keySet().equals(fields)) {
          throw new InputError(
              TABLE, 0, "entry " + row + " needs the fields " + new TreeSet<>(fields) + " only");
        }
        rows.add(entry);
      }
    }
    if (rows.isEmpty()) {
      throw new InputError(TABLE, 0, "a list named '" + name + "' is needed");
    }
    return rows;
  }

  private static String text(Map<?, ?> row, String field) {
    if (row.get(field) instanceof String text && !text.isBlank()) {
      return text;
    }
    throw new InputError(TABLE, 0, "entry " + row + " needs the text field '" + field + "'");
  }

  private static boolean samePins(PartLibrary library, LookAlike pair) {
    Optional<Part> meant = library.part(pair.type());
    return library
        .part(pair.other())
        .filter(o -> o.pinCount() == meant.map(Part::pinCount).orElse(0))
        .isPresent();
  }

  /**
   * The pairs that matter for a module: about its own types, with others the library knows and that
   * have as many pins.
   */
  List<WiringFact> facts(Module module) {
    TreeSet<String> own = new TreeSet<>();
    TreeSet<String> ownFamilies = new TreeSet<>();
    for (Fitted fitted : module.parts().values()) {
      own.add(fitted.part().type());
      ownFamilies.add(fitted.family().name());
    }
    List<WiringFact> facts = new ArrayList<>();
    types.stream()
        .filter(t -> own.contains(t.type()) && samePins(module.library(), t))
        .forEach(facts::add);
    families.stream()
        .filter(f -> ownFamilies.contains(f.family()))
        .filter(f -> module.library().family(f.other()).isPresent())
        .forEach(facts::add);
    return facts;
  }
}
