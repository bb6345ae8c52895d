package straywire.logic;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import straywire.logic.LogicCompiler.Drive;

/**
 * A part's logic as a flat program. State: two words ("may be 1", "may be 0") for each remembered
 * bit, registers first, then memory cells, then the last level of each clock; behind the clocks,
 * one word for each register: lanes in which, unknown, it may have become something else.
 */
public final class CompiledLogic implements PartLogic {
  private static final int MOST_REGISTERS = 16384;

  /** What unknown registers are tried as: all 0, all 1, by turns, in pairs, and two at random. */
  private static final long[] GUESSES = {
    0, -1L, 0x5555555555555555L, 0x3333333333333333L, 0x1f8b5c36d2e94a70L, 0x62d9a3710cf5e84bL
  };

  /** Work space of one thread; the constants in front are never written again. */
  private static final ThreadLocal<long[]> REGISTERS =
      ThreadLocal.withInitial(() -> withConstants(MOST_REGISTERS));

  private final Gates gates;
  private final int cells;
  private final List<LogicCompiler.MemoryPlace> memories;

  /** Place in the state and reference of its next value, in pairs. */
  private final int[] updates;

  private final int[] drivePins;
  private final PinKind[] driveKinds;
  private final int[] driveValues;
  private final int[] driveEnables;
  private final List<Drive> standing;
  private final Program step;

  /** The step without what goes into memories that are kept without power. */
  private final Program stepStoringNothing;

  private final Program standingProgram;
  private final int stateLength;

  private final int registers;

  /** Place in the state of the words of moved registers. */
  private final int movedAt;

  private final boolean notesMoves;

  /**
   * @param next reference of each register's value after a step
   * @param clocks reference of each clock's level
   * @param standing outputs as they follow from the pins and from what is remembered now
   */
  public CompiledLogic(
      Gates gates,
      int cells,
      List<LogicCompiler.MemoryPlace> memories,
      int[] next,
      int[] clocks,
      List<Drive> drives,
      List<Drive> standing) {
    if (2 * gates.count() > MOST_REGISTERS) {
      throw new IllegalArgumentException("The logic needs too many gates: " + gates.count());
    }
    this.gates = gates;
    this.cells = cells;
    this.memories = List.copyOf(memories);
    this.registers = next.length;
    this.movedAt = 2 * (cells + clocks.length);
    // What a memory holds is told apart by its address; no part has both a memory and a clock.
    this.notesMoves = clocks.length > 0 && memories.isEmpty();
    this.stateLength = movedAt + (notesMoves ? registers : 0);
    this.updates = updates(cells, next, clocks);
    this.drivePins = drives.stream().mapToInt(Drive::pin).toArray();
    this.driveKinds = drives.stream().map(Drive::kind).toArray(PinKind[]::new);
    this.driveValues = drives.stream().mapToInt(Drive::value).toArray();
    this.driveEnables = drives.stream().mapToInt(Drive::enable).toArray();
    this.standing = List.copyOf(standing);
    List<Integer> roots = new ArrayList<>(references(drives));
    for (int i = 1; i < updates.length; i += 2) {
      roots.add(updates[i]);
    }
    this.step = new Program(gates, roots, cell -> true);
    this.stepStoringNothing = keeps() ? new Program(gates, roots, cell -> !keeps(cell)) : step;
    this.standingProgram = new Program(gates, references(standing), cell -> false);
  }

  private static long[] withConstants(int length) {
    long[] r = new long[length];
    r[Gates.ONE] = -1L;
    r[Gates.UNKNOWN] = -1L;
    r[Gates.UNKNOWN + 1] = -1L;
    return r;
  }

  private static int[] updates(int cells, int[] next, int[] clocks) {
    int[] updates = new int[2 * (next.length + clocks.length)];
    for (int i = 0; i < next.length + clocks.length; i++) {
      boolean register = i < next.length;
      updates[2 * i] = 2 * (register ? i : cells + i - next.length);
      updates[2 * i + 1] = register ? next[i] : clocks[i - next.length];
    }
    return updates;
  }

  private static List<Integer> references(List<Drive> drives) {
    List<Integer> references = new ArrayList<>();
    for (Drive drive : drives) {
      references.add(drive.value());
      references.add(drive.enable());
    }
    return references;
  }

  @Override
  public int stateLength() {
    return stateLength;
  }

  @Override
  public void forget(long[] state, int at, long lanes) {
    forget(state, at, at + stateLength, lanes);
  }

  @Override
  public void losePower(long[] state, int at, long lanes) {
    int from = 0;
    for (LogicCompiler.MemoryPlace memory : memories) {
      if (memory.kept()) {
        forget(state, at + from, at + 2 * memory.firstCell(), lanes);
        from = 2 * memory.endCell();
      }
    }
    forget(state, at + from, at + stateLength, lanes);
  }

  private static void forget(long[] state, int from, int to, long lanes) {
    for (int i = from; i < to; i++) {
      state[i] |= lanes;
    }
  }

  @Override
  public Optional<Store> store() {
    return memories.stream()
        .filter(LogicCompiler.MemoryPlace::kept)
        .findFirst()
        .map(m -> new Store(m.firstCell(), m.words(), m.bits()));
  }

  @Override
  public void put(long[] state, int at, int cell, boolean high, long lanes) {
    int known = at + 2 * cell + (high ? 0 : 1);
    int other = at + 2 * cell + (high ? 1 : 0);
    state[known] |= lanes;
    state[other] &= ~lanes;
  }

  @Override
  public boolean keeps(int cell) {
    for (LogicCompiler.MemoryPlace memory : memories) {
      if (memory.holds(cell)) {
        return memory.kept();
      }
    }
    return false;
  }

  @Override
  public boolean step(PinPlanes pins, long[] state, int at, long lanes) {
    return step(step, pins, state, at, lanes);
  }

  @Override
  public boolean stepStoringNothing(PinPlanes pins, long[] state, int at, long lanes) {
    return step(stepStoringNothing, pins, state, at, lanes);
  }

  private boolean step(Program program, PinPlanes pins, long[] state, int at, long lanes) {
    long[] r = REGISTERS.get();
    long changed = program.run(pins, r, state, at, lanes);
    if (notesMoves) {
      noteMoves(pins, r, state, at, lanes);
    }
    for (int i = 0; i < updates.length; i += 2) {
      int place = at + updates[i];
      int reference = updates[i + 1];
      long one = within(lanes, r[reference], state[place]);
      long zero = within(lanes, r[reference ^ 1], state[place + 1]);
      changed |= one ^ state[place];
      changed |= zero ^ state[place + 1];
      state[place] = one;
      state[place + 1] = zero;
    }
    return (changed | drive(pins, r, lanes)) != 0;
  }

  /**
   * Where a clock moves while registers are unknown, tries the step with a few guesses at them: a
   * register that is not always the same afterwards may be another one now.
   */
  private void noteMoves(PinPlanes pins, long[] r, long[] state, int at, long lanes) {
    long edges = 0;
    for (int i = 2 * registers; i < updates.length; i += 2) {
      edges |= r[updates[i + 1]] ^ state[at + updates[i]];
      edges |= r[updates[i + 1] ^ 1] ^ state[at + updates[i] + 1];
    }
    if ((edges & lanes) == 0) {
      return;
    }
    long unknown = 0;
    for (int cell = 0; cell < registers; cell++) {
      unknown |= unknownCell(state, at, cell);
    }
    long tried = edges & unknown & lanes;
    if (tried == 0) {
      return;
    }
    long[] out = withConstants(2 * gates.count());
    long[] moved = new long[registers];
    Arrays.fill(moved, tried);
    // An open clock that stays unknown is taken to sit still: at one level it gives no edge.
    for (int level = 0; level < 2; level++) {
      long[] differs = new long[registers];
      for (long guess : GUESSES) {
        long[] guessed = guess(guess, level, r, state, at);
        step.run(pins, out, guessed, 0, tried);
        for (int cell = 0; cell < registers; cell++) {
          int reference = updates[2 * cell + 1];
          differs[cell] |= out[reference] ^ guessed[2 * cell];
          differs[cell] |= out[reference ^ 1] ^ guessed[2 * cell + 1];
        }
      }
      for (int cell = 0; cell < registers; cell++) {
        moved[cell] &= differs[cell];
      }
    }
    for (int cell = 0; cell < registers; cell++) {
      state[at + movedAt + cell] |= moved[cell];
    }
  }

  /** The state with unknown registers, and clocks that stay unknown, taken for known ones. */
  private long[] guess(long guess, int level, long[] r, long[] state, int at) {
    long[] guessed = Arrays.copyOfRange(state, at, at + stateLength);
    for (int cell = 0; cell < registers; cell++) {
      boolean one = (guess >>> (cell & 63) & 1) != 0;
      guessed[2 * cell + (one ? 1 : 0)] &= ~unknownCell(state, at, cell);
    }
    for (int i = 2 * registers; i < updates.length; i += 2) {
      long still = r[updates[i + 1]] & r[updates[i + 1] ^ 1];
      still &= guessed[updates[i]] & guessed[updates[i] + 1];
      guessed[updates[i] + level] &= ~still;
    }
    return guessed;
  }

  private static long within(long lanes, long fresh, long outside) {
    return (fresh & lanes) | (outside & ~lanes);
  }

  /**
   * @return lanes in which a drive plane changed
   */
  private long drive(PinPlanes pins, long[] r, long lanes) {
    long changed = 0;
    for (int i = 0; i < drivePins.length; i++) {
      int pin = drivePins[i];
      long on = r[driveEnables[i]];
      long off = r[driveEnables[i] ^ 1];
      long one = r[driveValues[i]] & on;
      long zero = r[driveValues[i] ^ 1] & on;
      if (driveKinds[i] == PinKind.OPEN_COLLECTOR) {
        off |= one;
        one = 0;
      }
      one = within(lanes, one, pins.drive1[pin]);
      zero = within(lanes, zero, pins.drive0[pin]);
      off = within(lanes, off, pins.off[pin]);
      changed |= one ^ pins.drive1[pin];
      changed |= zero ^ pins.drive0[pin];
      changed |= off ^ pins.off[pin];
      pins.drive1[pin] = one;
      pins.drive0[pin] = zero;
      pins.off[pin] = off;
    }
    return changed;
  }

  @Override
  public void trace(PinPlanes pins, long[] state, int at, int pin, long lanes, UnknownSink sink) {
    for (Drive drive : standing) {
      if (drive.pin() == pin) {
        // Registers of its own: the sink may trace further through other parts.
        long[] r = withConstants(2 * gates.count());
        standingProgram.run(pins, r, state, at, lanes);
        long driving = lanes & ~r[drive.enable() ^ 1];
        new Trace(gates, r, sink).follow(drive.value(), false, driving);
      }
    }
  }

  @Override
  public int cellCount() {
    return cells;
  }

  @Override
  public int wordStart(int cell) {
    for (LogicCompiler.MemoryPlace memory : memories) {
      if (memory.holds(cell)) {
        return cell - (cell - memory.firstCell()) % memory.bits();
      }
    }
    return cell;
  }

  @Override
  public int wordLength(int cell) {
    for (LogicCompiler.MemoryPlace memory : memories) {
      if (memory.holds(cell)) {
        return memory.bits();
      }
    }
    return 1;
  }

  @Override
  public long moved(long[] state, int at, int cell) {
    return notesMoves && cell < registers ? state[at + movedAt + cell] : 0;
  }

  @Override
  public void startOver(long[] state, int at) {
    if (notesMoves) {
      Arrays.fill(state, at + movedAt, at + stateLength, 0);
    }
  }

  @Override
  public long unknownCell(long[] state, int at, int cell) {
    return state[at + 2 * cell] & state[at + 2 * cell + 1];
  }
}
