package straywire.parts;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Random;
import java.util.Set;
import java.util.regex.Pattern;
import straywire.logic.PinSpec;

/**
 * Levels to put on the inputs of a part, 64 lanes at once. A part without memory gets all
 * combinations; one with memory a random walk in each lane that moves one input at a time, since
 * what happens when a clock and its data move together is a matter of nanoseconds. What clears,
 * sets or loads is moved seldom, or counts would never get far.
 */
final class PartWalk {
  private static final int LANES = Long.SIZE;
  private static final int USUAL_STEPS = 700;

  /** Most inputs of a part without memory that are tried in all combinations. */
  private static final int ALL_OF = 18;

  /** In the first steps of a walk everything is moved, so that the state becomes known. */
  private static final int WAKING = 40;

  private static final Pattern SELDOM =
      Pattern.compile(".*(CLR|RESET|LOAD|//LD|PRE|\\dSET|R0\\(|R9\\().*");

  private static final Pattern CLOCK = Pattern.compile(".*(CLK|CK|UP|DOWN).*");

  /** Long counts take long walks. */
  private static final Map<String, Integer> STEPS =
      Map.of("4040", 9000, "4060", 18000, "74x590", 6000);

  /**
   * Inputs kept low: decimal counters are not loaded with 8 to 15, since makers differ in what
   * comes after 10 to 15, and of large memories only the first 2048 words are kept.
   */
  private static final Map<String, Set<String>> KEPT_LOW =
      Map.of(
          "74x160", Set.of("D"),
          "74x162", Set.of("D"),
          "74x190", Set.of("D"),
          "74x192", Set.of("D"),
          "62256", Set.of("A11", "A12", "A13", "A14"),
          "28C256", Set.of("A11", "A12", "A13", "A14"),
          "28C64", Set.of("A11", "A12"));

  /** Of a large memory most address inputs rest, so that words are met again. */
  private static final Pattern HIGH_ADDRESS = Pattern.compile("A([3-9]|1\\d)");

  private final Part part;
  private final List<PinSpec> inputs;
  private final Random random;

  PartWalk(Part part, List<PinSpec> inputs) {
    this.part = part;
    this.inputs = inputs;
    random = new Random(part.type().hashCode());
  }

  /** For each step the level of each input, in the order of the inputs. */
  List<long[]> steps() {
    return part.logic().cellCount() == 0 ? combinations() : walk();
  }

  private List<long[]> combinations() {
    if (inputs.size() > ALL_OF) {
      throw new IllegalStateException(part.type() + " has too many inputs for all combinations");
    }
    List<long[]> steps = new ArrayList<>();
    for (int base = 0; base < 1 << inputs.size(); base += LANES) {
      long[] levels = new long[inputs.size()];
      for (int i = 0; i < levels.length; i++) {
        for (int lane = 0; lane < LANES; lane++) {
          levels[i] |= (long) (((base + lane) >> i) & 1) << lane;
        }
      }
      steps.add(levels);
    }
    return steps;
  }

  private List<long[]> walk() {
    Set<String> low = KEPT_LOW.getOrDefault(part.type(), Set.of());
    boolean large = part.logic().cellCount() > 1000;
    List<Integer> often = new ArrayList<>();
    List<Integer> seldom = new ArrayList<>();
    for (int i = 0; i < inputs.size(); i++) {
      String name = inputs.get(i).name();
      if (low.contains(name)) {
        continue;
      }
      if (SELDOM.matcher(name).matches() || (large && HIGH_ADDRESS.matcher(name).matches())) {
        seldom.add(i);
      } else {
        for (int times = 0; times < (CLOCK.matcher(name).matches() ? 4 : 1); times++) {
          often.add(i);
        }
      }
    }
    long[] levels = new long[inputs.size()];
    for (int i = 0; i < levels.length; i++) {
      levels[i] = low.contains(inputs.get(i).name()) ? 0 : random.nextLong();
    }
    List<long[]> steps = new ArrayList<>(List.of(levels.clone()));
    int most = STEPS.getOrDefault(part.type(), USUAL_STEPS);
    while (steps.size() < most) {
      for (int lane = 0; lane < LANES; lane++) {
        int everySo = steps.size() < WAKING ? 3 : lane < LANES / 2 ? 32 : 2 * most;
        boolean rare = !seldom.isEmpty() && random.nextInt(everySo) == 0;
        List<Integer> among = rare ? seldom : often;
        levels[among.get(random.nextInt(among.size()))] ^= 1L << lane;
      }
      steps.add(levels.clone());
    }
    return steps;
  }
}
