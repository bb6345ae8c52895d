package straywire.logic;

import java.util.Arrays;
import java.util.List;
import straywire.format.InputError;

/**
 * A value of the logic notation: a level, or a word of levels. Each kind knows its width and how it
 * is built from gates; references come low bit first.
 */
public sealed interface Expr {
  int line();

  /** Bits of the value; 0 for a number or {@code unknown}, which take the width asked for. */
  int width(Scope scope);

  /**
   * Builds the value.
   *
   * @param want width asked for; a narrower single bit is not widened here
   */
  int[] build(Scope scope, int want);

  /** What names mean at the place where a value is built. */
  interface Scope {
    Gates gates();

    int widthOf(Name name);

    int[] valueOf(Name name);

    /** True when the name is a memory or table, read with {@code at}. */
    boolean holdsWords(Name name);

    int[] wordAt(Name name, int[] address, int line);

    InputError error(int line, String message);
  }

  enum Op {
    AND("&"),
    OR("|"),
    XOR("^"),
    EQUAL("=="),
    GREATER(">"),
    LESS("<");

    private final String sign;

    Op(String sign) {
      this.sign = sign;
    }

    String sign() {
      return sign;
    }

    public boolean compares() {
      return this == EQUAL || this == GREATER || this == LESS;
    }
  }

  /** Builds a value of exactly {@code want} bits. */
  static int[] exactly(Expr value, Scope scope, int want) {
    int width = value.width(scope);
    if (width != 0 && width != want) {
      throw scope.error(
          value.line(), "this value has " + bits(width) + ", but " + bits(want) + " are needed");
    }
    return value.build(scope, want);
  }

  private static String bits(int width) {
    return width == 1 ? "1 bit" : width + " bits";
  }

  record Amount(int value, int line) implements Expr {
    @Override
    public int width(Scope scope) {
      return 0;
    }

    @Override
    public int[] build(Scope scope, int want) {
      if (value >> want != 0) {
        throw scope.error(line, value + " does not fit in " + bits(want));
      }
      int[] bits = new int[want];
      for (int i = 0; i < want; i++) {
        bits[i] = ((value >> i) & 1) == 1 ? Gates.ONE : Gates.ZERO;
      }
      return bits;
    }
  }

  record Unknown(int line) implements Expr {
    @Override
    public int width(Scope scope) {
      return 0;
    }

    @Override
    public int[] build(Scope scope, int want) {
      int[] bits = new int[want];
      Arrays.fill(bits, Gates.UNKNOWN);
      return bits;
    }
  }

  record Name(String name, int line) implements Expr {
    @Override
    public int width(Scope scope) {
      return scope.widthOf(this);
    }

    @Override
    public int[] build(Scope scope, int want) {
      return scope.valueOf(this);
    }
  }

  /** {@code [C B A]}, high bit first; a number inside is one bit, a word keeps its width. */
  record Word(List<Expr> items, int line) implements Expr {
    public Word {
      items = List.copyOf(items);
    }

    @Override
    public int width(Scope scope) {
      return items.stream().mapToInt(i -> Math.max(1, i.width(scope))).sum();
    }

    @Override
    public int[] build(Scope scope, int want) {
      int[] bits = new int[width(scope)];
      int at = bits.length;
      for (Expr item : items) {
        int[] part = item.build(scope, Math.max(1, item.width(scope)));
        at -= part.length;
        System.arraycopy(part, 0, bits, at, part.length);
      }
      return bits;
    }
  }

  record Not(Expr of, int line) implements Expr {
    @Override
    public int width(Scope scope) {
      return of.width(scope);
    }

    @Override
    public int[] build(Scope scope, int want) {
      return Arrays.stream(of.build(scope, want)).map(b -> b ^ 1).toArray();
    }
  }

  /** Two operands; a single bit with {@code & | ^} acts on each bit of a word. */
  record Pair(Op op, Expr left, Expr right, int line) implements Expr {
    @Override
    public int width(Scope scope) {
      return op.compares() ? 1 : Math.max(left.width(scope), right.width(scope));
    }

    @Override
    public int[] build(Scope scope, int want) {
      int wide = Math.max(left.width(scope), right.width(scope));
      int width = wide == 0 ? Math.max(1, want) : wide;
      int[] x = operand(scope, left, width);
      int[] y = operand(scope, right, width);
      Gates gates = scope.gates();
      if (op.compares()) {
        return new int[] {compared(gates, x, y)};
      }
      int[] bits = new int[width];
      for (int i = 0; i < width; i++) {
        bits[i] = single(gates, x[i], y[i]);
      }
      return bits;
    }

    private int compared(Gates gates, int[] x, int[] y) {
      if (op == Op.EQUAL) {
        return equal(gates, x, y);
      }
      return op == Op.GREATER ? greater(gates, x, y) : greater(gates, y, x);
    }

    private int single(Gates gates, int x, int y) {
      if (op == Op.AND) {
        return gates.and(x, y);
      }
      return op == Op.OR ? gates.or(x, y) : gates.xor(x, y);
    }

    private int[] operand(Scope scope, Expr operand, int width) {
      return op.compares() ? exactly(operand, scope, width) : spread(operand, scope, width);
    }

    private static int equal(Gates gates, int[] x, int[] y) {
      int all = Gates.ONE;
      for (int i = 0; i < x.length; i++) {
        all = gates.and(all, gates.xor(x[i], y[i]) ^ 1);
      }
      return all;
    }

    /** Reads each bit of x only true and each bit of y only complemented: exact for unknowns. */
    private static int greater(Gates gates, int[] x, int[] y) {
      int more = Gates.ZERO;
      for (int i = 0; i < x.length; i++) {
        int here = gates.and(x[i], y[i] ^ 1);
        int notLess = gates.or(x[i], y[i] ^ 1);
        more = gates.or(here, gates.and(notLess, more));
      }
      return more;
    }
  }

  /** Builds a value of {@code width} bits, using a single bit for all of them. */
  private static int[] spread(Expr value, Scope scope, int width) {
    if (value.width(scope) == 1 && width > 1) {
      int[] bits = new int[width];
      Arrays.fill(bits, value.build(scope, 1)[0]);
      return bits;
    }
    return exactly(value, scope, width);
  }

  /** {@code left + right + carry}: as wide as the wider of the two, what runs over is lost. */
  record Sum(Expr left, Expr right, Expr carry, int line) implements Expr {
    @Override
    public int width(Scope scope) {
      return Math.max(left.width(scope), right.width(scope));
    }

    @Override
    public int[] build(Scope scope, int want) {
      int width = Math.max(width(scope), width(scope) == 0 ? want : 1);
      int[] x = extended(left, scope, width);
      int[] y = extended(right, scope, width);
      return add(scope.gates(), x, y, exactly(carry, scope, 1)[0]);
    }
  }

  /** {@code left - right}, two's complement. */
  record Difference(Expr left, Expr right, int line) implements Expr {
    @Override
    public int width(Scope scope) {
      return Math.max(left.width(scope), right.width(scope));
    }

    @Override
    public int[] build(Scope scope, int want) {
      int width = Math.max(width(scope), width(scope) == 0 ? want : 1);
      int[] x = extended(left, scope, width);
      int[] y = extended(right, scope, width);
      return add(scope.gates(), x, Arrays.stream(y).map(b -> b ^ 1).toArray(), Gates.ONE);
    }
  }

  private static int[] extended(Expr value, Scope scope, int width) {
    int own = value.width(scope);
    return Arrays.copyOf(value.build(scope, own == 0 ? width : own), width);
  }

  private static int[] add(Gates gates, int[] x, int[] y, int carryIn) {
    int[] sum = new int[x.length];
    int carry = carryIn;
    for (int i = 0; i < x.length; i++) {
      sum[i] = gates.xor(gates.xor(x[i], y[i]), carry);
      carry = gates.majority(x[i], y[i], carry);
    }
    return sum;
  }

  /** {@code condition ? then : otherwise}; an unknown condition leaves what both may be. */
  record Choose(Expr condition, Expr then, Expr otherwise, int line) implements Expr {
    @Override
    public int width(Scope scope) {
      return Math.max(then.width(scope), otherwise.width(scope));
    }

    @Override
    public int[] build(Scope scope, int want) {
      int wide = width(scope);
      int width = wide == 0 ? Math.max(1, want) : wide;
      int c = exactly(condition, scope, 1)[0];
      int[] yes = spread(then, scope, width);
      int[] no = spread(otherwise, scope, width);
      int[] bits = new int[width];
      for (int i = 0; i < width; i++) {
        bits[i] = scope.gates().choose(c, yes[i], no[i]);
      }
      return bits;
    }
  }

  /** {@code cells at [..]}: a word of a memory or table, or one bit of a word, bit 0 lowest. */
  record At(Expr from, Expr index, int line) implements Expr {
    @Override
    public int width(Scope scope) {
      return from instanceof Name name && scope.holdsWords(name) ? scope.widthOf(name) : 1;
    }

    @Override
    public int[] build(Scope scope, int want) {
      int[] address = index.build(scope, Math.max(1, index.width(scope)));
      if (from instanceof Name name && scope.holdsWords(name)) {
        return scope.wordAt(name, address, line);
      }
      int[] bits = from.build(scope, from.width(scope));
      if (bits.length != 1 << address.length) {
        throw scope.error(
            line, bits.length + " bits cannot be picked from by " + address.length + " bits");
      }
      return new int[] {pick(scope.gates(), bits, address)};
    }
  }

  /** The bit of {@code bits} that {@code address}, low bit first, points at. */
  static int pick(Gates gates, int[] bits, int[] address) {
    int[] left = bits;
    for (int bit : address) {
      int[] half = new int[left.length / 2];
      for (int i = 0; i < half.length; i++) {
        half[i] = gates.choose(bit, left[2 * i + 1], left[2 * i]);
      }
      left = half;
    }
    return left[0];
  }
}
