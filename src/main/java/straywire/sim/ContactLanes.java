package straywire.sim;

/** In which lanes a contact does what the hand says, and in which something else. */
final class ContactLanes {
  /** How often a contact opens again after it closed, at most. */
  static final int MOST_BOUNCES = 3;

  private final boolean closedWhenHigh;
  private long neverCloses;
  private long alwaysClosed;
  private long noPull;

  /** Lanes in which it is closed in the other position than meant. */
  private long exchanged;

  /** Lanes in which the contact closes more than once, more than twice, more than three times. */
  private final long[] closesAgain = new long[MOST_BOUNCES];

  private long closesAnyhow;

  ContactLanes(boolean closedWhenHigh) {
    this.closedWhenHigh = closedWhenHigh;
  }

  void fault(Variation.ControlFault fault, long lane) {
    switch (fault) {
      case NEVER_CLOSES -> neverCloses |= lane;
      case ALWAYS_CLOSED -> alwaysClosed |= lane;
      case NO_PULL -> noPull |= lane;
      case EXCHANGED -> exchanged |= lane;
      case CLOSES_ANYHOW -> closesAnyhow |= lane;
      case CLOSES_TWICE, CLOSES_THREE_TIMES, CLOSES_FOUR_TIMES -> {
        for (int bounce = 0; bounce < fault.closings() - 1; bounce++) {
          closesAgain[bounce] |= lane;
        }
      }
    }
  }

  /** Lanes in which this position closes the contact. */
  long closed(boolean high, long used) {
    long position = high == closedWhenHigh ? used & ~exchanged : exchanged;
    return (position & ~neverCloses) | alwaysClosed;
  }

  /** Lanes in which a move to this position closes the contact, which was open. */
  long closes(boolean high, long used) {
    return closed(high, used) & ~closed(!high, used);
  }

  /**
   * Lanes in which the contact, just closed, surely opens and closes again.
   *
   * @param bounce which time, from 0
   */
  long surelyBounces(int bounce) {
    return closesAgain[bounce];
  }

  /** Lanes in which the contact, just closed, may open and close again. */
  long bounces(int bounce) {
    return closesAgain[bounce] | closesAnyhow;
  }

  /** Lanes in which it may or may not do so. */
  long mayBounce(int bounce) {
    return closesAnyhow & ~closesAgain[bounce];
  }

  long noPull() {
    return noPull;
  }
}
