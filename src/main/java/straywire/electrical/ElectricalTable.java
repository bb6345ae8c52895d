package straywire.electrical;

import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import org.snakeyaml.engine.v2.api.Load;
import org.snakeyaml.engine.v2.api.LoadSettings;
import straywire.electrical.Currents.Input;
import straywire.electrical.Currents.Rated;
import straywire.format.TextFile;
import straywire.module.Fitted;
import straywire.parts.Family;

/** The numbers of {@code tables/electrical.yaml}, each with its source there. */
public final class ElectricalTable {
  private static final ElectricalTable SHIPPED = new ElectricalTable(load());

  private final Map<String, Currents> families = new TreeMap<>();
  private final Map<?, ?> table;

  private ElectricalTable(Map<?, ?> table) {
    this.table = table;
    section("families").forEach((name, row) -> families.put(name.toString(), currents(map(row))));
  }

  public static ElectricalTable shipped() {
    return SHIPPED;
  }

  private static Map<?, ?> load() {
    return (Map<?, ?>)
        new Load(LoadSettings.builder().build())
            .loadFromString(TextFile.shipped("/tables/electrical.yaml"));
  }

  private static Currents currents(Map<?, ?> row) {
    Map<?, ?> input = map(row.get("input"));
    return new Currents(
        rated(row, "low"),
        rated(row, "high"),
        rated(row, "bus-low"),
        rated(row, "bus-high"),
        curve((List<?>) row.get("low-curve")),
        curve((List<?>) row.get("high-curve")),
        new Input(
            number(input, "low-ma"),
            number(input, "high-ma"),
            number(input, "usual-low-ma"),
            number(input, "open-source")));
  }

  private static Rated rated(Map<?, ?> row, String name) {
    Map<?, ?> rated = map(row.get(name));
    return new Rated(number(rated, "volts"), number(rated, "ma"));
  }

  private static Curve curve(List<?> points) {
    return new Curve(
        points.stream()
            .map(List.class::cast)
            .map(p -> new Curve.Point(number(p.get(0)), number(p.get(1))))
            .toList());
  }

  /**
   * Currents of a family.
   *
   * @throws IllegalStateException when the table has no row for it
   */
  public Currents currents(Family family) {
    return Optional.ofNullable(families.get(family.name()))
        .orElseThrow(
            () ->
                new IllegalStateException("tables/electrical.yaml lacks family " + family.name()));
  }

  /** What one output of a part is rated for, at a low or a high. */
  public Rated rated(Fitted part, int pin, boolean high) {
    Currents family = currents(part.family());
    Rated ordinary = high ? family.high() : family.low();
    Rated bus = high ? family.busHigh() : family.busLow();
    Rated own = part.part().bus() ? bus : ordinary;
    String type = part.part().type();
    Map<?, ?> outputs = section("outputs");
    return Optional.ofNullable(outputs.get(type + "." + pin))
        .or(() -> Optional.ofNullable(outputs.get(type)))
        .map(row -> new Rated(own.volts(), number(map(row), high ? "high-ma" : "low-ma")))
        .orElse(own);
  }

  /**
   * What the outputs of a part usually give: the curve of its family, made as many times stronger
   * as their rating is higher. An inference for bus drivers and lamp drivers.
   */
  Curve curve(Fitted part, int pin, boolean high) {
    Currents family = currents(part.family());
    Rated ordinary = high ? family.high() : family.low();
    Curve curve = high ? family.highCurve() : family.lowCurve();
    return curve.stronger(rated(part, pin, high).milliamps() / ordinary.milliamps());
  }

  /** The two thresholds of a part whose inputs are Schmitt inputs; empty for any other part. */
  public Optional<Thresholds> schmitt(Fitted part) {
    Map<?, ?> schmitt = section("schmitt");
    if (!((List<?>) schmitt.get("types")).contains(part.part().type())) {
      return Optional.empty();
    }
    return Optional.ofNullable(map(schmitt.get("families")).get(part.family().name()))
        .map(row -> new Thresholds(range(map(row), "up"), range(map(row), "down")));
  }

  private static Range range(Map<?, ?> row, String name) {
    List<?> three = (List<?>) row.get(name);
    return new Range(number(three.get(0)), number(three.get(1)), number(three.get(2)));
  }

  /** Most supply current of a part, milliamps. */
  double mostSupplyMilliamps(Fitted part) {
    Map<?, ?> supply = section("supply");
    String type = part.part().type();
    double guess =
        number(supply, "per-output-ma")
            * part.part().pins().stream().filter(p -> p.kind().drives()).count();
    Object listed = map(supply.get("ma")).get(type);
    double milliamps = listed == null ? guess : number(listed);
    boolean own = ((List<?>) supply.get("own-technology")).contains(type);
    return own ? milliamps : milliamps * number(map(supply.get("factor")), part.family().name());
  }

  /** What a part usually takes as a share of the most it may take. */
  double usualSupplyShare() {
    return number(section("supply"), "usual-share");
  }

  /** True for a part that loads the supply with a spike whenever its output switches. */
  public boolean spikes(Fitted part) {
    return ((List<?>) section("supply").get("spikes")).contains(part.part().type());
  }

  /** How long a usual contact bounces, milliseconds. */
  public double bounceMillis() {
    return number(table, "bounce-ms");
  }

  /** A number of one of the small sections: {@code led}, {@code board}, {@code tolerance}. */
  double number(String section, String name) {
    return number(section(section), name);
  }

  private Map<?, ?> section(String name) {
    return map(table.get(name));
  }

  private static Map<?, ?> map(Object value) {
    return (Map<?, ?>) value;
  }

  private static double number(Map<?, ?> row, String name) {
    return number(row.get(name));
  }

  private static double number(Object value) {
    return ((Number) value).doubleValue();
  }
}
