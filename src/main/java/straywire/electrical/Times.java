package straywire.electrical;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import straywire.logic.PinSpec;
import straywire.module.End;
import straywire.module.Fitted;
import straywire.module.Module;
import straywire.module.Timing;

/** The times that timers and oscillators of a module are meant to have, in words. */
public final class Times {
  private Times() {}

  /** A divider's output and the stage it shows: {@code Q5} has a 32nd of the input's frequency. */
  private static final Pattern STAGE = Pattern.compile("Q(\\d+)");

  /** One line for each timer or oscillator of which the module says what sets it. */
  public static List<String> of(Module module) {
    return module.passives().timings().stream().map(timing -> words(module, timing)).toList();
  }

  private static String words(Module module, Timing timing) {
    if (timing instanceof Timing.Crystal crystal) {
      Range hertz = Oscillator4060.crystal(crystal.hertz());
      return oscillator(module, timing, hertz, "");
    }
    if (timing instanceof Timing.RcOscillator rc) {
      Fitted fitted = module.parts().get(rc.part());
      return oscillator(
          module,
          timing,
          Oscillator4060.resistorAndCapacitor(fitted.family().name(), rc.ohms(), rc.nanofarads()),
          Oscillator4060.formulaHolds(rc.ohms(), rc.nanofarads())
              ? ""
              : "; a rough guide: the formula is good from 10 kohm to 1 Mohm and above 50 pF");
    }
    return timer(timing);
  }

  private static String oscillator(Module module, Timing timing, Range hertz, String remark) {
    List<String> outputs = new ArrayList<>();
    for (PinSpec pin : module.parts().get(timing.part()).part().pins()) {
      Matcher stage = STAGE.matcher(pin.name());
      if (stage.matches() && module.netOf(End.pin(timing.part(), pin.number())).isPresent()) {
        double divided = hertz.usual() / Math.pow(2, Integer.parseInt(stage.group(1)));
        outputs.add(pin.name() + " (pin " + pin.number() + ") at " + number(divided) + " Hz");
      }
    }
    return String.format(
        Locale.ROOT,
        "%s runs at %s Hz (%s to %s)%s%s",
        timing.part(),
        number(hertz.usual()),
        number(hertz.least()),
        number(hertz.most()),
        outputs.isEmpty() ? "" : ": " + String.join(", ", outputs),
        remark);
  }

  private static String timer(Timing timing) {
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
