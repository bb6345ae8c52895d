package straywire.casebook;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Random;
import java.util.Set;
import java.util.TreeMap;
import straywire.faults.Hypothesis;
import straywire.faults.Mechanism;
import straywire.faults.VariationOf;
import straywire.faults.Visibility;
import straywire.module.End;
import straywire.module.Entry;
import straywire.module.LampState;
import straywire.module.Module;
import straywire.module.Point;
import straywire.module.Word;
import straywire.observe.ReadingTable;
import straywire.observe.Step;
import straywire.ranking.AfterRepair;
import straywire.sim.BoardState;
import straywire.sim.Boards;
import straywire.sim.Signal;
import straywire.sim.Wiring;

/**
 * A module with one known fault on a bench of numbers: does what the hand would do and reports what
 * eye and meter would, without slips. What memory holds at power-up comes from the seed; what is
 * kept without power is drawn once.
 */
public final class SimulatedBench {
  private static final double READS_ONE = 0.5;

  /** A remembered bit that nobody wrote. */
  private record Bit(String part, int cell) implements Comparable<Bit> {
    @Override
    public int compareTo(Bit other) {
      int byPart = part.compareTo(other.part);
      return byPart != 0 ? byPart : Integer.compare(cell, other.cell);
    }
  }

  private static final Hypothesis HEALTHY =
      new Hypothesis("nothing-wrong", Mechanism.NOTHING_WRONG, List.of(), 1, "", "", "", "");

  private final Module module;
  private final Wiring wiring;
  private Hypothesis truth;
  private Boards board;
  private final ReadingTable table;
  private final Visibility visibility;
  private final Random random;
  private final Map<Bit, Boolean> bits = new TreeMap<>();
  private BoardState state;

  public SimulatedBench(Module module, Hypothesis truth, ReadingTable table, long seed) {
    this.module = module;
    this.truth = truth;
    this.table = table;
    wiring = new Wiring(module);
    board = new Boards(wiring, List.of(new VariationOf(wiring).compile(truth)));
    visibility = new Visibility(module);
    random = new Random(seed);
    state = board.off();
  }

  /** What is wrong now: an exchange may have mended what was. */
  public Hypothesis truth() {
    return truth;
  }

  /**
   * After a repair: the same module with the power off and something else wrong. Parts keep what
   * they keep without power.
   *
   * @param seed of what else memories hold from now on
   * @param fresh labels of parts that came from the drawer
   */
  public SimulatedBench repaired(Hypothesis left, long seed, Set<String> fresh) {
    SimulatedBench bench = new SimulatedBench(module, left, table, seed);
    bits.forEach(
        (bit, value) -> {
          if (board.keeps(0, bit.part(), bit.cell()) && !fresh.contains(bit.part())) {
            bench.bits.put(bit, value);
          }
        });
    bench.state = bench.board.move(bench.board.keptOf(board, state, fresh), bench.state.controls());
    return bench;
  }

  private void rebuilt(Hypothesis now, Set<String> fresh) {
    truth = now;
    Boards before = board;
    board = new Boards(wiring, List.of(new VariationOf(wiring).compile(truth)));
    state = board.keptOf(before, state, fresh);
    bits.keySet().removeIf(bit -> fresh.contains(bit.part()));
  }

  /** Does what an action entry says; readings change nothing. */
  public void act(Entry entry) {
    if (entry instanceof Entry.Power) {
      bits.keySet().removeIf(bit -> !board.keeps(0, bit.part(), bit.cell()));
    }
    state = board.after(state, entry);
  }

  /** Does what an entry of a log says and takes its lamps for what memories hold. */
  public void follow(Entry entry) {
    act(entry);
    if (entry instanceof Entry.Seen seen) {
      seen.lamps().forEach(this::remember);
    }
  }

  private void remember(String lamp, LampState shown) {
    Signal signal = only(board.lampSignals(state, 0, lamp));
    if (signal == Signal.UNKNOWN && (shown == LampState.LIT || shown == LampState.DARK)) {
      boolean high = module.lamps().get(lamp).lightsOnHigh() == (shown == LampState.LIT);
      board.trace(
          state,
          0,
          new Point(new End(End.Kind.LAMP, lamp, 0), false),
          1,
          (label, part, cell, inverted, lanes) -> {
            if (lanes != 0) {
              bits.putIfAbsent(new Bit(label, cell), high ^ inverted);
            }
          });
    }
  }

  /** What the eye sees at these lamp words or lamps. */
  public Entry.Seen look(List<String> what) {
    Map<String, LampState> seen = new TreeMap<>();
    for (String name : what) {
      List<String> lamps = module.lampWord(name).map(Word::members).orElse(List.of(name));
      for (String lamp : lamps) {
        seen.put(lamp, lamp(lamp));
      }
    }
    return new Entry.Seen(seen);
  }

  private LampState lamp(String lamp) {
    Signal signal =
        resolved(
            only(board.lampSignals(state, 0, lamp)),
            new Point(new End(End.Kind.LAMP, lamp, 0), false),
            !module.lamps().get(lamp).lightsOnHigh());
    LampState likeliest = LampState.DARK;
    for (LampState shown : List.of(LampState.LIT, LampState.DIM, LampState.FLICKERING)) {
      if (table.lamp(signal, shown) > table.lamp(signal, likeliest)) {
        likeliest = shown;
      }
    }
    return likeliest;
  }

  private static Signal only(long[] lanes) {
    for (Signal signal : Signal.values()) {
      if (lanes[signal.ordinal()] != 0) {
        return signal;
      }
    }
    throw new IllegalStateException("A lane shows some signal");
  }

  /** An unknown level is settled by the bit it shows, which then keeps its value. */
  private Signal resolved(Signal signal, Point point, boolean upsideDown) {
    if (signal != Signal.UNKNOWN) {
      return signal;
    }
    List<Boolean> level = new ArrayList<>();
    board.trace(
        state,
        0,
        point,
        1,
        (label, part, cell, inverted, lanes) -> {
          if (lanes != 0) {
            level.add(
                upsideDown ^ inverted ^ bits.computeIfAbsent(new Bit(label, cell), k -> draw()));
          }
        });
    return (level.isEmpty() ? draw() : level.get(0)) ? Signal.HIGH : Signal.LOW;
  }

  private boolean draw() {
    return random.nextDouble() < READS_ONE;
  }

  /** The meter's reading at a point, volts. */
  public double measure(Point point) {
    Signal signal = resolved(only(board.signals(state, 0, point)), point, false);
    return table.usualVolts(signal);
  }

  /** The logic probe's reading at a point. */
  public Entry.ProbeShows probe(Point point) {
    Signal signal = resolved(only(board.signals(state, 0, point)), point, false);
    Entry.ProbeShows likeliest = Entry.ProbeShows.LOW;
    for (Entry.ProbeShows shows : Entry.ProbeShows.values()) {
      if (table.probe(signal, shows) > table.probe(signal, likeliest)) {
        likeliest = shows;
      }
    }
    return likeliest;
  }

  /**
   * Carries out a step.
   *
   * @return the entries it leaves in the log, in order
   */
  public List<Entry> perform(Step step) {
    List<Entry> entries = new ArrayList<>();
    if (step instanceof Step.Work s) {
      if (!s.set().isEmpty()) {
        does(new Entry.Set(s.set()), entries);
      }
      s.press().ifPresent(button -> does(new Entry.Press(button), entries));
      entries.add(look(s.words()));
    } else if (step instanceof Step.Measure s) {
      s.holding().ifPresent(button -> does(new Entry.Hold(button), entries));
      entries.add(new Entry.Measured(s.point(), measure(s.point())));
      s.holding().ifPresent(button -> does(new Entry.Release(button), entries));
    } else if (step instanceof Step.MeasureRound s) {
      s.points().forEach(point -> entries.add(new Entry.Measured(point, measure(point))));
    } else if (step instanceof Step.Probe s) {
      s.holding().ifPresent(button -> does(new Entry.Hold(button), entries));
      entries.add(new Entry.Probed(s.point(), probe(s.point())));
      s.holding().ifPresent(button -> does(new Entry.Release(button), entries));
    } else if (step instanceof Step.Inspect s) {
      entries.add(new Entry.Inspected(s.subject(), !visibility.shows(truth, s.subject())));
    } else if (step instanceof Step.Beep s) {
      boolean on = state.powered();
      if (on) {
        does(new Entry.Power(false), entries);
      }
      if (!s.set().isEmpty()) {
        does(new Entry.Set(s.set()), entries);
      }
      boolean joined = board.joined(0, s.from(), s.to(), state.controls()) != 0;
      entries.add(new Entry.Continuity(s.from(), s.to(), joined));
      if (on) {
        does(new Entry.Power(true), entries);
      }
    } else if (step instanceof Step.Exchange s) {
      does(new Entry.Power(false), entries);
      Entry exchanged = new Entry.Exchanged(s.part());
      entries.add(exchanged);
      if (AfterRepair.mends(exchanged, truth)) {
        rebuilt(HEALTHY, Set.of(s.part()));
      } else {
        rebuilt(truth, Set.of(s.part()));
      }
      does(new Entry.Power(true), entries);
    } else {
      // No simulation shows what such questions are about.
      Step.Ask ask = (Step.Ask) step;
      entries.add(
          new Entry.Symptom(ask.symptom(), ask.place(), Entry.Answer.UNKNOWN, List.of(), true));
    }
    return entries;
  }

  private void does(Entry entry, List<Entry> entries) {
    act(entry);
    entries.add(entry);
  }
}
