package straywire.logic;

/**
 * Reads and writes of memories in 64 lanes. The lanes are split at each address bit, high bit
 * first, so that only addresses which some lane may select are touched; a lane with an unknown
 * address bit goes both ways.
 */
final class MemoryAccess {
  /** Words before the address references of an encoded access. */
  private static final int HEAD = 4;

  private MemoryAccess() {}

  static void readAll(int[] code, int from, int end, long[] r, long[] state, int at, long lanes) {
    int pc = from;
    while (pc < end) {
      int bits = code[pc + 1];
      int data = pc + HEAD + code[pc + 2];
      for (int b = data; b < data + bits; b++) {
        r[code[b]] = 0;
        r[code[b] + 1] = 0;
      }
      read(code, pc, pc + HEAD, 0, lanes, r, state, at);
      pc = data + bits;
    }
  }

  private static void read(
      int[] code, int pc, int bit, int word, long mask, long[] r, long[] state, int at) {
    if (mask == 0) {
      return;
    }
    int data = pc + HEAD + code[pc + 2];
    if (bit < data) {
      int line = code[bit];
      read(code, pc, bit + 1, 2 * word, mask & r[line ^ 1], r, state, at);
      read(code, pc, bit + 1, 2 * word + 1, mask & r[line], r, state, at);
      return;
    }
    int bits = code[pc + 1];
    int cell = at + 2 * (code[pc] + word * bits);
    for (int b = 0; b < bits; b++) {
      int to = code[data + b];
      r[to] |= mask & state[cell + 2 * b];
      r[to + 1] |= mask & state[cell + 2 * b + 1];
    }
  }

  /** Tells in which lanes a cell changed. */
  static long writeAll(int[] code, int from, int end, long[] r, long[] state, int at, long lanes) {
    long changed = 0;
    int pc = from;
    while (pc < end) {
      int data = pc + HEAD + code[pc + 2];
      int condition = code[pc + 3];
      long sure = lanes & ~r[condition ^ 1];
      for (int bit = pc + HEAD; bit < data; bit++) {
        sure &= ~(r[code[bit]] & r[code[bit] ^ 1]);
      }
      changed |= write(code, pc, pc + HEAD, 0, lanes & r[condition], sure, r, state, at);
      pc = data + code[pc + 1];
    }
    return changed;
  }

  /** In {@code mask} lanes the word may take the data; in {@code sure} lanes nothing else stays. */
  private static long write(
      int[] code, int pc, int bit, int word, long mask, long sure, long[] r, long[] state, int at) {
    if (mask == 0) {
      return 0;
    }
    int data = pc + HEAD + code[pc + 2];
    if (bit < data) {
      int line = code[bit];
      return write(code, pc, bit + 1, 2 * word, mask & r[line ^ 1], sure, r, state, at)
          | write(code, pc, bit + 1, 2 * word + 1, mask & r[line], sure, r, state, at);
    }
    int bits = code[pc + 1];
    int cell = at + 2 * (code[pc] + word * bits);
    long keep = ~(mask & sure);
    long changed = 0;
    for (int b = 0; b < bits; b++) {
      int value = code[data + b];
      long one = (state[cell + 2 * b] & keep) | (mask & r[value]);
      long zero = (state[cell + 2 * b + 1] & keep) | (mask & r[value ^ 1]);
      changed |= one ^ state[cell + 2 * b];
      changed |= zero ^ state[cell + 2 * b + 1];
      state[cell + 2 * b] = one;
      state[cell + 2 * b + 1] = zero;
    }
    return changed;
  }
}
