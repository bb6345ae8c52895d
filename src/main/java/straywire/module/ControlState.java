package straywire.module;

import java.util.Collections;
import java.util.Map;
import java.util.SortedMap;
import java.util.SortedSet;
import java.util.TreeMap;
import java.util.TreeSet;

/**
 * Where every control stands at one moment.
 *
 * @param levels level of every control while it closes or pulls as meant, true is high; a held
 *     button has the opposite of its level at rest
 * @param held buttons kept down
 */
public record ControlState(
    boolean power, SortedMap<String, Boolean> levels, SortedSet<String> held) {
  public ControlState {
    levels = Collections.unmodifiableSortedMap(new TreeMap<>(levels));
    held = Collections.unmodifiableSortedSet(new TreeSet<>(held));
  }

  /** Before the first entry: power off, every control at rest. */
  public static ControlState atStart(Module module) {
    SortedMap<String, Boolean> levels = new TreeMap<>();
    module.controls().forEach((label, control) -> levels.put(label, control.restLevel()));
    return new ControlState(false, levels, new TreeSet<>());
  }

  /**
   * After entry {@code number} of a log, as the log stood then: a later withdrawal does not count
   * yet. Number 0 is the start.
   */
  public static ControlState at(Module module, BenchLog log, int number) {
    BenchLog until =
        new BenchLog(
            log.module(),
            log.title(),
            log.lines().stream().filter(line -> line.number() <= number).toList());
    ControlState state = atStart(module);
    for (BenchLog.Line line : until.standing()) {
      state = state.after(line.entry());
    }
    return state;
  }

  /** After the hand did what the entry says; a press ends with the button let go. */
  public ControlState after(Entry entry) {
    return entry.moves(this);
  }

  ControlState withPower(boolean on) {
    return new ControlState(on, levels, held);
  }

  ControlState withLevels(Map<String, Boolean> moved) {
    SortedMap<String, Boolean> all = new TreeMap<>(levels);
    all.putAll(moved);
    return new ControlState(power, all, held);
  }

  ControlState withHeld(String button) {
    return held.contains(button) ? this : toggled(button);
  }

  ControlState withReleased(String button) {
    return held.contains(button) ? toggled(button) : this;
  }

  /** Every held button let go: the hand is needed for something else. */
  ControlState withHandsOff() {
    ControlState off = this;
    for (String button : held) {
      off = off.toggled(button);
    }
    return off;
  }

  private ControlState toggled(String button) {
    SortedMap<String, Boolean> moved = new TreeMap<>(levels);
    moved.put(button, !levels.get(button));
    SortedSet<String> down = new TreeSet<>(held);
    if (!down.remove(button)) {
      down.add(button);
    }
    return new ControlState(power, moved, down);
  }
}
