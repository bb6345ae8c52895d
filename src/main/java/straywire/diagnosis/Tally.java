package straywire.diagnosis;

/** What one log entry says in every lane. */
final class Tally {
  /** A reading less likely than this under a hypothesis would have to be a slip of eye or hand. */
  private static final double SLIP = Math.log(0.03);

  final double[] logs;

  /** Readings of this entry that the lane's hypothesis calls a slip. */
  final int[] slips;

  Tally(double[] start) {
    logs = start.clone();
    slips = new int[start.length];
  }

  void add(int lane, double log) {
    logs[lane] += log;
    if (log < SLIP) {
      slips[lane]++;
    }
  }
}
