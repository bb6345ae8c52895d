package straywire.parts;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashMap;
import java.util.IdentityHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;
import java.util.function.IntBinaryOperator;
import straywire.logic.CompiledLogic;
import straywire.logic.Expr;
import straywire.logic.PinKind;
import straywire.logic.PinSpec;
import straywire.logic.Statement;
import straywire.logic.Statement.Clause;
import straywire.logic.Statement.Moment;

/**
 * The slow, obvious twin of {@link CompiledLogic}: reads the sentences of the logic one lane at a
 * time. A level is a set: 1 = may be low, 2 = may be high, 3 = unknown. Sums, comparisons and
 * look-ups are worked out by trying what the unknown bits may be.
 */
final class SlowPart {
  static final int LOW = 1;
  static final int HIGH = 2;
  static final int UNKNOWN = 3;

  /** In what a pin drives: it may have let go. */
  static final int OFF = 4;

  private final Part part;
  private final List<Statement> logic;
  private final Map<String, Integer> remembered = new HashMap<>();
  private final Map<Clause, Integer> clocks = new HashMap<>();
  private final Map<String, int[][]> memories = new HashMap<>();
  private final Map<Expr, Integer> widths = new IdentityHashMap<>();

  SlowPart(PartFile file) {
    part = file.part();
    logic = file.logic();
    for (Statement statement : logic) {
      if (statement instanceof Statement.Take take) {
        take.targets().forEach(t -> remembered.put(t, UNKNOWN));
        take.clauses().forEach(c -> clocks.put(c, UNKNOWN));
      } else if (statement instanceof Statement.Memory memory) {
        int[][] words = new int[memory.words()][memory.bits()];
        Arrays.stream(words).forEach(w -> Arrays.fill(w, UNKNOWN));
        memories.put(memory.name(), words);
      }
    }
  }

  /** What each pin drives after one unit of delay, by pin number; pins that never drive: OFF. */
  int[] step(int[] now, int[] was) {
    Map<String, Integer> old = Map.copyOf(remembered);
    for (Statement statement : logic) {
      if (statement instanceof Statement.Store store) {
        write(store, new Moments(now, old));
      }
    }
    Map<String, Integer> fresh = new HashMap<>(old);
    for (Statement statement : logic) {
      if (statement instanceof Statement.Take take) {
        take(take, now, was, old, fresh);
      }
    }
    remembered.putAll(fresh);
    return drives(new Moments(now, fresh));
  }

  /** Registers in the order they are first named, then each memory word by word, low bit first. */
  List<Integer> cells() {
    List<Integer> cells = new ArrayList<>();
    for (Statement statement : logic) {
      if (statement instanceof Statement.Take take) {
        take.targets().forEach(t -> cells.add(remembered.get(t)));
      }
    }
    for (Statement statement : logic) {
      if (statement instanceof Statement.Memory memory) {
        for (int[] word : memories.get(memory.name())) {
          Arrays.stream(word).forEach(cells::add);
        }
      }
    }
    return cells;
  }

  private void write(Statement.Store store, Moments moments) {
    int[][] words = memories.get(store.memory());
    int condition = moments.value(store.condition(), 1)[0];
    if (condition == LOW) {
      return;
    }
    int[] address = moments.value(store.address(), 0);
    int[] data = moments.value(store.value(), words[0].length);
    boolean sure = condition == HIGH && Arrays.stream(address).noneMatch(b -> b == UNKNOWN);
    for (int word : possible(address)) {
      for (int b = 0; b < data.length; b++) {
        words[word][b] = sure ? data[b] : words[word][b] | data[b];
      }
    }
  }

  private void take(
      Statement.Take take,
      int[] now,
      int[] was,
      Map<String, Integer> old,
      Map<String, Integer> fresh) {
    int width = take.targets().size();
    for (Clause clause : take.clauses()) {
      int when = new Moments(now, old).value(clause.condition(), 1)[0];
      boolean edge = clause.moment() != Moment.WHILE;
      if (edge) {
        int before = clocks.put(clause, when);
        boolean still = when == UNKNOWN && before == UNKNOWN && isPin(clause.condition());
        when = clause.moment() == Moment.RISING ? both(when, not(before)) : both(not(when), before);
        // Driven all the time, an unknown level that stays unknown has not moved.
        when = still ? LOW : when;
      }
      int[] value = new Moments(edge ? was : now, old).value(clause.value(), width);
      for (int i = 0; i < width; i++) {
        String target = take.targets().get(width - 1 - i);
        fresh.put(target, choose(when, value[i], fresh.get(target)));
      }
    }
  }

  private boolean isPin(Expr clock) {
    if (clock instanceof Expr.Not not) {
      return isPin(not.of());
    }
    return clock instanceof Expr.Name name && part.pinNamed(name.name()).isPresent();
  }

  private int[] drives(Moments moments) {
    int[] drives = new int[part.pinCount() + 1];
    Arrays.fill(drives, OFF);
    for (PinSpec pin : part.pins()) {
      if (!pin.kind().drives()) {
        continue;
      }
      int value = moments.shown(pin.name());
      int enable = HIGH;
      for (Statement statement : logic) {
        if (statement instanceof Statement.Let let
            && let.targets().contains(pin.name())
            && let.when().isPresent()) {
          enable = moments.value(let.when().get(), 1)[0];
        }
      }
      if (pin.kind() == PinKind.OPEN_COLLECTOR) {
        value = (value & LOW) | ((value & HIGH) != 0 ? OFF : 0);
      }
      drives[pin.number()] = ((enable & HIGH) != 0 ? value : 0) | ((enable & LOW) != 0 ? OFF : 0);
    }
    return drives;
  }

  private static int not(int level) {
    return (level >> 1) | ((level & 1) << 1);
  }

  private static int both(int a, int b) {
    return ((a | b) & LOW) | (a & b & HIGH);
  }

  private static int choose(int condition, int yes, int no) {
    return ((condition & HIGH) != 0 ? yes : 0) | ((condition & LOW) != 0 ? no : 0);
  }

  /** All numbers that a word, low bit first, may be. */
  private static List<Integer> possible(int[] word) {
    List<Integer> numbers = List.of(0);
    for (int i = 0; i < word.length; i++) {
      List<Integer> more = new ArrayList<>();
      for (int number : numbers) {
        if ((word[i] & LOW) != 0) {
          more.add(number);
        }
        if ((word[i] & HIGH) != 0) {
          more.add(number | 1 << i);
        }
      }
      numbers = more;
    }
    return numbers;
  }

  /** Names as they stand at one moment. */
  private final class Moments {
    private final int[] pins;
    private final Map<String, Integer> registers;
    private final Map<Statement, int[]> values = new IdentityHashMap<>();

    Moments(int[] pins, Map<String, Integer> registers) {
      this.pins = pins;
      this.registers = registers;
    }

    /** What a pin would show if it drives: not its level, which something else may decide. */
    int shown(String pin) {
      if (registers.containsKey(pin)) {
        return registers.get(pin);
      }
      for (Statement statement : logic) {
        if (statement instanceof Statement.Let let && let.targets().contains(pin)) {
          return bit(let, pin);
        }
      }
      throw new IllegalStateException(pin + " shows nothing");
    }

    private int bit(Statement.Let let, String target) {
      int[] whole = values.get(let);
      if (whole == null) {
        whole = value(let.value(), let.targets().size());
        values.put(let, whole);
      }
      return whole[let.targets().size() - 1 - let.targets().indexOf(target)];
    }

    /**
     * Low bit first.
     *
     * @param want bits asked for, 0 when the value's own width is meant
     */
    int[] value(Expr expr, int want) {
      if (expr instanceof Expr.Amount amount) {
        return number(amount.value(), Math.max(1, want));
      }
      if (expr instanceof Expr.Unknown) {
        int[] bits = new int[Math.max(1, want)];
        Arrays.fill(bits, UNKNOWN);
        return bits;
      }
      if (expr instanceof Expr.Name name) {
        return name(name.name());
      }
      if (expr instanceof Expr.Word word) {
        return word(word);
      }
      if (expr instanceof Expr.Not not) {
        return Arrays.stream(value(not.of(), want)).map(SlowPart::not).toArray();
      }
      if (expr instanceof Expr.Choose c) {
        int wide = Math.max(want, Math.max(width(c.then()), width(c.otherwise())));
        int condition = value(c.condition(), 1)[0];
        return each(
            wide,
            spread(c.then(), wide),
            spread(c.otherwise(), wide),
            (yes, no) -> choose(condition, yes, no));
      }
      if (expr instanceof Expr.At at) {
        return at(at);
      }
      if (expr instanceof Expr.Sum sum) {
        int wide = Math.max(want, Math.max(width(sum.left()), width(sum.right())));
        int carry = value(sum.carry(), 1)[0];
        return sum(extended(sum.left(), wide), extended(sum.right(), wide), carry);
      }
      if (expr instanceof Expr.Difference d) {
        int wide = Math.max(want, Math.max(width(d.left()), width(d.right())));
        int[] less = Arrays.stream(extended(d.right(), wide)).map(SlowPart::not).toArray();
        return sum(extended(d.left(), wide), less, HIGH);
      }
      return pair((Expr.Pair) expr, want);
    }

    private int[] pair(Expr.Pair pair, int want) {
      int wide = Math.max(width(pair.left()), width(pair.right()));
      if (!pair.op().compares()) {
        wide = Math.max(want, wide);
      }
      int[] x = spread(pair.left(), wide);
      int[] y = spread(pair.right(), wide);
      return switch (pair.op()) {
        case AND -> each(wide, x, y, SlowPart::both);
        case OR -> each(wide, x, y, (a, b) -> not(both(not(a), not(b))));
        case XOR ->
            each(wide, x, y, (a, b) -> ((a & 1) != 0 ? b : 0) | ((a & 2) != 0 ? not(b) : 0));
        case EQUAL -> new int[] {outcome(x, y, 0)};
        case GREATER -> new int[] {outcome(x, y, 1)};
        case LESS -> new int[] {outcome(x, y, -1)};
      };
    }

    private int[] name(String name) {
      if (registers.containsKey(name)) {
        return new int[] {registers.get(name)};
      }
      PinSpec pin = part.pinNamed(name).orElse(null);
      if (pin != null && pin.kind().listens()) {
        return new int[] {pins[pin.number()]};
      }
      for (Statement statement : logic) {
        if (statement instanceof Statement.Let let && let.targets().contains(name)) {
          boolean word = pin == null && let.targets().size() == 1;
          return word ? value(let.value(), 0) : new int[] {bit(let, name)};
        }
      }
      throw new IllegalStateException("no value is named " + name);
    }

    private int[] word(Expr.Word word) {
      List<Integer> bits = new ArrayList<>();
      for (Expr item : word.items()) {
        int[] part = value(item, 0);
        for (int b = part.length - 1; b >= 0; b--) {
          bits.add(0, part[part.length - 1 - b]);
        }
      }
      return bits.stream().mapToInt(Integer::intValue).toArray();
    }

    private int[] at(Expr.At at) {
      List<Integer> places = possible(value(at.index(), 0));
      int[] found = null;
      for (int place : places) {
        int[] word = wordOf(at, place);
        found = found == null ? word : each(word.length, found, word, (a, b) -> a | b);
      }
      return found;
    }

    private int[] wordOf(Expr.At at, int place) {
      if (at.from() instanceof Expr.Name name) {
        if (memories.containsKey(name.name())) {
          return memories.get(name.name())[place];
        }
        for (Statement statement : logic) {
          if (statement instanceof Statement.Table table && table.name().equals(name.name())) {
            String word = table.words().get(place);
            return number(Integer.parseInt(word, 2), word.length());
          }
        }
      }
      return new int[] {value(at.from(), 0)[place]};
    }

    private int width(Expr expr) {
      Integer known = widths.get(expr);
      if (known == null) {
        known = findWidth(expr);
        widths.put(expr, known);
      }
      return known;
    }

    private int findWidth(Expr expr) {
      if (expr instanceof Expr.Amount || expr instanceof Expr.Unknown) {
        return 0;
      }
      if (expr instanceof Expr.Choose c) {
        return Math.max(width(c.then()), width(c.otherwise()));
      }
      if (expr instanceof Expr.Pair pair) {
        return pair.op().compares() ? 1 : Math.max(width(pair.left()), width(pair.right()));
      }
      if (expr instanceof Expr.Sum sum) {
        return Math.max(width(sum.left()), width(sum.right()));
      }
      if (expr instanceof Expr.Difference d) {
        return Math.max(width(d.left()), width(d.right()));
      }
      return value(expr, 0).length;
    }

    private int[] spread(Expr expr, int wide) {
      int[] value = value(expr, wide);
      if (value.length == wide) {
        return value;
      }
      int[] bits = new int[wide];
      Arrays.fill(bits, value[0]);
      return bits;
    }

    private int[] extended(Expr expr, int wide) {
      int[] value = value(expr, width(expr) == 0 ? wide : 0);
      int[] bits = new int[wide];
      Arrays.fill(bits, LOW);
      System.arraycopy(value, 0, bits, 0, value.length);
      return bits;
    }

    private int[] number(long value, int bits) {
      int[] word = new int[bits];
      for (int i = 0; i < bits; i++) {
        word[i] = ((value >> i) & 1) == 1 ? HIGH : LOW;
      }
      return word;
    }

    private int[] each(int wide, int[] x, int[] y, IntBinaryOperator level) {
      int[] bits = new int[wide];
      for (int i = 0; i < wide; i++) {
        bits[i] = level.applyAsInt(x[i], y[i]);
      }
      return bits;
    }

    /** Tries all triples of two bits and a carry. */
    private int[] sum(int[] x, int[] y, int carryIn) {
      int[] found = new int[x.length];
      int carry = carryIn;
      for (int i = 0; i < x.length; i++) {
        int next = 0;
        for (int total : totals(x[i], y[i], carry)) {
          found[i] |= total % 2 == 1 ? HIGH : LOW;
          next |= total > 1 ? HIGH : LOW;
        }
        carry = next;
      }
      return found;
    }

    private List<Integer> totals(int... bits) {
      return possible(bits).stream().map(Integer::bitCount).toList();
    }

    /** Whether comparing x with y may, or may not, give the sign asked for. */
    private int outcome(int[] x, int[] y, int sign) {
      Set<Integer> signs = Set.of(0);
      for (int i = 0; i < x.length; i++) {
        Set<Integer> more = new TreeSet<>();
        for (int a : possible(new int[] {x[i]})) {
          for (int b : possible(new int[] {y[i]})) {
            more.addAll(a == b ? signs : Set.of(Integer.compare(a, b)));
          }
        }
        signs = more;
      }
      boolean others = signs.stream().anyMatch(s -> s != sign);
      return (signs.contains(sign) ? HIGH : 0) | (others ? LOW : 0);
    }
  }
}
