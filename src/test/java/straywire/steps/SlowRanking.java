package straywire.steps;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.function.ToDoubleFunction;
import straywire.faults.Hypothesis;
import straywire.faults.VariationOf;
import straywire.faults.Visibility;
import straywire.module.End;
import straywire.module.Entry;
import straywire.module.LampState;
import straywire.module.Module;
import straywire.module.Point;
import straywire.observe.RankingNumber;
import straywire.observe.ReadingTable;
import straywire.observe.Step;
import straywire.sim.BoardState;
import straywire.sim.Boards;
import straywire.sim.Signal;
import straywire.sim.Wiring;

/**
 * The slow, obvious twin of the ranking: one board for each hypothesis, plain probabilities, every
 * outcome of a step written out. For logs of one power-up.
 */
final class SlowRanking {
  private final Module module;
  private final List<Hypothesis> hypotheses;
  private final ReadingTable table = ReadingTable.shipped();
  private final List<One> ones = new ArrayList<>();

  SlowRanking(Module module, List<Hypothesis> hypotheses) {
    this.module = module;
    this.hypotheses = hypotheses;
    Wiring wiring = new Wiring(module);
    hypotheses.forEach(h -> ones.add(new One(wiring, h)));
  }

  void accept(Entry entry) {
    ones.forEach(one -> one.accept(entry));
  }

  /** Prior times likelihood, over the sum of all. */
  double[] posterior() {
    double[] weights = new double[ones.size()];
    double sum = 0;
    for (int h = 0; h < weights.length; h++) {
      weights[h] = hypotheses.get(h).prior() * ones.get(h).likelihood();
      sum += weights[h];
    }
    for (int h = 0; h < weights.length; h++) {
      weights[h] /= sum;
    }
    return weights;
  }

  /** Entropy now less the mean entropy after each outcome; empty for a step not written out. */
  double information(double[] posterior, Step step) {
    List<double[]> outcomes = new ArrayList<>();
    if (step instanceof Step.Measure s) {
      for (int band = 0; band < table.bands(); band++) {
        int b = band;
        outcomes.add(each(one -> table.meter(one.signal(s.point()), b)));
      }
    } else if (step instanceof Step.Probe s) {
      for (Entry.ProbeShows shows : Entry.ProbeShows.values()) {
        outcomes.add(each(one -> table.probe(one.signal(s.point()), shows)));
      }
    } else if (step instanceof Step.Inspect s) {
      outcomes.add(each(one -> one.looksWrong(s.subject())));
      outcomes.add(each(one -> 1 - one.looksWrong(s.subject())));
    } else {
      throw new IllegalArgumentException("Not written out: " + step);
    }
    double after = 0;
    for (double[] outcome : outcomes) {
      double[] then = new double[posterior.length];
      double chance = 0;
      for (int h = 0; h < then.length; h++) {
        then[h] = posterior[h] * outcome[h];
        chance += then[h];
      }
      for (int h = 0; h < then.length; h++) {
        then[h] /= chance;
      }
      after += chance * entropy(then);
    }
    return entropy(posterior) - after;
  }

  private double[] each(ToDoubleFunction<One> probability) {
    return ones.stream().mapToDouble(probability).toArray();
  }

  private static double entropy(double[] p) {
    double entropy = 0;
    for (double each : p) {
      entropy -= each > 0 ? each * Math.log(each) / Math.log(2) : 0;
    }
    return entropy;
  }

  /** A word of memory that nobody wrote, by part and first bit. */
  private record WordAt(String part, int first) implements Comparable<WordAt> {
    @Override
    public int compareTo(WordAt other) {
      int byPart = part.compareTo(other.part);
      return byPart != 0 ? byPart : Integer.compare(first, other.first);
    }
  }

  /** One hypothesis on a board of its own. */
  private final class One {
    private final Hypothesis hypothesis;
    private final Boards board;
    private BoardState state;

    /** What was read of things that are known. */
    private double known = 1;

    /** For each bit of a word the likelihood of its readings if it is 0, and if it is 1. */
    private final Map<WordAt, double[][]> words = new TreeMap<>();

    /** Of words that became other ones: what their readings were worth. */
    private double gone = 1;

    One(Wiring wiring, Hypothesis hypothesis) {
      this.hypothesis = hypothesis;
      board = new Boards(wiring, List.of(new VariationOf(wiring).compile(hypothesis)));
      state = board.off();
    }

    double likelihood() {
      double all = known * gone;
      for (double[][] word : words.values()) {
        all *= joint(word);
      }
      return all;
    }

    /** Either its bits are fair coins, or it came up all ones or all zeros. */
    private double joint(double[][] word) {
      double apart = 1;
      double zeros = 1;
      double allOnes = 1;
      for (double[] bit : word) {
        apart *= (bit[0] + bit[1]) / 2;
        zeros *= bit[0];
        allOnes *= bit[1];
      }
      double alike = table.numbers().of(RankingNumber.WORDS_ALIKE);
      return (1 - alike) * apart + alike * (zeros + allOnes) / 2;
    }

    void accept(Entry entry) {
      state = board.after(state, entry);
      words
          .entrySet()
          .removeIf(
              word -> {
                boolean moved = board.moved(state, 0, word.getKey().part(), word.getKey().first());
                gone *= moved ? joint(word.getValue()) : 1;
                return moved;
              });
      if (entry instanceof Entry.Seen seen) {
        seen.lamps().forEach(this::lamp);
      } else if (entry instanceof Entry.Measured m) {
        int band = table.band(m.volts());
        read(m.point(), signal(m.point()), false, s -> table.meter(s, band));
      } else if (entry instanceof Entry.Probed p) {
        read(p.point(), signal(p.point()), false, s -> table.probe(s, p.shows()));
      } else if (entry instanceof Entry.Inspected i) {
        known *= i.asMeant() ? 1 - looksWrong(i.subject()) : looksWrong(i.subject());
      }
    }

    private void lamp(String lamp, LampState shown) {
      Point point = new Point(new End(End.Kind.LAMP, lamp, 0), false);
      boolean turned = !module.lamps().get(lamp).lightsOnHigh();
      read(point, only(board.lampSignals(state, 0, lamp)), turned, s -> table.lamp(s, shown));
    }

    private void read(Point point, Signal signal, boolean turned, ToDoubleFunction<Signal> says) {
      if (signal != Signal.UNKNOWN) {
        known *= says.applyAsDouble(signal);
        return;
      }
      boolean[] traced = {false};
      board.trace(
          state,
          0,
          point,
          1,
          (label, part, cell, inverted, lanes) -> {
            if (lanes != 0) {
              traced[0] = true;
              int first = part.logic().wordStart(cell);
              double[][] word =
                  words.computeIfAbsent(
                      new WordAt(label, first), w -> fresh(part.logic().wordLength(cell)));
              boolean down = inverted ^ turned;
              word[cell - first][1] *= says.applyAsDouble(down ? Signal.LOW : Signal.HIGH);
              word[cell - first][0] *= says.applyAsDouble(down ? Signal.HIGH : Signal.LOW);
            }
          });
      known *= traced[0] ? 1 : says.applyAsDouble(Signal.UNKNOWN);
    }

    private double[][] fresh(int length) {
      double[][] word = new double[length][2];
      for (double[] bit : word) {
        bit[0] = 1;
        bit[1] = 1;
      }
      return word;
    }

    Signal signal(Point point) {
      return only(board.signals(state, 0, point));
    }

    private Signal only(long[] lanes) {
      for (Signal signal : Signal.values()) {
        if (lanes[signal.ordinal()] != 0) {
          return signal;
        }
      }
      throw new IllegalStateException("A board shows some signal");
    }

    double looksWrong(String subject) {
      return new Visibility(module).shows(hypothesis, subject)
          ? table.numbers().of(RankingNumber.LOOK_FINDS)
          : table.numbers().of(RankingNumber.LOOK_IMAGINES);
    }
  }
}
