package straywire.sitting;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import straywire.logic.PinSpec;
import straywire.module.BenchLog;
import straywire.module.ControlState;
import straywire.module.End;
import straywire.module.Entry;
import straywire.module.Fitted;
import straywire.module.Module;
import straywire.module.Point;
import straywire.module.Word;
import straywire.observe.ReadingTable;
import straywire.sim.Signal;
import straywire.sim.Wiring;

/**
 * What every pin and lamp of a module with nothing wrong shows as the controls stand, so that one
 * can walk the module with a meter.
 */
public final class ExpectedLevels {
  private final Module module;
  private final ReadingTable table;
  private final BoardReplay board;
  private ControlState controls;

  /**
   * One pin.
   *
   * @param level low, high, open, none, fight, unsteady, or "?" for low or high
   * @param volts usual meter reading in volts, such as {@code 0.2}, or {@code 0.2/3.5}
   */
  public record PinLevel(PinSpec pin, String level, String volts) {}

  /** Freshly powered up, every control at rest. */
  public ExpectedLevels(Module module, ReadingTable table) {
    this.module = module;
    this.table = table;
    board = BoardReplay.healthy(new Wiring(module));
    controls = ControlState.atStart(module);
    act(new Entry.Power(true));
  }

  /** As a log leaves the module; power is on afterwards whatever the log says. */
  public ExpectedLevels(Module module, ReadingTable table, BenchLog log) {
    this(module, table);
    log.standing().forEach(line -> act(line.entry()));
    if (!controls.power()) {
      act(new Entry.Power(true));
    }
  }

  /** Does what an entry says: sets, presses, holds. */
  public void act(Entry entry) {
    controls = controls.after(entry);
    board.act(entry);
  }

  public ControlState controls() {
    return controls;
  }

  /** The legs of a part, in pin order. */
  public List<PinLevel> of(Fitted part) {
    List<PinLevel> levels = new ArrayList<>();
    for (PinSpec pin : part.part().pins()) {
      Point leg = new Point(End.pin(part.label(), pin.number()), true);
      Signal signal = board.signal(0, leg);
      levels.add(new PinLevel(pin, level(signal), volts(signal)));
    }
    return levels;
  }

  /** Lamps by word, high bit first: 1 lit, 0 dark, ? either. */
  public Map<String, String> lamps() {
    Map<String, String> marks = new LinkedHashMap<>();
    for (Word word : module.lampWords()) {
      marks.put(word.label(), board.marks(0, word.members()));
    }
    return marks;
  }

  private static String level(Signal signal) {
    return switch (signal) {
      case RAIL_LOW, LOW, LOW_CMOS, RAISED_LOW, PULLED_LOW -> "low";
      case RAIL_HIGH, HIGH, HIGH_CMOS, CLAMPED_HIGH, PULLED_HIGH -> "high";
      case FIGHT_LOW, FIGHT -> "fight";
      case OPEN_INPUT -> "open";
      case NOTHING, STARVED -> "none";
      case UNKNOWN -> "?";
      case UNSTABLE -> "unsteady";
    };
  }

  private String volts(Signal signal) {
    if (signal == Signal.UNKNOWN) {
      return one(table.usualVolts(Signal.LOW)) + "/" + one(table.usualVolts(Signal.HIGH));
    }
    return one(table.usualVolts(signal));
  }

  private static String one(double volts) {
    return String.format(Locale.ROOT, "%.1f", volts);
  }
}
