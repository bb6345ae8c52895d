package straywire.steps;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import straywire.module.Entry.ProbeShows;
import straywire.module.Point;
import straywire.observe.RankingNumber;
import straywire.observe.RankingNumbers;
import straywire.observe.ReadingTable;
import straywire.ranking.LiveSet;
import straywire.sim.BoardState;
import straywire.sim.Boards;
import straywire.sim.Signal;

/**
 * What each live hypothesis predicts at one moment: the signal at a point, the picture at lamps.
 */
public final class Prediction {
  private Prediction() {}

  /** Signal under each hypothesis at each of the points. */
  public static Signal[][] at(LiveSet live, List<BoardState> moment, List<Point> points) {
    Signal[][] predicted = new Signal[points.size()][live.size()];
    live.eachGroup(
        moment,
        (boards, state, group, first) -> {
          long[][] all = boards.allSignals(state, group);
          for (int i = 0; i < predicted.length; i++) {
            fill(predicted[i], first, all[boards.wiring().vertex(points.get(i))]);
          }
        });
    return predicted;
  }

  private static void fill(Signal[] predicted, int first, long[] lanes) {
    for (Signal signal : Signal.values()) {
      for (long left = lanes[signal.ordinal()]; left != 0; left &= left - 1) {
        predicted[first + Long.numberOfTrailingZeros(left)] = signal;
      }
    }
  }

  /**
   * A word of lamps as a picture: which are lit, and of which that is certain.
   *
   * @param lit bit i for lamp i
   * @param sure bit i when lamp i is certainly lit or certainly dark
   */
  record Picture(long lit, long sure) {
    /** One character a lamp in their order: 1 lit, 0 dark, ? either. */
    String marks(int lamps) {
      StringBuilder marks = new StringBuilder();
      for (int i = 0; i < lamps; i++) {
        marks.append((sure >>> i & 1) == 0 ? '?' : (lit >>> i & 1) == 0 ? '0' : '1');
      }
      return marks.toString();
    }

    /** Mixed well: neighbouring lamps often go together. The factor is 2^64 by the golden ratio. */
    @Override
    public int hashCode() {
      return Long.hashCode((lit * 0x9E3779B97F4A7C15L + sure) * 0x9E3779B97F4A7C15L);
    }
  }

  /** Picture of up to 64 lamps under each hypothesis. */
  static Picture[] pictures(
      LiveSet live, List<BoardState> moment, List<String> lamps, RankingNumbers numbers) {
    double known = numbers.of(RankingNumber.BIT_KNOWN);
    long[] lit = new long[live.size()];
    long[] sure = new long[live.size()];
    live.eachGroup(
        moment,
        (boards, state, group, first) -> {
          for (int i = 0; i < lamps.size(); i++) {
            long lamp = 1L << i;
            Boards.Glow glow = boards.glow(state, group, lamps.get(i));
            mark(lit, first, glow.lit(), lamp);
            mark(sure, first, glow.lit() | glow.dark(), lamp);
            long unknown = boards.used(group) & ~(glow.lit() | glow.dark());
            if (unknown != 0) {
              boards.traceLamp(
                  state,
                  group,
                  lamps.get(i),
                  unknown,
                  (label, part, cell, inverted, lanes) -> {
                    double[] ones = live.probabilityOfOne(label, cell);
                    for (long left = lanes; left != 0; left &= left - 1) {
                      int h = first + Long.numberOfTrailingZeros(left);
                      double p = inverted ? 1 - ones[h] : ones[h];
                      lit[h] |= p > known ? lamp : 0;
                      sure[h] |= p > known || p < 1 - known ? lamp : 0;
                    }
                  });
            }
          }
        });
    Picture[] pictures = new Picture[live.size()];
    Arrays.setAll(pictures, h -> new Picture(lit[h], sure[h]));
    return pictures;
  }

  private static void mark(long[] marks, int first, long lanes, long mark) {
    for (long left = lanes; left != 0; left &= left - 1) {
      marks[first + Long.numberOfTrailingZeros(left)] |= mark;
    }
  }

  /** Pictures told apart at most; the rest count as one outcome. */
  private static final int MOST_PICTURES = 24;

  /**
   * Expected information of looking at lamps, in bits.
   *
   * @param slip chance that one lamp is misread, 0 to 1
   */
  static double information(double[] weights, Picture[] pictures, int lamps, double slip) {
    Picture first = pictures[0];
    if (Arrays.stream(pictures).allMatch(first::equals)) {
      return 0;
    }
    Map<Picture, Double> classes = new HashMap<>();
    for (int h = 0; h < weights.length; h++) {
      classes.merge(pictures[h], weights[h], Double::sum);
    }
    List<Map.Entry<Picture, Double>> falling = new ArrayList<>(classes.entrySet());
    falling.sort(
        Map.Entry.<Picture, Double>comparingByValue()
            .reversed()
            .thenComparing(e -> e.getKey().lit())
            .thenComparing(e -> e.getKey().sure()));
    long[] outcomes =
        falling.stream().limit(MOST_PICTURES).mapToLong(e -> e.getKey().lit()).distinct().toArray();
    double[] classWeights = new double[falling.size()];
    double[][] p = new double[falling.size()][outcomes.length + 1];
    for (int c = 0; c < falling.size(); c++) {
      Picture picture = falling.get(c).getKey();
      classWeights[c] = falling.get(c).getValue();
      double unsure = Math.pow(0.5, lamps - Long.bitCount(picture.sure()));
      double rest = 1;
      for (int o = 0; o < outcomes.length; o++) {
        int wrong = Long.bitCount((outcomes[o] ^ picture.lit()) & picture.sure());
        int right = Long.bitCount(picture.sure()) - wrong;
        p[c][o] = unsure * Math.pow(slip, wrong) * Math.pow(1 - slip, right);
        rest -= p[c][o];
      }
      p[c][outcomes.length] = Math.max(0, rest);
    }
    return StepChoice.information(classWeights, p);
  }

  /** Expected information of a meter reading, in bits. */
  static double information(double[] weights, Signal[] signals, ReadingTable table) {
    return information(weights, signals, table.bands(), table::meter);
  }

  /** Expected information of a logic probe reading, in bits. */
  static double probeInformation(double[] weights, Signal[] signals, ReadingTable table) {
    ProbeShows[] shows = ProbeShows.values();
    return information(weights, signals, shows.length, (s, o) -> table.probe(s, shows[o]));
  }

  /** Probability of outcome number {@code outcome} at a point with a signal. */
  private interface OutcomeOfSignal {
    double probability(Signal signal, int outcome);
  }

  private static double information(
      double[] weights, Signal[] signals, int outcomes, OutcomeOfSignal of) {
    double[] bySignal = new double[Signal.values().length];
    for (int h = 0; h < weights.length; h++) {
      bySignal[signals[h].ordinal()] += weights[h];
    }
    double[][] p = new double[bySignal.length][outcomes];
    for (Signal signal : Signal.values()) {
      for (int o = 0; o < outcomes; o++) {
        p[signal.ordinal()][o] = of.probability(signal, o);
      }
    }
    return StepChoice.information(bySignal, p);
  }

  /** Expected information of an answer that is yes with the probability given, in bits. */
  static double information(double[] weights, double[] yes) {
    double[][] p = new double[yes.length][];
    Arrays.setAll(p, h -> new double[] {yes[h], 1 - yes[h]});
    return StepChoice.information(weights, p);
  }
}
