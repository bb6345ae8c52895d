package straywire.electrical;

import java.util.List;
import java.util.Locale;
import straywire.module.Module;
import straywire.module.Timing;

/** The times that the timers of a module are meant to have, in words. */
public final class Times {
  private Times() {}

  /** One line for each timer whose resistors and capacitor the module gives. */
  public static List<String> of(Module module) {
    return module.passives().timings().stream().map(Times::words).toList();
  }

  private static String words(Timing timing) {
    if (timing instanceof Timing.Astable astable) {
      Timer555.Astable runs =
          Timer555.astable(astable.r1Ohms(), astable.r2Ohms(), astable.nanofarads());
      return String.format(
          Locale.ROOT,
          "%s runs at %s Hz (%s to %s): high for %s ms, low for %s ms, high %.0f %% of the time",
          timing.part(),
          number(runs.hertz().usual()),
          number(runs.hertz().least()),
          number(runs.hertz().most()),
          number(runs.highMillis().usual()),
          number(runs.lowMillis().usual()),
          100 * runs.dutyHigh());
    }
    Timing.OneShot shot = (Timing.OneShot) timing;
    Range width = Timer555.oneShotMillis(shot.ohms(), shot.nanofarads());
    return String.format(
        Locale.ROOT,
        "%s gives pulses of %s ms (%s to %s)",
        timing.part(),
        number(width.usual()),
        number(width.least()),
        number(width.most()));
  }

  /** Three figures, more where whole numbers need them. */
  private static String number(double value) {
    double size = Math.abs(value);
    int decimals = size >= 100 ? 0 : size >= 10 ? 1 : size >= 1 ? 2 : 3;
    return String.format(Locale.ROOT, "%." + decimals + "f", value);
  }
}
