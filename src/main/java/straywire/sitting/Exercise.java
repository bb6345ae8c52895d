package straywire.sitting;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import straywire.module.BenchLog;
import straywire.module.ControlState;
import straywire.module.Entry;
import straywire.module.Module;

/**
 * A by-hand exercise as rounds, and how far a log has got in it. Handling that a log has in other
 * words, or in more steps, counts all the same; what is beside the exercise is passed over.
 */
final class Exercise {
  /** Some handling and one look at lamps. What is set in a row is set at once. */
  record Round(List<Entry> handling, Wanted.Lamps look) {
    Round {
      handling = List.copyOf(atOnce(handling));
    }

    private static List<Entry> atOnce(List<Entry> handling) {
      List<Entry> merged = new ArrayList<>();
      for (Entry entry : handling) {
        int last = merged.size() - 1;
        if (entry instanceof Entry.Set set
            && last >= 0
            && merged.get(last) instanceof Entry.Set before) {
          Map<String, Boolean> levels = new TreeMap<>(before.levels());
          levels.putAll(set.levels());
          merged.set(last, new Entry.Set(levels));
        } else {
          merged.add(entry);
        }
      }
      return merged;
    }
  }

  private final Module module;
  private final List<Round> rounds;

  Exercise(Module module, List<Round> rounds) {
    this.module = module;
    this.rounds = List.copyOf(rounds);
  }

  /** The whole by-hand exercise of a module, as its file has it. */
  static Exercise of(Module module) {
    List<Round> rounds = new ArrayList<>();
    List<Entry> handling = new ArrayList<>();
    for (Entry entry : module.exercise()) {
      if (entry instanceof Entry.Look look) {
        rounds.add(new Round(handling, new Wanted.Lamps(look.what())));
        handling = new ArrayList<>();
      } else {
        handling.add(entry);
      }
    }
    return new Exercise(module, rounds);
  }

  List<Round> rounds() {
    return rounds;
  }

  /**
   * What is left of the round that comes next.
   *
   * @param since entries from power off on
   * @param start controls before them
   * @param skipped numbers of entries that pass over the round that was next then
   */
  Optional<Round> next(List<BenchLog.Line> since, ControlState start, List<Integer> skipped) {
    Pointer at = new Pointer(start);
    for (BenchLog.Line line : since) {
      at.take(line, skipped.contains(line.number()));
    }
    return at.left();
  }

  private final class Pointer {
    private ControlState state;
    private int round;

    /** Handling of the round that is still to do, after that of rounds passed over. */
    private final List<Entry> ahead = new ArrayList<>();

    Pointer(ControlState start) {
      state = start;
      start();
    }

    private void start() {
      round = 0;
      ahead.clear();
      begin();
    }

    private void begin() {
      if (round < rounds.size()) {
        ahead.addAll(rounds.get(round).handling());
      }
      dropWhatIsThere();
    }

    void take(BenchLog.Line line, boolean skips) {
      Entry entry = line.entry();
      state = state.after(entry);
      boolean asked = !skips && !ahead.isEmpty() && entry.equals(ahead.get(0));
      if (entry instanceof Entry.Power power && !power.on() && !asked) {
        // Not the exercise's own: what it had made the module remember may be gone.
        start();
      } else if (round < rounds.size()) {
        if (skips) {
          round++;
          begin();
        } else if (!ahead.isEmpty()) {
          if (entry.equals(ahead.get(0))) {
            ahead.remove(0);
          }
        } else if (rounds.get(round).look().answeredBy(entry, module)) {
          round++;
          begin();
        }
      }
      dropWhatIsThere();
    }

    /** Drops handling that brings nothing new as the controls stand. */
    private void dropWhatIsThere() {
      while (!ahead.isEmpty() && isThere(ahead.get(0))) {
        ahead.remove(0);
      }
    }

    private boolean isThere(Entry handling) {
      if (handling instanceof Entry.Power power) {
        return power.on() == state.power();
      }
      return handling instanceof Entry.Set set
          && state.levels().entrySet().containsAll(set.levels().entrySet());
    }

    Optional<Round> left() {
      return round == rounds.size()
          ? Optional.empty()
          : Optional.of(new Round(ahead, rounds.get(round).look()));
    }
  }
}
