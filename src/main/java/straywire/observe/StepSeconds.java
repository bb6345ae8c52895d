package straywire.observe;

import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import straywire.format.InputError;
import straywire.format.TextFile;
import straywire.format.YamlValue;

/** Seconds of the hand's time that each step takes, from {@code tables/seconds.yaml}. */
public final class StepSeconds {
  private final Map<String, Double> table = new TreeMap<>();

  private StepSeconds(YamlValue rows) {
    rows.fields().forEach((name, seconds) -> table.put(name, seconds.positive()));
  }

  /** The table that ships with the program. */
  public static StepSeconds shipped() {
    return new StepSeconds(
        YamlValue.parse("seconds.yaml", TextFile.shipped("/tables/seconds.yaml")));
  }

  /**
   * The shipped table with the rows of {@code file} put over it.
   *
   * @throws InputError when the file cannot be read, or a row is unknown or no number above 0
   */
  public static StepSeconds over(Path file) {
    StepSeconds seconds = shipped();
    List<String> steps = List.copyOf(seconds.table.keySet());
    YamlValue.parse(file.toString(), TextFile.read(file))
        .fields(List.of(), steps)
        .forEach((name, time) -> seconds.table.put(name, time.positive()));
    return seconds;
  }

  private double row(String name) {
    Double seconds = table.get(name);
    if (seconds == null) {
      throw new IllegalStateException("tables/seconds.yaml has no row " + name);
    }
    return seconds;
  }

  /** Expected seconds of a step, above 0. */
  public double of(Step step) {
    return row("each-step") + work(step);
  }

  private double work(Step step) {
    return step.by(
        new Step.Cases<Double>() {
          @Override
          public Double measure(Step.Measure s) {
            return row("measure") + (s.holding().isPresent() ? row("hold-button") : 0);
          }

          @Override
          public Double round(Step.MeasureRound s) {
            return row("measure") + (s.points().size() - 1) * row("measure-next");
          }

          @Override
          public Double probe(Step.Probe s) {
            return row("probe") + (s.holding().isPresent() ? row("hold-button") : 0);
          }

          @Override
          public Double work(Step.Work s) {
            return s.set().size() * row("move-control")
                + (s.press().isPresent() ? row("press-button") : 0)
                + s.words().size() * row("look-at-word");
          }

          @Override
          public Double inspect(Step.Inspect s) {
            return row("inspect-" + firstWord(s.subject()));
          }

          @Override
          public Double beep(Step.Beep s) {
            return row("beep") + s.set().size() * row("move-control");
          }

          @Override
          public Double exchange(Step.Exchange s) {
            return row("exchange-part");
          }

          @Override
          public Double ask(Step.Ask s) {
            return (double) s.seconds();
          }
        });
  }

  private static String firstWord(String subject) {
    int space = subject.indexOf(' ');
    return space < 0 ? subject : subject.substring(0, space);
  }
}
