package straywire.faults;

import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.SortedMap;
import java.util.TreeMap;
import java.util.stream.Stream;
import straywire.format.InputError;
import straywire.format.Nearest;
import straywire.format.TextFile;
import straywire.format.YamlValue;

/**
 * Reads the table of priors: the shipped {@code tables/priors.yaml}, and a person's own file that
 * overrides lines of it.
 */
public final class PriorsFile {
  private static final String FORMAT = "straywire-priors/1";
  private static final String SHIPPED = "/tables/priors.yaml";

  private final String file;
  private final SortedMap<Mechanism, Double> table = new TreeMap<>();
  private Optional<Double> nothingWrong = Optional.empty();
  private Optional<Double> strength = Optional.empty();

  private PriorsFile(String file) {
    this.file = file;
  }

  /** The shipped table. */
  public static Priors shipped() {
    return parseWhole("priors.yaml", TextFile.shipped(SHIPPED));
  }

  /**
   * The shipped table with the lines of {@code file} put over it.
   *
   * @throws InputError when the file cannot be read or a line of it is wrong
   */
  public static Priors over(Path file) {
    return parseOver(shipped(), file.toString(), TextFile.read(file));
  }

  static Priors parseWhole(String file, String text) {
    PriorsFile parsed = new PriorsFile(file);
    parsed.read(text);
    for (Mechanism mechanism : Mechanism.values()) {
      if (mechanism != Mechanism.NOTHING_WRONG && !parsed.table.containsKey(mechanism)) {
        throw new InputError(
            file, 0, "frequencies lacks " + mechanism.slug() + "; give it a number above 0");
      }
    }
    return new Priors(
        parsed.nothingWrong.orElseThrow(() -> parsed.lacks("nothing-wrong", "0.5")),
        parsed.strength.orElseThrow(() -> parsed.lacks("strength", "100")),
        parsed.table,
        new TreeMap<>());
  }

  static Priors parseOver(Priors below, String file, String text) {
    PriorsFile parsed = new PriorsFile(file);
    parsed.read(text);
    SortedMap<Mechanism, Double> table = new TreeMap<>(below.table());
    table.putAll(parsed.table);
    return new Priors(
        parsed.nothingWrong.orElse(below.nothingWrong()),
        parsed.strength.orElse(below.strength()),
        table,
        below.confirmed());
  }

  private void read(String text) {
    Map<String, YamlValue> fields =
        YamlValue.parse(file, text)
            .fields(List.of("format"), List.of("nothing-wrong", "strength", "frequencies"));
    fields.get("format").oneOf(List.of(FORMAT));
    nothingWrong = Optional.ofNullable(fields.get("nothing-wrong")).map(PriorsFile::probability);
    strength = Optional.ofNullable(fields.get("strength")).map(YamlValue::positive);
    if (fields.containsKey("frequencies")) {
      fields
          .get("frequencies")
          .fields()
          .forEach((name, value) -> table.put(mechanism(name, value), value.positive()));
    }
  }

  private static double probability(YamlValue value) {
    double probability = value.positive();
    if (probability >= 1) {
      throw value.wrong("expected a number between 0 and 1, got " + probability);
    }
    return probability;
  }

  private static Mechanism mechanism(String name, YamlValue value) {
    return Mechanism.ofSlug(name)
        .filter(m -> m != Mechanism.NOTHING_WRONG)
        .orElseThrow(() -> value.wrong("there is no such mechanism" + known(name)));
  }

  private static String known(String name) {
    return name.equals(Mechanism.NOTHING_WRONG.slug())
        ? " here; it stands outside frequencies, as a probability"
        : Nearest.hint(name, Stream.of(Mechanism.values()).map(Mechanism::slug).toList());
  }

  private InputError lacks(String key, String example) {
    return new InputError(file, 0, key + " is missing; write for example " + key + ": " + example);
  }
}
