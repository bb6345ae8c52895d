package straywire.logic;

import java.util.Optional;

/**
 * The function of a part type, worked out for 64 lanes at once. Stateless itself: what the part
 * remembers (registers, memory cells, the last level of each clock) lies in a slice of a caller's
 * array, so that one compiled function serves any number of boards and snapshots are array copies.
 */
public interface PartLogic {
  /** Words of state, zero for a gate. */
  int stateLength();

  /** Makes everything remembered unknown in {@code lanes}: registers, cells and clock history. */
  void forget(long[] state, int at, long lanes);

  /** As {@link #forget}, but for the cells that hold their value without power. */
  default void losePower(long[] state, int at, long lanes) {
    forget(state, at, lanes);
  }

  /**
   * A memory in the part.
   *
   * @param firstCell of the word at address 0; cells follow word by word, low bit first
   */
  record Store(int firstCell, int words, int bits) {}

  /** The memory that holds its contents without power, the first where there are several. */
  default Optional<Store> store() {
    return Optional.empty();
  }

  /** Whether any cell holds its value without power. */
  default boolean keeps() {
    return store().isPresent();
  }

  /** Whether a remembered bit, numbered as in {@link UnknownSink#cell}, does. */
  default boolean keeps(int cell) {
    return false;
  }

  /** In {@code lanes} a remembered bit becomes known. */
  default void put(long[] state, int at, int cell, boolean high, long lanes) {
    throw new UnsupportedOperationException("This part remembers nothing");
  }

  /**
   * One unit of delay: takes clock edges and level writes from the pins, then fills the drive
   * planes. State and drives change only in {@code lanes}; outside them the drive planes are left
   * as they were. A clock edge samples data from {@code was1/was0}; an edge that only may have
   * happened leaves the union of both outcomes.
   *
   * @return true when state or any drive plane changed in {@code lanes}
   */
  boolean step(PinPlanes pins, long[] state, int at, long lanes);

  /**
   * The same while the supply is too low to write: cells that hold their value without power take
   * nothing in.
   */
  default boolean stepStoringNothing(PinPlanes pins, long[] state, int at, long lanes) {
    return step(pins, state, at, lanes);
  }

  /**
   * Follows an unknown output back one part: for lanes in which {@code pin} drives an unknown level
   * that is exactly one input or one remembered bit, inverted or not, tells the sink which. Lanes
   * in which the output mixes several unknowns are reported to nobody.
   */
  void trace(PinPlanes pins, long[] state, int at, int pin, long lanes, UnknownSink sink);

  /** Receives what an unknown output depends on. Lanes of separate calls do not overlap. */
  interface UnknownSink {
    /** The output is the level at input {@code pin}. */
    void input(int pin, boolean inverted, long lanes);

    /**
     * The output is one remembered bit: {@code cell} numbers all registers and memory cells of the
     * part from 0 to {@link PartLogic#cellCount()}-1; a memory's cells are address-major.
     */
    void cell(int cell, boolean inverted, long lanes);
  }

  /** Registers and memory cells of the part, one number per remembered bit. */
  int cellCount();

  /** First cell of the memory word that {@code cell} belongs to; a register bit is its own word. */
  default int wordStart(int cell) {
    return cell;
  }

  /** Bits of the memory word that {@code cell} belongs to. */
  default int wordLength(int cell) {
    return 1;
  }

  /**
   * Lanes in which a clock may have made another bit of remembered bit {@code cell} since {@link
   * #startOver}, though it was unknown before and may be unknown after.
   */
  default long moved(long[] state, int at, int cell) {
    return 0;
  }

  /** Begins to take down anew what moves. */
  default void startOver(long[] state, int at) {}

  /** Lanes in which remembered bit {@code cell} is unknown. */
  long unknownCell(long[] state, int at, int cell);
}
