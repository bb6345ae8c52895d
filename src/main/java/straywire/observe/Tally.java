package straywire.observe;

/** What one log entry says in every lane. */
public final class Tally {
  /** A reading less likely than this under a hypothesis would have to be a slip of eye or hand. */
  private final double slip;

  public final double[] logs;

  /** Readings of this entry that the lane's hypothesis calls a slip. */
  public final int[] slips;

  public Tally(double[] start, RankingNumbers numbers) {
    slip = Math.log(numbers.of(RankingNumber.SLIP));
    logs = start.clone();
    slips = new int[start.length];
  }

  public void add(int lane, double log) {
    logs[lane] += log;
    if (log < slip) {
      slips[lane]++;
    }
  }
}
