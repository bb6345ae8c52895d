package straywire.ranking;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.function.ToDoubleFunction;
import straywire.module.End;
import straywire.module.LampState;
import straywire.module.Point;
import straywire.observe.CellBeliefs;
import straywire.observe.ReadingTable;
import straywire.observe.Tally;
import straywire.parts.Part;
import straywire.sim.BoardState;
import straywire.sim.Boards;
import straywire.sim.Lanes;
import straywire.sim.Signal;

/**
 * Log likelihood of one reading in every lane, given the state it was taken in. A level that is one
 * unwritten bit is weighed by what was read of that bit before; a level that is unknown for another
 * reason counts both ways.
 */
final class EntryLikelihood {
  private final Boards boards;
  private final ReadingTable table;

  EntryLikelihood(Boards boards, ReadingTable table) {
    this.boards = boards;
    this.table = table;
  }

  /** Probability of the outcome for a known signal. */
  private record Reading(
      Point point, long[][] signals, boolean inverted, ToDoubleFunction<Signal> probability) {}

  /** Adds to {@code tally} what the lamps seen say; beliefs take in what they say of bits. */
  void lamps(BoardState state, Map<String, LampState> seen, CellBeliefs beliefs, Tally tally) {
    List<Reading> readings = new ArrayList<>();
    seen.forEach(
        (lamp, shown) -> {
          if (shown != LampState.NOT_LOOKED) {
            readings.add(
                new Reading(
                    new Point(new End(End.Kind.LAMP, lamp, 0), false),
                    lampSignals(state, lamp),
                    !boards.wiring().module().lamps().get(lamp).lightsOnHigh(),
                    signal -> table.lamp(signal, shown)));
          }
        });
    weigh(state, readings, beliefs, tally);
  }

  void meter(BoardState state, Point point, double volts, CellBeliefs beliefs, Tally tally) {
    int band = table.band(volts);
    weigh(
        state,
        List.of(new Reading(point, signals(state, point), false, s -> table.meter(s, band))),
        beliefs,
        tally);
  }

  void probe(
      BoardState state,
      Point point,
      straywire.module.Entry.ProbeShows shows,
      CellBeliefs beliefs,
      Tally tally) {
    weigh(
        state,
        List.of(new Reading(point, signals(state, point), false, s -> table.probe(s, shows))),
        beliefs,
        tally);
  }

  private long[][] signals(BoardState state, Point point) {
    long[][] signals = new long[boards.groups()][];
    for (int g = 0; g < signals.length; g++) {
      signals[g] = boards.signals(state, g, point);
    }
    return signals;
  }

  private long[][] lampSignals(BoardState state, String lamp) {
    long[][] signals = new long[boards.groups()][];
    for (int g = 0; g < signals.length; g++) {
      signals[g] = boards.lampSignals(state, g, lamp);
    }
    return signals;
  }

  private void weigh(BoardState state, List<Reading> readings, CellBeliefs beliefs, Tally tally) {
    Map<WordOfLane, WordReading> words = new TreeMap<>();
    for (Reading reading : readings) {
      for (int g = 0; g < boards.groups(); g++) {
        long unknown = reading.signals()[g][Signal.UNKNOWN.ordinal()];
        for (Signal signal : Signal.values()) {
          long lanes = reading.signals()[g][signal.ordinal()];
          if (lanes != 0 && signal != Signal.UNKNOWN) {
            add(tally, g, lanes, Math.log(reading.probability().applyAsDouble(signal)));
          }
        }
        if (unknown != 0) {
          unknown(state, g, reading, unknown, beliefs, words, tally);
        }
      }
    }
    words.forEach(
        (key, word) ->
            tally.logs[key.lane()] +=
                beliefs.read(key.lane(), key.label(), key.first(), word.ifOne, word.ifZero));
  }

  private void unknown(
      BoardState state,
      int group,
      Reading reading,
      long unknown,
      CellBeliefs beliefs,
      Map<WordOfLane, WordReading> words,
      Tally tally) {
    double ifHigh = Math.log(reading.probability().applyAsDouble(Signal.HIGH));
    double ifLow = Math.log(reading.probability().applyAsDouble(Signal.LOW));
    long[] rest = {unknown};
    boards.trace(
        state,
        group,
        reading.point(),
        unknown,
        (label, part, cell, inverted, lanes) -> {
          if (!beliefs.knows(label)) {
            return;
          }
          rest[0] &= ~lanes;
          note(
              words,
              group,
              lanes,
              label,
              part,
              cell,
              inverted ^ reading.inverted() ? ifLow : ifHigh,
              inverted ^ reading.inverted() ? ifHigh : ifLow);
        });
    add(tally, group, rest[0], Math.log(reading.probability().applyAsDouble(Signal.UNKNOWN)));
  }

  private static void note(
      Map<WordOfLane, WordReading> words,
      int group,
      long lanes,
      String label,
      Part part,
      int cell,
      double ifOne,
      double ifZero) {
    int length = part.logic().wordLength(cell);
    int first = part.logic().wordStart(cell);
    for (long left = lanes; left != 0; left &= left - 1) {
      int lane = group * Lanes.COUNT + Long.numberOfTrailingZeros(left);
      WordReading word =
          words.computeIfAbsent(
              new WordOfLane(lane, label, first),
              w -> new WordReading(new double[length], new double[length]));
      word.ifOne[cell - first] += ifOne;
      word.ifZero[cell - first] += ifZero;
    }
  }

  private static void add(Tally tally, int group, long lanes, double log) {
    for (long left = lanes; left != 0; left &= left - 1) {
      tally.add(group * Lanes.COUNT + Long.numberOfTrailingZeros(left), log);
    }
  }

  private record WordOfLane(int lane, String label, int first) implements Comparable<WordOfLane> {
    @Override
    public int compareTo(WordOfLane other) {
      int byLane = Integer.compare(lane, other.lane);
      if (byLane != 0) {
        return byLane;
      }
      int byLabel = label.compareTo(other.label);
      return byLabel != 0 ? byLabel : Integer.compare(first, other.first);
    }
  }

  private static final class WordReading {
    final double[] ifOne;
    final double[] ifZero;

    WordReading(double[] ifOne, double[] ifZero) {
      this.ifOne = ifOne;
      this.ifZero = ifZero;
    }
  }
}
