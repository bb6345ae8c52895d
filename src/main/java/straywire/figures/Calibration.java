package straywire.figures;

import java.util.ArrayList;
import java.util.List;

/**
 * Holds probabilities that were stated against what turned out to be so: of what was given 70 %,
 * about 70 % should be right.
 */
public final class Calibration {
  /** Upper edges of the bins; a probability on an edge lies in the bin below. */
  private static final double[] EDGES = {0.05, 0.2, 0.4, 0.6, 0.8, 0.9, 0.98, 1.0};

  private final int[] count = new int[EDGES.length];
  private final double[] weight = new double[EDGES.length];
  private final double[] stated = new double[EDGES.length];
  private final double[] right = new double[EDGES.length];

  /**
   * One statement.
   *
   * @param probability 0 to 1
   * @param so whether it was right
   * @param often how often such a bench comes up, at least 0: its prior
   */
  public void add(double probability, boolean so, double often) {
    int bin = 0;
    while (bin < EDGES.length - 1 && probability > EDGES[bin]) {
      bin++;
    }
    count[bin]++;
    weight[bin] += often;
    stated[bin] += often * probability;
    right[bin] += so ? often : 0;
  }

  /**
   * One bin.
   *
   * @param from lower edge
   * @param to upper edge
   * @param count statements in it
   * @param stated mean probability stated
   * @param right share that was right
   */
  public record Bin(double from, double to, int count, double stated, double right) {}

  /** The bins in which something was stated, rising. */
  public List<Bin> bins() {
    List<Bin> bins = new ArrayList<>();
    for (int bin = 0; bin < EDGES.length; bin++) {
      if (weight[bin] > 0) {
        bins.add(
            new Bin(
                bin == 0 ? 0 : EDGES[bin - 1],
                EDGES[bin],
                count[bin],
                stated[bin] / weight[bin],
                right[bin] / weight[bin]));
      }
    }
    return bins;
  }
}
