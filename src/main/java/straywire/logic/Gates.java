package straywire.logic;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashMap;
import java.util.List;
import java.util.Map;

/**
 * The gates of one part type. A value is a pair of neighbouring registers, "may be 1" at an even
 * number and "may be 0" after it; reading the pair in the other order complements the value, so a
 * reference is a register number and {@code reference ^ 1} its complement.
 *
 * <p>Equal gates are built once. Only laws that hold for three-valued levels are used to simplify:
 * {@code a & !a} stays, since it is unknown when a is.
 */
final class Gates {
  static final int ZERO = 0;
  static final int ONE = 1;
  static final int UNKNOWN = 2;

  /** What a gate is; the order is the order of execution within one level. */
  enum Kind {
    CONSTANT(0),
    PIN_NOW(0),
    PIN_BEFORE(0),
    PIN_OPEN(0),
    REMEMBERED(0),
    WRITE(1),
    AND(2),
    XOR(3),
    CHOOSE(4),
    READ(5),
    EDGE(6);

    private final int code;

    Kind(int code) {
      this.code = code;
    }

    /** Its mark in a {@link Program}; 0 for what is loaded and not executed. */
    int code() {
      return code;
    }
  }

  /**
   * A gate: for AND and XOR {@code a} and {@code b} are references; for CHOOSE {@code c ? a : b};
   * for pins and remembered bits {@code a} is the pin number or bit number; for READ {@code a} is
   * the access number and {@code b} the bit of the word; for WRITE {@code a} is the access number;
   * for EDGE {@code a} is the level now, {@code b} that before, {@code c} whether it is open.
   */
  record Gate(Kind kind, int a, int b, int c) {}

  /** One place where a memory is read or written. */
  static final class Access {
    private final int firstCell;
    private final int[] address;
    private final int[] data;
    private final int condition;

    /**
     * @param firstCell number of the memory's first cell
     * @param address references, high bit first
     * @param data references, low bit first; of a read: the registers filled
     * @param condition reference of the write condition; -1 for a read
     */
    Access(int firstCell, int[] address, int[] data, int condition) {
      this.firstCell = firstCell;
      this.address = address.clone();
      this.data = data.clone();
      this.condition = condition;
    }

    int firstCell() {
      return firstCell;
    }

    int[] address() {
      return address.clone();
    }

    int addressBits() {
      return address.length;
    }

    int addressLine(int place) {
      return address[place];
    }

    int[] data() {
      return data.clone();
    }

    int bits() {
      return data.length;
    }

    int condition() {
      return condition;
    }

    boolean reads(int cell, int[] where) {
      return condition < 0 && firstCell == cell && Arrays.equals(address, where);
    }
  }

  private final List<Gate> gates = new ArrayList<>();
  private final List<Integer> levels = new ArrayList<>();
  private final Map<Gate, Integer> known = new HashMap<>();
  private final List<Access> accesses = new ArrayList<>();
  private int writeLevel;

  Gates() {
    add(new Gate(Kind.CONSTANT, 0, 0, 0), 0);
    add(new Gate(Kind.CONSTANT, 1, 0, 0), 0);
  }

  int pinNow(int pin) {
    return leaf(Kind.PIN_NOW, pin);
  }

  int pinBefore(int pin) {
    return leaf(Kind.PIN_BEFORE, pin);
  }

  int remembered(int bit) {
    return leaf(Kind.REMEMBERED, bit);
  }

  /** Where nothing may drive a pin. */
  int pinOpen(int pin) {
    return leaf(Kind.PIN_OPEN, pin);
  }

  /**
   * 1 where a level rises. One that was unknown and stays so is taken to sit still, unless it is
   * open: what drives it has not changed.
   */
  int edge(int now, int before, int open) {
    return gate(Kind.EDGE, now, before, open);
  }

  int and(int x, int y) {
    if (x == ZERO || y == ZERO) {
      return ZERO;
    }
    if (x == ONE || x == y) {
      return y;
    }
    if (y == ONE) {
      return x;
    }
    return gate(Kind.AND, Math.min(x, y), Math.max(x, y), 0);
  }

  int or(int x, int y) {
    return and(x ^ 1, y ^ 1) ^ 1;
  }

  int xor(int x, int y) {
    int inverted = (x ^ y) & 1;
    int p = Math.min(x & ~1, y & ~1);
    int q = Math.max(x & ~1, y & ~1);
    return (p == ZERO ? q : gate(Kind.XOR, p, q, 0)) ^ inverted;
  }

  /** {@code yes} where the condition is 1, {@code no} where 0, either where it is unknown. */
  int choose(int condition, int yes, int no) {
    if (condition == ONE || yes == no) {
      return yes;
    }
    if (condition == ZERO) {
      return no;
    }
    if (yes == ONE || yes == ZERO) {
      return yes == ONE ? or(condition, no) : and(condition ^ 1, no);
    }
    if (no == ONE || no == ZERO) {
      return no == ONE ? or(condition ^ 1, yes) : and(condition, yes);
    }
    boolean turned = (condition & 1) == 1;
    return gate(Kind.CHOOSE, turned ? no : yes, turned ? yes : no, condition & ~1);
  }

  /** Carry of a full adder; written without complements, so that it is exact for unknowns. */
  int majority(int x, int y, int z) {
    return or(and(x, y), and(z, or(x, y)));
  }

  /** References of the word read, low bit first. Sees what was written in the same step. */
  int[] read(int firstCell, int bits, int[] address) {
    for (Access earlier : accesses) {
      if (earlier.reads(firstCell, address)) {
        return earlier.data();
      }
    }
    int access = accesses.size();
    int level = Math.max(writeLevel, levelOf(address)) + 1;
    int[] data = new int[bits];
    for (int b = 0; b < bits; b++) {
      data[b] = add(new Gate(Kind.READ, access, b, 0), level);
    }
    accesses.add(new Access(firstCell, address, data, -1));
    return data;
  }

  void write(int firstCell, int[] address, int[] data, int condition) {
    int level = Math.max(levelOf(address), Math.max(levelOf(data), levelOf(condition))) + 1;
    writeLevel = Math.max(writeLevel, level);
    add(new Gate(Kind.WRITE, accesses.size(), 0, 0), level);
    accesses.add(new Access(firstCell, address, data, condition));
  }

  int count() {
    return gates.size();
  }

  Gate gate(int number) {
    return gates.get(number);
  }

  Access access(int number) {
    return accesses.get(number);
  }

  int level(int number) {
    return levels.get(number);
  }

  private int leaf(Kind kind, int number) {
    Gate leaf = new Gate(kind, number, 0, 0);
    Integer earlier = known.get(leaf);
    return earlier != null ? earlier : add(leaf, 0);
  }

  private int gate(Kind kind, int a, int b, int c) {
    Gate gate = new Gate(kind, a, b, c);
    Integer earlier = known.get(gate);
    return earlier != null ? earlier : add(gate, levelOf(a, b, c) + 1);
  }

  private int add(Gate gate, int level) {
    int reference = 2 * gates.size();
    gates.add(gate);
    levels.add(level);
    known.put(gate, reference);
    return reference;
  }

  private int levelOf(int... references) {
    int level = 0;
    for (int reference : references) {
      level = Math.max(level, levels.get(reference >> 1));
    }
    return level;
  }
}
