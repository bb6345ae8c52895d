package straywire.observe;

import java.nio.file.Path;
import java.util.Arrays;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import straywire.format.InputError;
import straywire.format.TextFile;
import straywire.format.YamlValue;

/**
 * The numbers of {@code tables/ranking.yaml}. Each stands once: what scores an observation and what
 * judges beforehand what it would tell ask the same methods.
 */
public final class RankingNumbers {
  private static final String FILE = "ranking.yaml";
  private static final List<String> STATUS = List.of("source", "estimate", "learned");

  private final Map<RankingNumber, Double> values = new EnumMap<>(RankingNumber.class);

  private RankingNumbers() {}

  /** The table that ships with the program. */
  public static RankingNumbers shipped() {
    return whole(FILE, TextFile.shipped("/tables/" + FILE));
  }

  /**
   * The shipped table with the rows of {@code file} put over it.
   *
   * @throws InputError when the file cannot be read, or a row is unknown or out of range
   */
  public static RankingNumbers over(Path file) {
    return over(shipped(), file.toString(), TextFile.read(file));
  }

  static RankingNumbers whole(String file, String text) {
    RankingNumbers numbers = new RankingNumbers();
    List<String> rows = Arrays.stream(RankingNumber.values()).map(RankingNumber::row).toList();
    Map<String, YamlValue> fields = YamlValue.parse(file, text).fields(rows, List.of());
    List<String> all = List.of("value", "unit", "status", "meaning");
    numbers.take(fields, all, List.of());
    return numbers;
  }

  static RankingNumbers over(RankingNumbers below, String file, String text) {
    RankingNumbers numbers = new RankingNumbers();
    numbers.values.putAll(below.values);
    List<String> rows = Arrays.stream(RankingNumber.values()).map(RankingNumber::row).toList();
    Map<String, YamlValue> fields = YamlValue.parse(file, text).fields(List.of(), rows);
    numbers.take(fields, List.of("value"), List.of("unit", "status", "meaning"));
    return numbers;
  }

  private void take(Map<String, YamlValue> rows, List<String> required, List<String> optional) {
    for (RankingNumber number : RankingNumber.values()) {
      if (rows.containsKey(number.row())) {
        Map<String, YamlValue> row = rows.get(number.row()).fields(required, optional);
        if (row.containsKey("unit")) {
          row.get("unit").oneOf(List.of(number.unit().word()));
        }
        if (row.containsKey("status")) {
          row.get("status").oneOf(STATUS);
        }
        double value = row.get("value").positive();
        if (number.unit().belowOne() && value >= 1) {
          throw row.get("value").wrong("expected a number between 0 and 1, got " + value);
        }
        values.put(number, value);
      }
    }
  }

  /** In the unit of the row. */
  public double of(RankingNumber number) {
    return values.get(number);
  }

  /** Probability that a careful look says "not as meant", by whether a fault shows there. */
  public double looksWrong(boolean shows) {
    return of(shows ? RankingNumber.LOOK_FINDS : RankingNumber.LOOK_IMAGINES);
  }

  /** Probability that it beeps, by whether the two points are joined. */
  public double beeps(boolean joined) {
    double right = of(RankingNumber.BEEP_IS_RIGHT);
    return joined ? right : 1 - right;
  }

  /** Probability that an exchange makes the trouble go, by whether it mends the fault. */
  public double cures(boolean mends) {
    return of(mends ? RankingNumber.CURE_WORKS : RankingNumber.CURED_BY_CHANCE);
  }
}
