package straywire.parts;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Map;
import java.util.Random;
import java.util.TreeMap;
import straywire.parts.FunctionTable.Drive;
import straywire.parts.FunctionTable.Row;
import straywire.parts.FunctionTable.Show;

/**
 * Works a part through its own function table. Each lane is the part once; where a row says X, lane
 * i takes bit n of i for the n-th X of the row, so that up to six are tried in all combinations,
 * and more at random.
 */
final class TableRun {
  private final PartFile file;
  private final boolean unknowns;
  private final Random random = new Random(189);
  private final List<String> failures = new ArrayList<>();
  private final Bench bench;

  private TableRun(PartFile file, boolean unknowns) {
    this.file = file;
    this.unknowns = unknowns;
    bench = new Bench(file.part());
  }

  /**
   * @param unknowns whether X means an unknown level instead of any level
   * @return what did not show as the table says
   */
  static List<String> failures(PartFile file, boolean unknowns) {
    TableRun run = new TableRun(file, unknowns);
    run.rows();
    return run.failures;
  }

  private void rows() {
    Map<Integer, Drive> first = new TreeMap<>();
    for (PinSpec pin : file.part().pins()) {
      if (pin.kind().listens()) {
        first.put(pin.number(), Drive.ANY);
      }
    }
    apply(first);
    for (Row row : file.table().rows()) {
      char[][] before = shown(row);
      apply(row.inputs());
      check(row, before);
    }
  }

  private void apply(Map<Integer, Drive> inputs) {
    int wild = 0;
    List<Integer> order = new ArrayList<>(inputs.keySet());
    Collections.sort(order);
    for (int pin : order) {
      switch (inputs.get(pin)) {
        case LOW, RISING -> bench.put(pin, 0, -1L);
        case HIGH, FALLING -> bench.put(pin, -1L, 0);
        case ANY -> {
          long levels = any(wild);
          bench.put(pin, unknowns ? -1L : levels, unknowns ? -1L : ~levels);
          wild++;
        }
      }
    }
    bench.settle();
    boolean edge = false;
    for (int pin : order) {
      if (inputs.get(pin) == Drive.RISING) {
        bench.put(pin, -1L, 0);
        edge = true;
      } else if (inputs.get(pin) == Drive.FALLING) {
        bench.put(pin, 0, -1L);
        edge = true;
      }
    }
    if (edge) {
      bench.settle();
    }
  }

  private long any(int wild) {
    if (wild >= 6) {
      return (random.nextLong() | (1L << 63)) & ~1L;
    }
    long levels = 0;
    for (int lane = 0; lane < 64; lane++) {
      levels |= (long) ((lane >> wild) & 1) << lane;
    }
    return levels;
  }

  private char[][] shown(Row row) {
    char[][] shown = new char[file.part().pinCount() + 1][64];
    for (int pin : row.outputs().keySet()) {
      for (int lane = 0; lane < 64; lane++) {
        shown[pin][lane] = bench.shows(pin, lane);
      }
    }
    return shown;
  }

  private void check(Row row, char[][] before) {
    row.outputs()
        .forEach(
            (pin, show) -> {
              for (int lane = 0; lane < 64; lane++) {
                char now = bench.shows(pin, lane);
                char expected = expected(show, before[pin][lane], pin);
                if (now != expected) {
                  failures.add(
                      file.part().type()
                          + " line "
                          + row.line()
                          + " pin "
                          + file.part().pin(pin).name()
                          + " lane "
                          + lane
                          + ": expected "
                          + expected
                          + ", shows "
                          + now);
                  return;
                }
              }
            });
  }

  private char expected(Show show, char before, int pin) {
    boolean openCollector = file.part().pin(pin).kind() == PinKind.OPEN_COLLECTOR;
    return switch (show) {
      case LOW -> '0';
      // An open collector is high by its pull-up only: it has let go.
      case HIGH -> openCollector ? 'Z' : '1';
      case OFF -> 'Z';
      case UNKNOWN -> openCollector ? '?' : 'X';
      case SAME -> before;
      case TURNED -> before == '1' ? '0' : before == '0' ? '1' : before;
    };
  }
}
