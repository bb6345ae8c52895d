package straywire.logic;

import java.util.ArrayList;
import java.util.BitSet;
import java.util.Comparator;
import java.util.List;
import java.util.function.IntPredicate;
import straywire.logic.Gates.Access;
import straywire.logic.Gates.Gate;
import straywire.logic.Gates.Kind;

/**
 * Gates in order of execution, as one flat array: runs of equal gates, each run a kind, the place
 * where it ends, and then its operands. Gates nobody asked for are left out.
 */
final class Program {
  private final int[] pinsNow;
  private final int[] pinsBefore;
  private final int[] pinsOpen;
  private final int[] remembered;
  private final int[] code;

  /**
   * @param roots references that must hold their value after a run
   * @param written memories that are written too, by their first cell
   */
  Program(Gates gates, List<Integer> roots, IntPredicate written) {
    BitSet needed = new BitSet();
    roots.forEach(r -> need(gates, r >> 1, needed));
    for (int g = 0; g < gates.count(); g++) {
      if (gates.gate(g).kind() == Kind.WRITE
          && written.test(gates.access(gates.gate(g).a()).firstCell())) {
        need(gates, g, needed);
      }
    }
    List<Integer> order = new ArrayList<>();
    needed.stream().forEach(order::add);
    order.sort(
        Comparator.comparing((Integer g) -> gates.level(g))
            .thenComparing(g -> gates.gate(g).kind())
            .thenComparing(g -> g));
    pinsNow = leaves(gates, order, Kind.PIN_NOW);
    pinsBefore = leaves(gates, order, Kind.PIN_BEFORE);
    pinsOpen = leaves(gates, order, Kind.PIN_OPEN);
    remembered = leaves(gates, order, Kind.REMEMBERED);
    code = encode(gates, order);
  }

  private static void need(Gates gates, int gate, BitSet needed) {
    if (needed.get(gate)) {
      return;
    }
    needed.set(gate);
    Gate g = gates.gate(gate);
    switch (g.kind()) {
      case CONSTANT, PIN_NOW, PIN_BEFORE, PIN_OPEN, REMEMBERED -> {}
      case AND, XOR -> {
        need(gates, g.a() >> 1, needed);
        need(gates, g.b() >> 1, needed);
      }
      case CHOOSE, EDGE -> {
        need(gates, g.a() >> 1, needed);
        need(gates, g.b() >> 1, needed);
        need(gates, g.c() >> 1, needed);
      }
      case READ -> needAccess(gates, gates.access(g.a()), needed);
      case WRITE -> {
        needAccess(gates, gates.access(g.a()), needed);
        need(gates, gates.access(g.a()).condition() >> 1, needed);
      }
    }
  }

  private static void needAccess(Gates gates, Access access, BitSet needed) {
    for (int reference : access.address()) {
      need(gates, reference >> 1, needed);
    }
    for (int reference : access.data()) {
      need(gates, reference >> 1, needed);
    }
  }

  private static int[] leaves(Gates gates, List<Integer> order, Kind kind) {
    return order.stream()
        .filter(g -> gates.gate(g).kind() == kind)
        .flatMap(g -> List.of(gates.gate(g).a(), 2 * g).stream())
        .mapToInt(Integer::intValue)
        .toArray();
  }

  private static int[] encode(Gates gates, List<Integer> order) {
    List<Integer> out = new ArrayList<>();
    int at = 0;
    while (at < order.size()) {
      Kind kind = gates.gate(order.get(at)).kind();
      int level = gates.level(order.get(at));
      int end = at;
      while (end < order.size()
          && gates.gate(order.get(end)).kind() == kind
          && gates.level(order.get(end)) == level) {
        end++;
      }
      if (kind.code() != 0) {
        run(gates, order.subList(at, end), kind, out);
      }
      at = end;
    }
    return out.stream().mapToInt(Integer::intValue).toArray();
  }

  private static void run(Gates gates, List<Integer> run, Kind kind, List<Integer> out) {
    out.add(kind.code());
    int endAt = out.size();
    out.add(0);
    for (int number : run) {
      Gate g = gates.gate(number);
      switch (kind) {
        case AND, XOR -> out.addAll(List.of(2 * number, g.a(), g.b()));
        case CHOOSE, EDGE -> out.addAll(List.of(2 * number, g.a(), g.b(), g.c()));
        case WRITE -> access(gates.access(g.a()), out);
        case READ -> {
          if (g.b() == 0) {
            access(gates.access(g.a()), out);
          }
        }
        case CONSTANT, PIN_NOW, PIN_BEFORE, PIN_OPEN, REMEMBERED ->
            throw new IllegalStateException("a leaf is not executed: " + kind);
      }
    }
    out.set(endAt, out.size());
  }

  /** First cell, bits, address bits, condition, addresses high bit first, data low bit first. */
  private static void access(Access access, List<Integer> out) {
    out.add(access.firstCell());
    out.add(access.bits());
    out.add(access.address().length);
    out.add(access.condition());
    for (int reference : access.address()) {
      out.add(reference);
    }
    for (int reference : access.data()) {
      out.add(reference);
    }
  }

  /**
   * Evaluates all gates in registers {@code r}.
   *
   * @return lanes in which a memory cell changed
   */
  long run(PinPlanes pins, long[] r, long[] state, int at, long lanes) {
    load(pinsNow, pins.can1, pins.can0, r);
    load(pinsBefore, pins.was1, pins.was0, r);
    for (int i = 0; i < pinsOpen.length; i += 2) {
      r[pinsOpen[i + 1]] = pins.open[pinsOpen[i]];
      r[pinsOpen[i + 1] + 1] = ~pins.open[pinsOpen[i]];
    }
    for (int i = 0; i < remembered.length; i += 2) {
      int from = at + 2 * remembered[i];
      int to = remembered[i + 1];
      r[to] = state[from];
      r[to + 1] = state[from + 1];
    }
    return execute(code, r, state, at, lanes);
  }

  private static void load(int[] list, long[] can1, long[] can0, long[] r) {
    for (int i = 0; i < list.length; i += 2) {
      int pin = list[i];
      int to = list[i + 1];
      r[to] = can1[pin];
      r[to + 1] = can0[pin];
    }
  }

  private static final int AND = Kind.AND.code();
  private static final int XOR = Kind.XOR.code();
  private static final int CHOOSE = Kind.CHOOSE.code();
  private static final int READ = Kind.READ.code();
  private static final int EDGE = Kind.EDGE.code();

  private static long execute(int[] code, long[] r, long[] state, int at, long lanes) {
    long changed = 0;
    int pc = 0;
    while (pc < code.length) {
      int kind = code[pc];
      int end = code[pc + 1];
      pc += 2;
      if (kind == AND) {
        and(code, pc, end, r);
      } else if (kind == CHOOSE) {
        choose(code, pc, end, r);
      } else if (kind == XOR) {
        xor(code, pc, end, r);
      } else if (kind == EDGE) {
        edge(code, pc, end, r);
      } else if (kind == READ) {
        MemoryAccess.readAll(code, pc, end, r, state, at, lanes);
      } else {
        changed |= MemoryAccess.writeAll(code, pc, end, r, state, at, lanes);
      }
      pc = end;
    }
    return changed;
  }

  private static void and(int[] code, int from, int end, long[] r) {
    for (int pc = from; pc < end; pc += 3) {
      int d = code[pc];
      int a = code[pc + 1];
      int b = code[pc + 2];
      r[d] = r[a] & r[b];
      r[d + 1] = r[a ^ 1] | r[b ^ 1];
    }
  }

  private static void xor(int[] code, int from, int end, long[] r) {
    for (int pc = from; pc < end; pc += 3) {
      int d = code[pc];
      int a = code[pc + 1];
      int b = code[pc + 2];
      r[d] = (r[a] & r[b ^ 1]) | (r[a ^ 1] & r[b]);
      r[d + 1] = (r[a] & r[b]) | (r[a ^ 1] & r[b ^ 1]);
    }
  }

  private static void edge(int[] code, int from, int end, long[] r) {
    for (int pc = from; pc < end; pc += 4) {
      int d = code[pc];
      int now = code[pc + 1];
      int before = code[pc + 2];
      long unknown = r[now] & r[now ^ 1] & r[before] & r[before ^ 1];
      long still = unknown & ~r[code[pc + 3]];
      r[d] = r[now] & r[before ^ 1] & ~still;
      r[d + 1] = r[now ^ 1] | r[before];
    }
  }

  private static void choose(int[] code, int from, int end, long[] r) {
    for (int pc = from; pc < end; pc += 4) {
      int d = code[pc];
      int a = code[pc + 1];
      int b = code[pc + 2];
      long yes = r[code[pc + 3]];
      long no = r[code[pc + 3] ^ 1];
      r[d] = (yes & r[a]) | (no & r[b]);
      r[d + 1] = (yes & r[a ^ 1]) | (no & r[b ^ 1]);
    }
  }
}
