package straywire.ranking.published;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import java.util.Set;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** Small gate circuits of the diagnosis literature, any gate of which may be broken in any way. */
class GateDiagnosisTest {
  private static final double DIGITS = 5.1e-6;

  /** The book prints its costs in single precision: 4.7548876 for 4.7548875. */
  private static final double SINGLE = 2e-7;

  private static WeakFaults adder(int a, int b, int c) {
    return WeakCircuit.fresh(Netlist.published("full-adder"), a | b << 1 | c << 2);
  }

  /**
   * Reiter's full adder. Diagnoses read, in course material that works the example of Reiter
   * (1987); conflicts and the 22 of 32 sets computed.
   */
  @Test
  void reitersFullAdderHasThreeSmallestDiagnoses() {
    WeakFaults adder = adder(1, 0, 1).observe("X2", 1).observe("O1", 0);
    assertThat(adder.minimalDiagnoses()).containsExactlyInAnyOrder("X1", "A2 X2", "O1 X2");
    assertThat(adder.minimalConflicts()).containsExactlyInAnyOrder("X1 X2", "A2 O1 X1");
    assertThat(adder.diagnoses()).isEqualTo(22);
  }

  /** Computed. */
  @Test
  void measuringBetweenTheExclusiveOrsDecidesReitersAdder() {
    WeakFaults low = adder(1, 0, 1).observe("X2", 1).observe("O1", 0).observe("X1", 0);
    assertThat(low.minimalDiagnoses()).containsExactly("X1");
    WeakFaults high = adder(1, 0, 1).observe("X2", 1).observe("O1", 0).observe("X1", 1);
    assertThat(high.minimalDiagnoses()).containsExactlyInAnyOrder("A2 X2", "O1 X2");
  }

  /** Computed. */
  @Test
  void oneWrongOutputOfTheFullAdder() {
    assertThat(adder(0, 0, 0).observe("X2", 1).minimalDiagnoses())
        .containsExactlyInAnyOrder("X1", "X2");
    assertThat(adder(1, 0, 1).observe("O1", 0).minimalDiagnoses())
        .containsExactlyInAnyOrder("X1", "A2", "O1");
  }

  /** Read: Forbus and de Kleer, Building Problem Solvers (1993). */
  @Test
  void theRippleCarryIsTheBestProbeOfTheTwoBitAdder() {
    WeakFaults adder = WeakCircuit.fresh(Netlist.published("two-bit-adder"), 0).observe("X2.1", 1);
    assertThat(adder.smallestDiagnoses())
        .containsExactlyInAnyOrder("X2.1", "X1.1", "O1.0", "A2.0", "A1.0");
    assertThat(adder.cost("O1.0")).isCloseTo(6.7548876, within(SINGLE));
    assertThat(List.of("A1.0", "A2.0", "X1.1"))
        .allSatisfy(point -> assertThat(adder.cost(point)).isCloseTo(8.0, within(1e-9)));
    assertThat(List.of("X1.0", "X2.0", "A1.1", "A2.1", "O1.1", "a.0", "b.0", "c", "a.1", "b.1"))
        .allSatisfy(point -> assertThat(adder.cost(point)).isCloseTo(11.60964, within(DIGITS)));
    assertThat(adder.ranked("A1.0", "A2.0", "X1.1", "X1.0", "O1.0", "A1.1")).startsWith("O1.0");
  }

  /** Input 1 at the first of some equal stages, s1 to sN; the last output wrong. */
  private static WeakFaults cascade(String kind, int stages) {
    StringBuilder text = new StringBuilder("INPUT(s0)\nOUTPUT(s" + stages + ")\n");
    for (int i = 1; i <= stages; i++) {
      text.append("s%d = %s(s%d)\n".formatted(i, kind, i - 1));
    }
    boolean inverted = kind.equals("NOT") && stages % 2 == 1;
    return WeakCircuit.fresh(Netlist.of(text.toString()), 1)
        .observe("s" + stages, inverted ? 1 : 0);
  }

  /**
   * Computed; the example with inverters is de Kleer and Williams (1987), its table not at hand.
   */
  @ParameterizedTest
  @ValueSource(strings = {"BUF", "NOT"})
  void fourStagesAreProbedInTheMiddle(String kind) {
    WeakFaults cascade = cascade(kind, 4);
    assertThat(cascade.posterior("s2")).isCloseTo(0.24624, within(DIGITS));
    assertThat(pairs(cascade, 4)).isCloseTo(0.01492, within(DIGITS));
    assertThat(cascade.entropy()).isCloseTo(2.12211, within(DIGITS));
    assertThat(cascade.expectedEntropy("s1")).isCloseTo(1.31835, within(DIGITS));
    assertThat(cascade.expectedEntropy("s2")).isCloseTo(1.13216, within(DIGITS));
    assertThat(cascade.expectedEntropy("s3")).isCloseTo(1.31835, within(DIGITS));
    assertThat(cascade.ranked("s1", "s2", "s3")).startsWith("s2");
  }

  /** Computed. */
  @ParameterizedTest
  @CsvSource({
    "1, 2.75176",
    "2, 2.49037",
    "3, 2.35104",
    "4, 2.30675",
    "5, 2.35104",
    "6, 2.49037",
    "7, 2.75176"
  })
  void expectedEntropyInEightStages(int stage, double expected) {
    assertThat(cascade("NOT", 8).expectedEntropy("s" + stage)).isCloseTo(expected, within(DIGITS));
  }

  /** Computed. */
  @Test
  void eightStagesAreProbedInTheMiddle() {
    WeakFaults cascade = cascade("BUF", 8);
    assertThat(cascade.posterior("s5")).isCloseTo(0.12065, within(DIGITS));
    assertThat(pairs(cascade, 8)).isCloseTo(0.03412, within(DIGITS));
    assertThat(cascade.entropy()).isCloseTo(3.28666, within(DIGITS));
    assertThat(cascade.ranked("s1", "s2", "s3", "s4", "s5", "s6", "s7")).startsWith("s4");
  }

  private static double pairs(WeakFaults cascade, int stages) {
    double[] posterior = cascade.posterior();
    return IntStream.range(0, 1 << stages)
        .filter(d -> Integer.bitCount(d) == 2)
        .mapToDouble(d -> posterior[d])
        .sum();
  }

  /**
   * CSPLib problem 042 (CC BY 4.0), read: a full adder with all inputs 0 shows sum 1 and carry 0;
   * one output stuck at one level. Gates 1 and 3 there are the two exclusive-ORs.
   */
  @Test
  void aStuckOutputThatMakesTheSumOneIsAtAnExclusiveOr() {
    Netlist adder = Netlist.published("full-adder");
    Set<String> fit = StuckOutputs.explaining(adder, 0, out -> out.equals("X2"));
    assertThat(fit).containsExactlyInAnyOrder("X1/1", "X2/1");
  }
}
