package straywire.sim;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;

/**
 * What resistors do to the level of one node where nothing drives it outright.
 *
 * <p>A rail, contact or output that is felt through fewer resistors decides over one behind more:
 * on the way it was already held against the other. Of those behind equally many, one of a sixth of
 * the other's ohms or less decides; nearer ones leave the level in between. A low too weak for an
 * input still keeps off every high that is felt through more resistors.
 */
final class Resisting {
  /** A divider this uneven leaves a level that every input reads as the stronger side's. */
  private static final int DECIDES = 6;

  /**
   * A low through more than 2 kilohm cannot hold down an input of a bipolar part: 0.8 V at 0.4 mA
   * (Fairchild DM74LS00); measured 1.3 V with 10 kilohm (Electronics Stack Exchange 336728).
   */
  private static final int MOST_OHMS_DOWN = 2000;

  private final Drivers drivers;
  private final int[] driver;
  private final long[] lowLanes;
  private final long[] highLanes;

  /** Lanes in which each would be low, were it not too weak for an input. */
  private final long[] weakLanes;

  /** Behind equally many resistors lie those from one start to the next. */
  private final int[] starts;

  /** Of those that begin at the same start, how many decide over each. */
  private final int[] deciding;

  // Scratch of one solve: lanes in which each is low, or high, in the low and in the high world.
  private final long[] lowInLow;
  private final long[] highInLow;
  private final long[] lowInHigh;
  private final long[] highInHigh;

  // Lanes with a low nearby that is too weak for an input: no high comes past it.
  private long weakInLow;
  private long weakInHigh;

  /** A driver as it is felt; a pull is a rail behind one resistor. */
  private record Felt(int driver, int resistors, int ohms, long lanes) {}

  /** At a node that feels no resistor. */
  static Resisting none(Drivers drivers) {
    return new Resisting(List.of(), drivers, 0);
  }

  /**
   * @param none what to give for a node that feels no resistor
   */
  static Resisting at(int node, Drivers drivers, Reach reach, long leaning, Resisting none) {
    List<Felt> felt = new ArrayList<>();
    int[] copper = reach.driversAt[node];
    for (int i = 0; i < copper.length; i++) {
      if (drivers.ohms[copper[i]] > 0) {
        felt.add(new Felt(copper[i], 1, drivers.ohms[copper[i]], reach.lanesAt[node][i]));
      }
    }
    for (Reach.Through through : reach.throughAt(node)) {
      int ohms = drivers.ohms[through.driver()];
      boolean pull = drivers.lowRank[through.driver()] == NetSolver.PULL_RANK;
      if (!pull || ohms > 0) {
        felt.add(
            new Felt(
                through.driver(),
                through.resistors() + (pull ? 1 : 0),
                through.ohms() + ohms,
                through.lanes()));
      }
    }
    if (felt.isEmpty()) {
      return none;
    }
    felt.sort(Comparator.comparingInt(Felt::resistors).thenComparingInt(Felt::ohms));
    return new Resisting(felt, drivers, leaning);
  }

  private Resisting(List<Felt> felt, Drivers drivers, long leaning) {
    this.drivers = drivers;
    int count = felt.size();
    driver = new int[count];
    lowLanes = new long[count];
    highLanes = new long[count];
    weakLanes = new long[count];
    deciding = new int[count];
    lowInLow = new long[count];
    highInLow = new long[count];
    lowInHigh = new long[count];
    highInHigh = new long[count];
    List<Integer> tiers = new ArrayList<>();
    for (int i = 0; i < count; i++) {
      Felt here = felt.get(i);
      if (i == 0 || here.resistors() > felt.get(i - 1).resistors()) {
        tiers.add(i);
      }
      driver[i] = here.driver();
      highLanes[i] = here.lanes();
      weakLanes[i] = here.ohms() > MOST_OHMS_DOWN ? here.lanes() & leaning : 0;
      lowLanes[i] = here.lanes() & ~weakLanes[i];
      int start = tiers.get(tiers.size() - 1);
      deciding[i] =
          (int)
              felt.subList(start, i).stream()
                  .filter(f -> DECIDES * (long) f.ohms() <= here.ohms())
                  .count();
    }
    tiers.add(count);
    starts = tiers.stream().mapToInt(Integer::intValue).toArray();
  }

  /**
   * Adds what resistors do.
   *
   * @param openLow lanes that nothing drives outright while every unknown driver is low
   * @param openHigh lanes that nothing drives outright while every unknown driver is high
   * @param levels may be high, may be low, may be open: added to the first two, and the third is
   *     set
   */
  void solve(long[] state, long openLow, long openHigh, long[] levels) {
    weakInLow = 0;
    weakInHigh = 0;
    for (int tier = 0; tier + 1 < starts.length && (openLow | openHigh) != 0; tier++) {
      int from = starts[tier];
      int to = starts[tier + 1];
      read(state, from, to);
      long actsInLow = 0;
      long actsInHigh = 0;
      for (int i = from; i < to; i++) {
        actsInLow |= lowInLow[i] | highInLow[i];
        actsInHigh |= lowInHigh[i] | highInHigh[i];
        giveWay(i, from);
        levels[0] |= (highInLow[i] & openLow) | (highInHigh[i] & openHigh);
        levels[1] |= (lowInLow[i] & openLow) | (lowInHigh[i] & openHigh);
      }
      openLow &= ~actsInLow;
      openHigh &= ~actsInHigh;
    }
    levels[2] = openLow | openHigh;
  }

  /** Takes from one what is against those that decide over it; these come before it. */
  private void giveWay(int i, int from) {
    for (int other = from; other < from + deciding[i]; other++) {
      lowInLow[i] &= ~highInLow[other];
      highInLow[i] &= ~lowInLow[other];
      lowInHigh[i] &= ~highInHigh[other];
      highInHigh[i] &= ~lowInHigh[other];
    }
  }

  private void read(long[] state, int from, int to) {
    long pastLow = ~weakInLow;
    long pastHigh = ~weakInHigh;
    for (int i = from; i < to; i++) {
      long mayHigh = drivers.high(state, driver[i]);
      long mayLow = drivers.low(state, driver[i]);
      long off = drivers.off(state, driver[i]);
      long surelyLow = mayLow & ~mayHigh & ~off;
      lowInLow[i] = mayLow & lowLanes[i];
      highInLow[i] = mayHigh & ~mayLow & ~off & highLanes[i] & pastLow;
      lowInHigh[i] = surelyLow & lowLanes[i];
      highInHigh[i] = mayHigh & highLanes[i] & pastHigh;
      weakInLow |= mayLow & weakLanes[i];
      weakInHigh |= surelyLow & weakLanes[i];
    }
  }
}
