package straywire.logic;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import straywire.format.InputError;
import straywire.logic.Statement.Clause;
import straywire.logic.Statement.Moment;

/**
 * Turns the sentences of a part's logic into gates. Everything remembered takes its new value from
 * what was remembered before the step; outputs show what is remembered after it.
 */
public final class LogicCompiler {
  /** A pin that drives: the value, and the condition under which it drives at all. */
  record Drive(int pin, PinKind kind, int value, int enable) {}

  /**
   * Where a memory's cells are numbered: word by word from address 0, low bit first.
   *
   * @param kept whether the cells hold their value without power
   */
  record MemoryPlace(int firstCell, int words, int bits, boolean kept) {
    boolean holds(int cell) {
      return cell >= firstCell && cell < endCell();
    }

    int endCell() {
      return firstCell + words * bits;
    }
  }

  private final String file;
  private final Map<String, PinSpec> pins = new HashMap<>();
  private final List<PinSpec> pinList;
  private final List<Statement> statements;
  private final Gates gates = new Gates();

  private final Map<String, Statement.Table> tables = new HashMap<>();
  private final Map<String, MemoryPlace> memories = new LinkedHashMap<>();
  private final Map<String, Integer> registers = new LinkedHashMap<>();
  private final Map<String, Statement.Let> lets = new LinkedHashMap<>();
  private final Set<Statement.Let> usedLets = new HashSet<>();
  private final Set<String> usedPins = new LinkedHashSet<>();

  /** By the first target of the sentence, as are all maps of built values. */
  private final Map<String, Integer> letWidths = new HashMap<>();

  private int cells;
  private int[] next = new int[0];
  private final List<Integer> clocks = new ArrayList<>();

  private LogicCompiler(String file, List<PinSpec> pins, List<Statement> statements) {
    this.file = file;
    this.pinList = pins;
    this.statements = statements;
    pins.stream()
        .filter(p -> p.kind().drives() || p.kind().listens())
        .forEach(p -> this.pins.put(p.name(), p));
  }

  /**
   * The gates of a part.
   *
   * @throws InputError when the logic names what is not there, or leaves an output open
   */
  public static CompiledLogic compile(String file, List<PinSpec> pins, List<Statement> statements) {
    return new LogicCompiler(file, pins, statements).compile();
  }

  private CompiledLogic compile() {
    declare();
    buildStores();
    buildTakes();
    List<Drive> drives = buildDrives(new View(false, false));
    List<Drive> standing = buildDrives(new View(false, true));
    checkAllUsed();
    return new CompiledLogic(
        gates, cells, List.copyOf(memories.values()), next, clockReferences(), drives, standing);
  }

  private int[] clockReferences() {
    return clocks.stream().mapToInt(Integer::intValue).toArray();
  }

  private void declare() {
    for (Statement statement : statements) {
      if (statement instanceof Statement.Table table) {
        declareTable(table);
      } else if (statement instanceof Statement.Take take) {
        for (String target : take.targets()) {
          declareTarget(target, take.line());
          registers.put(target, cells++);
        }
      } else if (statement instanceof Statement.Let let) {
        for (String target : let.targets()) {
          declareTarget(target, let.line());
          lets.put(target, let);
        }
      } else if (statement instanceof Statement.Ignore ignore) {
        ignore.pins().forEach(p -> usedPins.add(known(p, ignore.line()).name()));
      }
    }
    next = new int[cells];
    for (Statement statement : statements) {
      if (statement instanceof Statement.Memory memory) {
        declareMemory(memory);
      }
    }
  }

  private void declareTable(Statement.Table table) {
    refuseSecond(table.name(), table.line());
    int size = table.words().size();
    if (size == 0 || Integer.bitCount(size) != 1) {
      throw error(table.line(), "a table needs 2, 4, 8, 16 ... words, this one has " + size);
    }
    int bits = table.words().get(0).length();
    for (String word : table.words()) {
      if (word.length() != bits || !word.matches("[01]+")) {
        throw error(
            table.line(), "table word " + word + ": expected " + bits + " digits, each 0 or 1");
      }
    }
    tables.put(table.name(), table);
  }

  private void declareMemory(Statement.Memory memory) {
    refuseSecond(memory.name(), memory.line());
    if (Integer.bitCount(memory.words()) != 1 || memory.words() > 65536 || memory.bits() < 1) {
      throw error(memory.line(), "a memory has 1, 2, 4, 8 ... 65536 words of at least 1 bit");
    }
    memories.put(
        memory.name(), new MemoryPlace(cells, memory.words(), memory.bits(), memory.kept()));
    cells += memory.words() * memory.bits();
  }

  private void declareTarget(String name, int line) {
    refuseSecond(name, line);
    PinSpec pin = pins.get(name);
    if (pin != null && !pin.kind().drives()) {
      throw error(line, name + " is an input, it cannot be given a value");
    }
  }

  private void refuseSecond(String name, int line) {
    if (registers.containsKey(name)
        || lets.containsKey(name)
        || tables.containsKey(name)
        || memories.containsKey(name)) {
      throw error(line, name + " is given twice");
    }
  }

  private PinSpec known(String pin, int line) {
    PinSpec spec = pins.get(pin);
    if (spec == null) {
      throw error(line, "no pin is named " + pin);
    }
    return spec;
  }

  private void buildStores() {
    View view = new View(false, true);
    for (Statement statement : statements) {
      if (statement instanceof Statement.Store store) {
        MemoryPlace place = memories.get(store.memory());
        if (place == null) {
          throw error(store.line(), "no memory is named " + store.memory());
        }
        int[] address = address(store.address(), place.words(), view, store.line());
        int[] data = Expr.exactly(store.value(), view, place.bits());
        int condition = Expr.exactly(store.condition(), view, 1)[0];
        gates.write(place.firstCell(), highFirst(address), data, condition);
      }
    }
  }

  private int[] address(Expr index, int words, View view, int line) {
    int[] address = index.build(view, Math.max(1, index.width(view)));
    checkAddress(address.length, words, line);
    return address;
  }

  private void checkAddress(int bits, int words, int line) {
    if (1 << bits != words) {
      throw error(line, words + " words cannot be told apart by " + bits + " address bits");
    }
  }

  private static int[] highFirst(int[] bits) {
    int[] turned = new int[bits.length];
    for (int i = 0; i < bits.length; i++) {
      turned[i] = bits[bits.length - 1 - i];
    }
    return turned;
  }

  private void buildTakes() {
    for (Statement statement : statements) {
      if (statement instanceof Statement.Take take) {
        int width = take.targets().size();
        int[] bits = new int[width];
        for (int i = 0; i < width; i++) {
          bits[i] = gates.remembered(registers.get(take.targets().get(width - 1 - i)));
        }
        for (Clause clause : take.clauses()) {
          boolean edge = clause.moment() != Moment.WHILE;
          int when = edge ? edge(clause) : levelNow(clause.condition());
          int[] value = Expr.exactly(clause.value(), new View(edge, true), width);
          for (int i = 0; i < width; i++) {
            bits[i] = gates.choose(when, value[i], bits[i]);
          }
        }
        for (int i = 0; i < width; i++) {
          next[registers.get(take.targets().get(width - 1 - i))] = bits[i];
        }
      }
    }
  }

  private int levelNow(Expr condition) {
    return Expr.exactly(condition, new View(false, true), 1)[0];
  }

  /** The clock is high now and was low before, or the other way round. */
  private int edge(Clause clause) {
    int now = levelNow(clause.condition());
    int clock = now & ~1;
    int place = clocks.indexOf(clock);
    if (place < 0) {
      place = clocks.size();
      clocks.add(clock);
    }
    int before = gates.remembered(cells + place) ^ (now & 1);
    boolean plain = gates.gate(clock >> 1).kind() == Gates.Kind.PIN_NOW;
    int open = plain ? gates.pinOpen(gates.gate(clock >> 1).a()) : Gates.ONE;
    return clause.moment() == Moment.RISING
        ? gates.edge(now, before, open)
        : gates.edge(now ^ 1, before ^ 1, open);
  }

  private List<Drive> buildDrives(View view) {
    List<Drive> drives = new ArrayList<>();
    for (PinSpec pin : pinList) {
      if (pin.kind().drives()) {
        drives.add(drive(pin, view));
      }
    }
    return drives;
  }

  private Drive drive(PinSpec pin, View view) {
    if (registers.containsKey(pin.name())) {
      if (pin.kind() != PinKind.OUTPUT) {
        throw error(
            0,
            pin.name()
                + " can let go of its line: remember under another name and say "
                + pin.name()
                + " = ... when ...");
      }
      return new Drive(pin.number(), pin.kind(), view.register(pin.name()), Gates.ONE);
    }
    Statement.Let let = lets.get(pin.name());
    if (let == null) {
      throw error(0, "the logic does not say what output " + pin.name() + " does");
    }
    boolean mayLetGo = pin.kind() == PinKind.TRISTATE || pin.kind() == PinKind.BIDIRECTIONAL;
    if (mayLetGo != let.when().isPresent() && pin.kind() != PinKind.OPEN_COLLECTOR) {
      throw error(
          let.line(),
          mayLetGo
              ? pin.name() + " can let go of its line: say when it drives"
              : pin.name() + " is an ordinary output, it always drives: leave out \"when\"");
    }
    int enable = let.when().map(e -> Expr.exactly(e, view, 1)[0]).orElse(Gates.ONE);
    return new Drive(pin.number(), pin.kind(), view.letBit(pin.name()), enable);
  }

  private void checkAllUsed() {
    for (PinSpec pin : pinList) {
      if (pin.kind() == PinKind.INPUT && !usedPins.contains(pin.name())) {
        throw error(
            0, "the logic does not use input " + pin.name() + "; say \"ignore\" if that is meant");
      }
    }
    for (Statement.Let let : lets.values()) {
      if (!usedLets.contains(let)) {
        throw error(
            let.line(), "nothing uses " + String.join(", ", let.targets()) + ": take it out");
      }
      boolean toPins = let.targets().stream().allMatch(pins::containsKey);
      if (let.when().isPresent() && !toPins) {
        throw error(let.line(), "only a pin can let go: leave out \"when\"");
      }
    }
  }

  private InputError error(int line, String message) {
    return new InputError(file, line, message);
  }

  /**
   * Names as seen at one moment: pins now or one unit of delay earlier, remembered bits as they
   * were before the step or after it.
   */
  private final class View implements Expr.Scope {
    private final boolean pinsBefore;
    private final boolean rememberedBefore;
    private final Map<String, int[]> built = new HashMap<>();
    private final Set<String> building = new LinkedHashSet<>();

    View(boolean pinsBefore, boolean rememberedBefore) {
      this.pinsBefore = pinsBefore;
      this.rememberedBefore = rememberedBefore;
    }

    @Override
    public Gates gates() {
      return gates;
    }

    @Override
    public int widthOf(Expr.Name name) {
      MemoryPlace memory = memories.get(name.name());
      if (memory != null) {
        return memory.bits();
      }
      Statement.Table table = tables.get(name.name());
      if (table != null) {
        return table.words().get(0).length();
      }
      Statement.Let let = lets.get(name.name());
      if (let == null || let.targets().size() > 1 || pins.containsKey(name.name())) {
        return 1;
      }
      Integer known = letWidths.get(let.targets().get(0));
      if (known == null) {
        enter(let, name);
        known = Math.max(1, let.value().width(this));
        building.remove(let.targets().get(0));
        letWidths.put(let.targets().get(0), known);
      }
      return known;
    }

    @Override
    public int[] valueOf(Expr.Name name) {
      if (holdsWords(name)) {
        throw error(name.line(), name.name() + " holds many words: say " + name.name() + " at ...");
      }
      if (registers.containsKey(name.name())) {
        return new int[] {register(name.name())};
      }
      PinSpec pin = pins.get(name.name());
      if (pin != null && pin.kind().listens()) {
        usedPins.add(pin.name());
        return new int[] {pinsBefore ? gates.pinBefore(pin.number()) : gates.pinNow(pin.number())};
      }
      Statement.Let let = lets.get(name.name());
      if (let == null) {
        throw error(name.line(), "no pin and no value is named " + name.name());
      }
      if (pin != null && pin.kind() != PinKind.OUTPUT) {
        throw error(name.line(), name.name() + " may have let go: name the value behind it");
      }
      if (let.targets().size() > 1) {
        return new int[] {letBit(name, let)};
      }
      return whole(let, name);
    }

    @Override
    public boolean holdsWords(Expr.Name name) {
      return memories.containsKey(name.name()) || tables.containsKey(name.name());
    }

    @Override
    public int[] wordAt(Expr.Name name, int[] address, int line) {
      MemoryPlace memory = memories.get(name.name());
      if (memory != null) {
        checkAddress(address.length, memory.words(), line);
        return gates.read(memory.firstCell(), memory.bits(), highFirst(address));
      }
      Statement.Table table = tables.get(name.name());
      checkAddress(address.length, table.words().size(), line);
      int bits = table.words().get(0).length();
      int[] word = new int[bits];
      for (int b = 0; b < bits; b++) {
        int place = bits - 1 - b;
        int[] column =
            table.words().stream()
                .mapToInt(w -> w.charAt(place) == '1' ? Gates.ONE : Gates.ZERO)
                .toArray();
        word[b] = Expr.pick(gates, column, address);
      }
      return word;
    }

    @Override
    public InputError error(int line, String message) {
      return LogicCompiler.this.error(line, message);
    }

    int register(String name) {
      int bit = registers.get(name);
      return rememberedBefore ? gates.remembered(bit) : next[bit];
    }

    /** What a pin with a value of its own shows. */
    int letBit(String pin) {
      Statement.Let let = lets.get(pin);
      return letBit(new Expr.Name(pin, let.line()), let);
    }

    private int letBit(Expr.Name name, Statement.Let let) {
      int[] bits = whole(let, name);
      return bits[bits.length - 1 - let.targets().indexOf(name.name())];
    }

    private int[] whole(Statement.Let let, Expr.Name name) {
      usedLets.add(let);
      int[] done = built.get(let.targets().get(0));
      if (done == null) {
        enter(let, name);
        boolean toPins = let.targets().size() > 1 || pins.containsKey(let.targets().get(0));
        int width = toPins ? let.targets().size() : Math.max(1, let.value().width(this));
        done = Expr.exactly(let.value(), this, width);
        building.remove(let.targets().get(0));
        built.put(let.targets().get(0), done);
      }
      return done;
    }

    private void enter(Statement.Let let, Expr.Name name) {
      if (!building.add(let.targets().get(0))) {
        throw error(
            name.line(), name.name() + " depends on itself; use \"<-\" for what is remembered");
      }
    }
  }
}
