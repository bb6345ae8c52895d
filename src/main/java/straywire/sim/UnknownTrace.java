package straywire.sim;

import java.util.Arrays;
import straywire.logic.PartLogic;
import straywire.logic.PinPlanes;

/**
 * Follows an unknown level back to the one remembered bit it shows, if it is one: from a node to
 * the only output that drives it, through that part to one of its inputs, and so on. Lanes in which
 * several unknowns mix, or two outputs meet, are reported to nobody.
 */
final class UnknownTrace {
  /** Longer chains than this are taken for loops. */
  private static final int DEEPEST = 24;

  private final LaneGroup group;

  /** Seat of each driver that is an output of a part; these come first among the drivers. */
  private final int[] seatOfDriver;

  UnknownTrace(LaneGroup group) {
    this.group = group;
    int outputs = group.seats.stream().mapToInt(seat -> seat.driving.length).sum();
    seatOfDriver = new int[outputs];
    for (int s = 0; s < group.seats.size(); s++) {
      PartSeat seat = group.seats.get(s);
      Arrays.fill(seatOfDriver, seat.firstDriver, seat.firstDriver + seat.driving.length, s);
    }
  }

  /** Receives the bits that were found. */
  interface Found {
    /**
     * In {@code lanes} the level is remembered bit {@code cell} of the part in seat {@code seat}.
     */
    void cell(int seat, int cell, boolean inverted, long lanes);
  }

  void follow(long[] state, int node, long lanes, Found found) {
    follow(state, node, false, lanes, 0, found);
  }

  private void follow(
      long[] state, int node, boolean inverted, long lanes, int depth, Found found) {
    if (lanes == 0 || depth > DEEPEST) {
      return;
    }
    int[] felt = group.reach.driversAt[node];
    long[] feltIn = group.reach.lanesAt[node];
    long once = 0;
    long twice = 0;
    for (int i = 0; i < felt.length; i++) {
      boolean resistor = group.drivers.lowRank[felt[i]] == NetSolver.PULL_RANK;
      long here = resistor ? 0 : lanes & feltIn[i] & active(state, felt[i]);
      twice |= once & here;
      once |= here;
      // A rail, a resistor or an input that leans beside the unknown output changes nothing: a rail
      // would have decided the level, the others are weaker than any output.
    }
    long single = once & ~twice;
    for (int i = 0; i < felt.length && single != 0; i++) {
      if (felt[i] < seatOfDriver.length) {
        int s = seatOfDriver[felt[i]];
        PartSeat seat = group.seats.get(s);
        int pin = seat.driving[felt[i] - seat.firstDriver];
        long here =
            single & feltIn[i] & active(state, felt[i]) & ~group.drivers.off(state, felt[i]);
        through(state, s, pin, inverted, here, depth, found);
      }
    }
  }

  private long active(long[] state, int driver) {
    return group.drivers.high(state, driver) | group.drivers.low(state, driver);
  }

  private void through(
      long[] state, int s, int pin, boolean inverted, long lanes, int depth, Found found) {
    PartSeat seat = group.seats.get(s);
    long follows = lanes & seat.follows(pin);
    if (follows == 0) {
      return;
    }
    PinPlanes pins = seat.settledPins(state, group.nodes, group.unstableAt(0));
    // The sink must not re-enter the same seat while its pins are in use: collect first.
    java.util.List<Runnable> onward = new java.util.ArrayList<>();
    seat.part
        .logic()
        .trace(
            pins,
            state,
            seat.stateAt,
            pin,
            follows,
            new PartLogic.UnknownSink() {
              @Override
              public void input(int input, boolean turned, long these) {
                long heard = these & seat.hears(input);
                onward.add(
                    () ->
                        follow(
                            state, seat.node[input], inverted ^ turned, heard, depth + 1, found));
              }

              @Override
              public void cell(int cell, boolean turned, long these) {
                onward.add(() -> found.cell(s, cell, inverted ^ turned, these));
              }
            });
    onward.forEach(Runnable::run);
  }
}
