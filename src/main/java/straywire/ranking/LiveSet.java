package straywire.ranking;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import straywire.faults.Hypothesis;
import straywire.sim.BoardState;
import straywire.sim.Boards;
import straywire.sim.Lanes;

/**
 * The hypotheses that still matter, packed together into as few lanes as they need: what a step is
 * worth is worked out on these alone, so that it gets cheaper as a sitting narrows.
 */
public final class LiveSet {
  /** Most hypotheses that take part. */
  static final int MOST = 128;

  /** Probability that may be left out. */
  private static final double LEFT_OUT = 0.002;

  public final List<Hypothesis> hypotheses = new ArrayList<>();

  /** Probabilities, adding up to 1 over the set. */
  public final double[] weights;

  private final List<Diagnosis.Lane> origins = new ArrayList<>();
  private final List<Boards> boards = new ArrayList<>();
  private final List<BoardState> states = new ArrayList<>();
  private final Map<Cell, double[]> ones = new HashMap<>();

  /** One bit of a part that remembers. */
  private record Cell(String label, int number) {}

  public LiveSet(List<Diagnosis.Candidate> falling) {
    this(falling, MOST, LEFT_OUT);
  }

  /** All candidates. */
  public static LiveSet whole(List<Diagnosis.Candidate> falling) {
    return new LiveSet(falling, Integer.MAX_VALUE, -1);
  }

  private LiveSet(List<Diagnosis.Candidate> falling, int most, double leftOut) {
    List<Diagnosis.Candidate> chosen = new ArrayList<>();
    double sum = 0;
    for (Diagnosis.Candidate candidate : falling) {
      if (chosen.size() == most || (sum > 1 - leftOut && chosen.size() > 1)) {
        break;
      }
      chosen.add(candidate);
      sum += candidate.probability();
    }
    List<Bank> banks = chosen.stream().map(c -> c.lane().bank()).distinct().toList();
    List<Double> probabilities = new ArrayList<>();
    for (Bank bank : banks) {
      List<Integer> lanes = new ArrayList<>();
      for (Diagnosis.Candidate candidate : chosen) {
        if (candidate.lane().bank() == bank) {
          lanes.add(candidate.lane().index());
          hypotheses.add(candidate.hypothesis());
          origins.add(candidate.lane());
          probabilities.add(candidate.probability());
        }
      }
      int[] packed = lanes.stream().mapToInt(Integer::intValue).toArray();
      Boards few = bank.boards.select(packed);
      boards.add(few);
      states.add(bank.boards.carry(bank.state(), packed, few));
    }
    double total = sum;
    weights = probabilities.stream().mapToDouble(p -> p / total).toArray();
  }

  /**
   * Probability that a bit nobody wrote is 1, under each hypothesis, from its readings so far.
   * Every step of the menu asks about the same few bits.
   */
  public double[] probabilityOfOne(String label, int cell) {
    return ones.computeIfAbsent(new Cell(label, cell), this::probabilityOfOne);
  }

  private double[] probabilityOfOne(Cell cell) {
    return origins.stream()
        .mapToDouble(
            lane -> lane.bank().beliefs().probabilityOfOne(lane.index(), cell.label, cell.number))
        .toArray();
  }

  public int size() {
    return weights.length;
  }

  public BoardState state() {
    return states.get(0);
  }

  /** The states reached from here. */
  public List<BoardState> states() {
    return states;
  }

  public List<BoardState> move(List<BoardState> from, Map<String, Boolean> levels) {
    List<BoardState> moved = new ArrayList<>();
    for (int b = 0; b < boards.size(); b++) {
      moved.add(boards.get(b).move(from.get(b), levels));
    }
    return moved;
  }

  /** Gives each lane group in turn, with the number of the hypothesis in its lane 0. */
  public void eachGroup(List<BoardState> at, GroupVisitor visitor) {
    int first = 0;
    for (int b = 0; b < boards.size(); b++) {
      for (int g = 0; g < boards.get(b).groups(); g++) {
        visitor.visit(boards.get(b), at.get(b), g, first + g * Lanes.COUNT);
      }
      first += boards.get(b).lanes();
    }
  }

  /** Sees one lane group. */
  public interface GroupVisitor {
    void visit(Boards boards, BoardState state, int group, int firstHypothesis);
  }
}
