package straywire.parts;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.Random;
import java.util.TreeMap;
import straywire.logic.PartLogic;
import straywire.logic.PinKind;
import straywire.logic.PinPlanes;
import straywire.logic.PinSpec;
import straywire.parts.FunctionTable.Drive;
import straywire.parts.FunctionTable.Row;
import straywire.parts.FunctionTable.Show;

/**
 * Works a part through its own function table. Each of the 64 lanes is the part once: where a row
 * says X, lane i takes bit n of i for the n-th X of the row, so that up to six are tried in all
 * combinations, and more at random (from a fixed seed).
 */
final class TableCheck {
  /** Units of delay after which the insides of every part are at rest. */
  private static final int SETTLED = 3;

  private final PartFile file;
  private final PartLogic logic;
  private final boolean unknowns;
  private final Random random = new Random(189);
  private final List<Failure> failures = new ArrayList<>();
  private final PinPlanes pins;
  private final long[] state;

  /** A pin that did not show what the row of the part's file on {@code line} says. */
  record Failure(int line, String message) {}

  private TableCheck(PartFile file, boolean unknowns) {
    this.file = file;
    this.unknowns = unknowns;
    logic = file.part().logic();
    pins = new PinPlanes(file.part().pinCount());
    state = new long[logic.stateLength()];
    logic.forget(state, 0, -1L);
    for (long[] plane : List.of(pins.can1, pins.can0, pins.was1, pins.was0)) {
      Arrays.fill(plane, -1L);
    }
  }

  /**
   * What does not show as the table says; at most one failure for each row and pin.
   *
   * @param unknowns whether X means an unknown level instead of any level
   */
  static List<Failure> failures(PartFile file, boolean unknowns) {
    TableCheck check = new TableCheck(file, unknowns);
    check.rows();
    return check.failures;
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
    Map<Integer, Drive> ordered = new TreeMap<>(inputs);
    for (Map.Entry<Integer, Drive> input : ordered.entrySet()) {
      switch (input.getValue()) {
        case LOW, RISING -> put(input.getKey(), 0L);
        case HIGH, FALLING -> put(input.getKey(), -1L);
        case ANY -> {
          any(input.getKey(), wild);
          wild++;
        }
      }
    }
    settle();
    for (Map.Entry<Integer, Drive> input : ordered.entrySet()) {
      if (input.getValue() == Drive.RISING) {
        put(input.getKey(), -1L);
      } else if (input.getValue() == Drive.FALLING) {
        put(input.getKey(), 0L);
      }
    }
    settle();
  }

  private void put(int pin, long high) {
    pins.can1[pin] = high;
    pins.can0[pin] = ~high;
  }

  private void any(int pin, int wild) {
    if (unknowns) {
      pins.can1[pin] = -1L;
      pins.can0[pin] = -1L;
      return;
    }
    long levels = 0;
    for (int lane = 0; lane < Long.SIZE; lane++) {
      levels |= (long) ((lane >> wild) & 1) << lane;
    }
    boolean all = wild < 6;
    put(pin, all ? levels : random.nextLong());
  }

  private void settle() {
    for (int i = 0; i < SETTLED; i++) {
      logic.step(pins, state, 0, -1L);
      System.arraycopy(pins.can1, 0, pins.was1, 0, pins.can1.length);
      System.arraycopy(pins.can0, 0, pins.was0, 0, pins.can0.length);
    }
  }

  private char[][] shown(Row row) {
    char[][] shown = new char[file.part().pinCount() + 1][Long.SIZE];
    for (int pin : row.outputs().keySet()) {
      for (int lane = 0; lane < Long.SIZE; lane++) {
        shown[pin][lane] = shows(pin, lane);
      }
    }
    return shown;
  }

  /** L, H, Z, X for either level, or ? where even driving is uncertain. */
  private char shows(int pin, int lane) {
    boolean one = bit(pins.drive1[pin], lane);
    boolean zero = bit(pins.drive0[pin], lane);
    if (bit(pins.off[pin], lane)) {
      return one || zero ? '?' : 'Z';
    }
    if (one && zero) {
      return 'X';
    }
    return one ? 'H' : 'L';
  }

  private static boolean bit(long plane, int lane) {
    return ((plane >>> lane) & 1) == 1;
  }

  private void check(Row row, char[][] before) {
    for (Map.Entry<Integer, Show> output : new TreeMap<>(row.outputs()).entrySet()) {
      int pin = output.getKey();
      for (int lane = 0; lane < Long.SIZE; lane++) {
        char now = shows(pin, lane);
        char expected = expected(output.getValue(), before[pin][lane], pin);
        if (now != expected) {
          String name = file.part().pin(pin).name();
          failures.add(
              new Failure(
                  row.line(),
                  "table: " + name + " should show " + expected + ", the logic gives " + now));
          break;
        }
      }
    }
  }

  private char expected(Show show, char before, int pin) {
    boolean openCollector = file.part().pin(pin).kind() == PinKind.OPEN_COLLECTOR;
    return switch (show) {
      case LOW -> 'L';
      // An open collector is high by its pull-up only: it has let go.
      case HIGH -> openCollector ? 'Z' : 'H';
      case OFF -> 'Z';
      case UNKNOWN -> openCollector ? '?' : 'X';
      case SAME -> before;
      case TURNED -> before == 'H' ? 'L' : before == 'L' ? 'H' : before;
    };
  }
}
