package straywire.ranking.published;

import static org.assertj.core.api.Assertions.assertThat;

import java.math.BigInteger;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import java.util.SplittableRandom;
import java.util.TreeMap;
import java.util.TreeSet;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** The circuits of this folder are the ones the published figures speak of. */
class BenchmarkCircuitTest {
  /**
   * c17: read from its netlist; the rest computed by exhaustive simulation of independent entries.
   */
  @ParameterizedTest
  @CsvSource({
    "c17, 5, 2, 6, 17, 22",
    "74182, 9, 5, 19, 70, 83",
    "74L85, 11, 3, 41, 116, 129",
    "74283, 9, 5, 40, 108, 128",
    "c1355, 41, 32, 546, 1355, 1574",
    "c6288, 32, 32, 2416, 6288, 7744",
  })
  void inputsOutputsGatesLinesAndCollapsedFaults(
      String name, int inputs, int outputs, int gates, int lines, int collapsed) {
    Netlist circuit = Netlist.published(name);
    assertThat(circuit.inputs()).hasSize(inputs);
    assertThat(circuit.outputs()).hasSize(outputs);
    assertThat(circuit.gateNets()).hasSize(gates);
    assertThat(circuit.lines()).isEqualTo(lines);
    assertThat(circuit.collapsedFaults()).hasSize(collapsed);
  }

  /** Computed: how far all input patterns and all outputs can tell single stuck lines apart. */
  @ParameterizedTest
  @CsvSource({"c17, 22", "74182, 78", "74L85, 121", "74283, 128"})
  void faultyMachinesThatDifferInSomePattern(String name, int distinct) {
    SingleStuck machines = SingleStuck.exhaustive(Netlist.published(name));
    Set<List<Long>> behaviours = new HashSet<>();
    for (int fault = 0; fault < machines.faults(); fault++) {
      List<Long> behaviour = new ArrayList<>();
      for (int vector = 0; vector < machines.vectors(); vector++) {
        behaviour.add(machines.outputs(fault, vector));
      }
      behaviours.add(behaviour);
    }
    assertThat(behaviours).hasSize(distinct);
  }

  private static int bit(long vector, Netlist circuit, String input) {
    return (int) (vector >>> circuit.inputs().indexOf(circuit.net(input)) & 1);
  }

  private static int level(Netlist circuit, long vector, String output) {
    long[] levels = circuit.levels(circuit.spread(vector), circuit.noHolds());
    return (int) (levels[circuit.net(output)] & 1);
  }

  private static int number(Netlist circuit, long vector, String letter, int first) {
    int number = 0;
    for (int i = 0; i < 4; i++) {
      number |= bit(vector, circuit, letter + (first + i)) << i;
    }
    return number;
  }

  @Test
  void theFourBitAdderAdds() {
    Netlist adder = Netlist.published("74283");
    for (long vector = 0; vector < 512; vector++) {
      int sum =
          number(adder, vector, "A", 1) + number(adder, vector, "B", 1) + bit(vector, adder, "C0");
      int shown = level(adder, vector, "C4") << 4;
      for (int i = 0; i < 4; i++) {
        shown |= level(adder, vector, "S" + (i + 1)) << i;
      }
      assertThat(shown).as("vector %d", vector).isEqualTo(sum);
    }
  }

  @Test
  void theComparatorCompares() {
    Netlist comparator = Netlist.published("74L85");
    for (long vector = 0; vector < 2048; vector++) {
      int order =
          Integer.compare(number(comparator, vector, "A", 0), number(comparator, vector, "B", 0));
      int greater = order > 0 || order == 0 && bit(vector, comparator, "GI") == 1 ? 1 : 0;
      int less = order < 0 || order == 0 && bit(vector, comparator, "LI") == 1 ? 1 : 0;
      int equal = order == 0 && bit(vector, comparator, "EI") == 1 ? 1 : 0;
      assertThat(level(comparator, vector, "GO")).as("vector %d", vector).isEqualTo(greater);
      assertThat(level(comparator, vector, "LO")).as("vector %d", vector).isEqualTo(less);
      assertThat(level(comparator, vector, "EO")).as("vector %d", vector).isEqualTo(equal);
    }
  }

  /** Against a carry worked out bit by bit; generate and propagate are low when active. */
  @Test
  void theCarryGeneratorLooksAhead() {
    Netlist generator = Netlist.published("74182");
    for (long vector = 0; vector < 512; vector++) {
      int carry = bit(vector, generator, "CN");
      int generate = 0;
      int propagate = 1;
      String[] outputs = {"CX", "CY", "CZ"};
      for (int i = 0; i < 4; i++) {
        int g = 1 - bit(vector, generator, "G" + i);
        int p = 1 - bit(vector, generator, "P" + i);
        carry = g | p & carry;
        generate = g | p & generate;
        propagate &= p;
        if (i < 3) {
          assertThat(level(generator, vector, outputs[i])).as("%d %d", vector, i).isEqualTo(carry);
        }
      }
      assertThat(level(generator, vector, "G")).as("vector %d", vector).isEqualTo(1 - generate);
      assertThat(level(generator, vector, "P")).as("vector %d", vector).isEqualTo(1 - propagate);
    }
  }

  /** Input vector, lowest bit first. */
  private static long vector(String bits) {
    return new BigInteger(new StringBuilder(bits).reverse().toString(), 2).longValueExact();
  }

  private static final String FACTORS = "01001000000100010001000110100000";

  /** CSPLib problem 043 (CC BY 4.0), read. */
  @Test
  void theMultiplierMultiplies() {
    Netlist multiplier = Netlist.published("c6288");
    long vector = vector(FACTORS);
    assertThat(vector & 0xffff).isEqualTo(34834L);
    assertThat(vector >>> 16).isEqualTo(1416L);
    long product = 0;
    for (int i = 0; i < 32; i++) {
      long bit = level(multiplier, vector, multiplier.name(multiplier.outputs().get(i)));
      product |= bit << i;
    }
    assertThat(product).isEqualTo(34834L * 1416).isEqualTo(49324944L);
  }

  /**
   * CSPLib problem 043: one output bit of c6288 turned, all gate outputs that stuck at one level
   * explain it. The task is read; the counts, for bit 0 to 31, are computed.
   */
  @Test
  void singleFaultsThatTurnOneBitOfTheProduct() {
    int[] published = {
      1, 9, 18, 27, 11, 45, 54, 23, 11, 11, 90, 80, 87, 10, 91, 21, 135, 127, 101, 104, 33, 31, 37,
      33, 64, 25, 46, 37, 28, 19, 1, 10
    };
    Netlist multiplier = Netlist.published("c6288");
    int[] counts = new int[published.length];
    for (int bit = 0; bit < counts.length; bit++) {
      String turned = multiplier.name(multiplier.outputs().get(bit));
      counts[bit] = StuckOutputs.explaining(multiplier, vector(FACTORS), turned::equals).size();
    }
    assertThat(counts).containsExactly(published);
    assertThat(Arrays.stream(counts).sum()).isEqualTo(1420);
  }

  /**
   * CSPLib problem 042 (CC BY 4.0), read: of five single faults of c1355 three can never be told
   * apart. Random vectors cannot prove that, but would show it wrong; that the others differ they
   * do prove.
   */
  @Test
  void fiveFaultsOfC1355FallIntoThreeClasses() {
    Netlist circuit = Netlist.published("c1355");
    List<String> faults = List.of("1081/1", "1177/0", "1258/1", "1307/0", "1339/0");
    TreeMap<String, List<Long>> behaviours = new TreeMap<>();
    SplittableRandom random = new SplittableRandom(1355);
    for (int round = 0; round < 100; round++) {
      long[] inputs = random.longs(circuit.inputs().size()).toArray();
      for (String fault : faults) {
        int slash = fault.indexOf('/');
        int net = circuit.net(fault.substring(0, slash) + "gat");
        Netlist.Holds holds = circuit.noHolds();
        holds.hold(net, Integer.parseInt(fault.substring(slash + 1)), -1);
        long[] levels = circuit.levels(inputs, holds);
        List<Long> seen = behaviours.computeIfAbsent(fault, f -> new ArrayList<>());
        circuit.outputs().forEach(output -> seen.add(levels[output]));
      }
    }
    TreeMap<String, TreeSet<String>> classes = new TreeMap<>();
    behaviours.forEach(
        (fault, seen) ->
            behaviours.forEach(
                (other, same) -> {
                  if (seen.equals(same)) {
                    classes.computeIfAbsent(fault, f -> new TreeSet<>()).add(other);
                  }
                }));
    assertThat(Set.copyOf(classes.values()))
        .containsExactlyInAnyOrder(
            new TreeSet<>(Set.of("1081/1")),
            new TreeSet<>(Set.of("1258/1")),
            new TreeSet<>(Set.of("1177/0", "1307/0", "1339/0")));
  }
}
