package straywire.observe;

import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import org.snakeyaml.engine.v2.api.Load;
import org.snakeyaml.engine.v2.api.LoadSettings;
import straywire.format.TextFile;
import straywire.module.Entry.ProbeShows;
import straywire.module.LampState;
import straywire.sim.Signal;

/**
 * Probability of what an eye, a meter or a logic probe reports for each signal, from {@code
 * tables/readings.yaml}. A small misread rate is mixed in, so that no single entry rules anything
 * out.
 */
public final class ReadingTable {
  private static final List<LampState> LAMP_ORDER =
      List.of(LampState.LIT, LampState.DARK, LampState.DIM, LampState.FLICKERING);

  private final RankingNumbers numbers;
  private final double[] bandEdges;
  private final Map<Signal, double[]> lamp = new EnumMap<>(Signal.class);
  private final Map<Signal, double[]> meter = new EnumMap<>(Signal.class);
  private final Map<Signal, double[]> probe = new EnumMap<>(Signal.class);
  private final Map<Signal, Double> volts = new EnumMap<>(Signal.class);

  private ReadingTable(Map<?, ?> table, RankingNumbers numbers) {
    this.numbers = numbers;
    double misread = number(table.get("misread"));
    bandEdges = numbers(table.get("meter-bands"));
    Map<?, ?> signals = (Map<?, ?>) table.get("signals");
    for (Signal signal : Signal.values()) {
      Map<?, ?> row = (Map<?, ?>) signals.get(signal.name());
      if (row == null) {
        throw new IllegalStateException("tables/readings.yaml has no row for " + signal);
      }
      lamp.put(signal, blurred(numbers(row.get("lamp")), misread));
      meter.put(signal, blurred(numbers(row.get("meter")), misread));
      probe.put(signal, blurred(numbers(row.get("probe")), misread));
      volts.put(signal, number(row.get("volts")));
    }
  }

  /** The table that ships with the program. */
  public static ReadingTable shipped() {
    return shipped(RankingNumbers.shipped());
  }

  /** The shipped readings beside ranking numbers of one's own. */
  public static ReadingTable shipped(RankingNumbers numbers) {
    return new ReadingTable(
        (Map<?, ?>)
            new Load(LoadSettings.builder().build())
                .loadFromString(TextFile.shipped("/tables/readings.yaml")),
        numbers);
  }

  /** How far looks, beeps and cures are trusted, and when a sitting may stop. */
  public RankingNumbers numbers() {
    return numbers;
  }

  /** Chance that a lamp plainly lit or dark is called anything else. */
  public double lampSlip() {
    return 1 - lamp(Signal.RAIL_LOW, LampState.DARK);
  }

  private static double number(Object value) {
    return ((Number) value).doubleValue();
  }

  private static double[] numbers(Object list) {
    return ((List<?>) list).stream().mapToDouble(ReadingTable::number).toArray();
  }

  private static double[] blurred(double[] row, double misread) {
    double sum = 0;
    for (double p : row) {
      sum += p;
    }
    double[] blurred = new double[row.length];
    for (int i = 0; i < row.length; i++) {
      blurred[i] = (1 - misread) * row[i] / sum + misread / row.length;
    }
    return blurred;
  }

  /** Probability that an eye calls a lamp with this signal so; 1 for a lamp not looked at. */
  public double lamp(Signal signal, LampState state) {
    return state == LampState.NOT_LOOKED ? 1 : lamp.get(signal)[LAMP_ORDER.indexOf(state)];
  }

  /** Number of bands a meter reading can fall in. */
  public int bands() {
    return bandEdges.length + 1;
  }

  /** Band of a reading in volts, 0 to {@link #bands()}-1. */
  public int band(double reading) {
    int band = 0;
    while (band < bandEdges.length && reading > bandEdges[band]) {
      band++;
    }
    return band;
  }

  /** Probability of a band. */
  public double meter(Signal signal, int band) {
    return meter.get(signal)[band];
  }

  public double probe(Signal signal, ProbeShows shows) {
    return probe.get(signal)[shows.ordinal()];
  }

  /** The usual meter reading, volts. */
  public double usualVolts(Signal signal) {
    return volts.get(signal);
  }

  /** A short wording of the reading to expect, such as {@code about 3.5 V}. */
  public String wording(Signal signal) {
    if (signal == Signal.UNKNOWN) {
      return "low or high";
    }
    String volts = String.format(java.util.Locale.ROOT, "about %.1f V", usualVolts(signal));
    return switch (signal) {
      case OPEN_INPUT -> volts + ", undriven";
      case NOTHING -> volts + ", nothing there";
      case FIGHT, FIGHT_LOW -> volts + ", two outputs fight";
      case RAISED_LOW, STARVED -> volts + ", neither rail";
      case UNSTABLE -> volts + ", not steady";
      default -> volts;
    };
  }

  /** What a logic probe most likely shows, in a word. */
  public String probeWording(Signal signal) {
    ProbeShows likeliest = ProbeShows.LOW;
    for (ProbeShows shows : ProbeShows.values()) {
      if (probe(signal, shows) > probe(signal, likeliest)) {
        likeliest = shows;
      }
    }
    return likeliest.name().toLowerCase(java.util.Locale.ROOT);
  }
}
