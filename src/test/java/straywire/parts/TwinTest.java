package straywire.parts;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Random;
import java.util.stream.Stream;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import straywire.logic.PartLogic;
import straywire.logic.PinPlanes;
import straywire.logic.PinSpec;

/** 64 lanes at once give, lane by lane, what the slow twin gives. */
class TwinTest {
  private static final ShippedParts PARTS = new ShippedParts();

  static Stream<String> types() {
    return PARTS.types().stream();
  }

  static Stream<String> gates() {
    return PARTS.types().stream()
        .filter(t -> PARTS.part(t).orElseThrow().logic().cellCount() == 0)
        .filter(t -> listeners(PARTS.part(t).orElseThrow()).size() <= 17);
  }

  private static List<Integer> listeners(Part part) {
    return part.pins().stream().filter(p -> p.kind().listens()).map(PinSpec::number).toList();
  }

  @ParameterizedTest
  @MethodSource("types")
  void aPartInSixtyFourLanesEqualsItsTwinOnRandomLevelsWithUnknowns(String type) {
    new Run(type, 1).compare(60);
  }

  @Tag("slow")
  @ParameterizedTest
  @MethodSource("types")
  void aPartEqualsItsTwinOnLongerExercises(String type) {
    for (long seed = 2; seed <= 4; seed++) {
      new Run(type, seed).compare(150);
    }
  }

  @ParameterizedTest
  @MethodSource("gates")
  void aPartWithoutMemoryEqualsItsTwinOnAllInputs(String type) {
    PartFile file = PARTS.file(type).orElseThrow();
    Bench bench = new Bench(file.part());
    List<Integer> inputs = listeners(file.part());
    SlowPart twin = new SlowPart(file);
    int[] levels = new int[file.part().pinCount() + 1];
    for (int base = 0; base < 1 << inputs.size(); base += 64) {
      for (int i = 0; i < inputs.size(); i++) {
        long high = 0;
        for (int lane = 0; lane < 64; lane++) {
          high |= (long) (((base + lane) >> i) & 1) << lane;
        }
        bench.put(inputs.get(i), high, ~high);
      }
      bench.settle();
      int lanes = Math.min(64, 1 << inputs.size());
      for (int lane = 0; lane < lanes; lane++) {
        for (int i = 0; i < inputs.size(); i++) {
          levels[inputs.get(i)] = (((base + lane) >> i) & 1) == 1 ? SlowPart.HIGH : SlowPart.LOW;
        }
        int[] expected = twin.step(levels, levels);
        if (!Arrays.equals(drives(bench.pins, lane), expected)) {
          assertThat(drives(bench.pins, lane))
              .as("%s, inputs %s = %s", type, inputs, Integer.toBinaryString(base + lane))
              .isEqualTo(expected);
        }
      }
    }
  }

  private static int[] drives(PinPlanes pins, int lane) {
    int[] drives = new int[pins.can1.length];
    for (int pin = 0; pin < drives.length; pin++) {
      drives[pin] =
          (int) ((pins.drive0[pin] >>> lane) & 1)
              | (int) ((pins.drive1[pin] >>> lane) & 1) << 1
              | (int) ((pins.off[pin] >>> lane) & 1) << 2;
    }
    drives[0] = SlowPart.OFF;
    return drives;
  }

  /** One random exercise; a failure names its seed. */
  private static final class Run {
    private final String type;
    private final long seed;
    private final Random random;
    private final Bench bench;
    private final List<SlowPart> twins = new ArrayList<>();
    private final List<Integer> inputs;
    private final int[][] now;
    private final int[][] was;

    Run(String type, long seed) {
      this.type = type;
      this.seed = seed;
      random = new Random(seed * 1000 + type.hashCode());
      PartFile file = PARTS.file(type).orElseThrow();
      bench = new Bench(file.part());
      inputs = listeners(file.part());
      for (int lane = 0; lane < 64; lane++) {
        twins.add(new SlowPart(file));
      }
      now = new int[64][file.part().pinCount() + 1];
      was = new int[64][file.part().pinCount() + 1];
      for (int[] levels : now) {
        Arrays.fill(levels, SlowPart.UNKNOWN);
      }
    }

    void compare(int steps) {
      int[][] expected = new int[64][bench.part.pinCount() + 1];
      for (int[] drives : expected) {
        Arrays.fill(drives, SlowPart.OFF);
      }
      for (int step = 0; step < steps; step++) {
        for (int lane = 0; lane < 64; lane++) {
          was[lane] = now[lane].clone();
        }
        change(step == 0);
        putLevels();
        long lanes = step % 3 == 0 ? -1L : random.nextLong() | random.nextLong();
        boolean changed = bench.part.logic().step(bench.pins, bench.state, 3, lanes);
        boolean moved = false;
        for (int lane = 0; lane < 64; lane++) {
          if (((lanes >>> lane) & 1) == 1) {
            int[] before = expected[lane];
            expected[lane] = twins.get(lane).step(now[lane], was[lane]);
            moved |= !Arrays.equals(before, expected[lane]);
          }
          if (!Arrays.equals(drives(bench.pins, lane), expected[lane])) {
            assertThat(drives(bench.pins, lane))
                .as("%s seed %d step %d lane %d", type, seed, step, lane)
                .isEqualTo(expected[lane]);
          }
        }
        assertThat(changed || !moved).as("a moved output is reported").isTrue();
      }
      assertThat(bench.state[0] | bench.state[1] | bench.state[2]).as("other state").isZero();
      compareCells();
    }

    private void change(boolean all) {
      for (int lane = 0; lane < 64; lane++) {
        int unknownPercent = lane < 24 ? 0 : lane < 48 ? 8 : 30;
        for (int pin : inputs) {
          if (all || random.nextInt(100) < 30) {
            now[lane][pin] =
                random.nextInt(100) < unknownPercent
                    ? SlowPart.UNKNOWN
                    : random.nextBoolean() ? SlowPart.HIGH : SlowPart.LOW;
          }
        }
      }
    }

    private void putLevels() {
      for (int pin = 1; pin <= bench.part.pinCount(); pin++) {
        bench.pins.can1[pin] = plane(now, pin, SlowPart.HIGH);
        bench.pins.can0[pin] = plane(now, pin, SlowPart.LOW);
        bench.pins.was1[pin] = plane(was, pin, SlowPart.HIGH);
        bench.pins.was0[pin] = plane(was, pin, SlowPart.LOW);
      }
    }

    private static long plane(int[][] levels, int pin, int side) {
      long plane = 0;
      for (int lane = 0; lane < 64; lane++) {
        plane |= (levels[lane][pin] & side) != 0 ? 1L << lane : 0;
      }
      return plane;
    }

    private void compareCells() {
      PartLogic logic = bench.part.logic();
      for (int lane = 0; lane < 64; lane++) {
        List<Integer> cells = twins.get(lane).cells();
        assertThat(cells).hasSize(logic.cellCount());
        for (int cell = 0; cell < cells.size(); cell++) {
          int level =
              (int) ((bench.state[3 + 2 * cell] >>> lane) & 1) << 1
                  | (int) ((bench.state[4 + 2 * cell] >>> lane) & 1);
          if (level != cells.get(cell)) {
            assertThat(level)
                .as("%s seed %d lane %d cell %d", type, seed, lane, cell)
                .isEqualTo(cells.get(cell));
          }
        }
      }
    }
  }
}
