package straywire.ranking.published;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/**
 * The polybox of Davis (1984) and de Kleer and Williams (1987). Conflicts, diagnoses and costs for
 * f=10 and for f=10, g=12: read in the worked run published with Forbus and de Kleer, Building
 * Problem Solvers (MIT Press 1993). Everything else, all probabilities and entropies: computed once
 * by brute force outside this project, with the rule of update of {@link WeakFaults} (the rule is
 * from memory, derived anew).
 */
class PolyboxTest {
  /** Half a unit of the last digit of the table. */
  private static final double DIGITS = 5.1e-6;

  /** The book prints its costs in single precision: 4.7548876 for 4.7548875. */
  private static final double SINGLE = 2e-7;

  private static WeakFaults f10() {
    return Polybox.fresh().observe("f", 10);
  }

  private static WeakFaults f10g12() {
    return f10().observe("g", 12);
  }

  /** Symptoms like {@code "f=10 g=12"}. */
  private static WeakFaults after(String symptoms) {
    WeakFaults box = Polybox.fresh();
    for (String symptom : symptoms.split(" ")) {
      box.observe(symptom.substring(0, 1), Integer.parseInt(symptom.substring(2)));
    }
    return box;
  }

  @Test
  void nothingIsBrokenWhenBothSumsAreRight() {
    WeakFaults box = after("f=12 g=12");
    assertThat(box.minimalDiagnoses()).containsExactly("");
    assertThat(box.minimalConflicts()).isEmpty();
  }

  /** First two rows read, the rest computed; 28, 27, 25 and 24 computed. */
  @ParameterizedTest
  @CsvSource({
    "f=10, 28, A1 M1 M2, A1|M1|M2",
    "f=10 g=12, 27, A1 M1 M2|A1 A2 M1 M3, A1|M1|A2 M2|M2 M3",
    "f=10 g=12 x=4, 16, M1, M1",
    "f=10 g=12 x=6, , A1 M2|A1 A2 M3, A1|A2 M2|M2 M3",
    "f=10 g=12 x=5, , M1|A1 M2|A1 A2 M3, A1 M1|A2 M1 M2|M1 M2 M3",
    "f=10 g=10, 25, A1 M1 M2|A2 M2 M3, M2|A1 A2|A1 M3|A2 M1|M1 M3",
    "f=10 g=14, 24, A1 M1 M2|A2 M2 M3|A1 A2 M1 M3,"
        + " A1 A2|A1 M2|A1 M3|A2 M1|A2 M2|M1 M2|M1 M3|M2 M3",
  })
  void conflictsAndDiagnosesAreThePublishedOnes(
      String symptoms, Integer diagnoses, String conflicts, String minimal) {
    WeakFaults box = after(symptoms);
    assertThat(box.minimalConflicts()).containsExactlyInAnyOrder(conflicts.split("\\|"));
    assertThat(box.minimalDiagnoses()).containsExactlyInAnyOrder(minimal.split("\\|"));
    if (diagnoses != null) {
      assertThat(box.diagnoses()).isEqualTo(diagnoses);
    }
  }

  /** Computed. */
  @Test
  void posteriorAfterOneWrongSum() {
    for (String single : List.of("A1", "M1", "M2")) {
      assertThat(f10().posterior(single)).isCloseTo(0.323422, within(5.1e-7));
    }
    for (String other : List.of("M3", "A2")) {
      assertThat(f10().posterior("A1", other)).isCloseTo(0.003267, within(5.1e-7));
    }
  }

  /** Computed. */
  @Test
  void posteriorAfterOneWrongAndOneRightSum() {
    WeakFaults box = f10g12();
    assertThat(box.posterior("A1")).isCloseTo(0.496225, within(5.1e-7));
    assertThat(box.posterior("M1")).isCloseTo(0.496225, within(5.1e-7));
    assertThat(box.posterior("A1", "M1")).isCloseTo(0.005012, within(5.1e-7));
    assertThat(box.marginal("M2")).isCloseTo(0.001272, within(5.1e-7));
  }

  /** Computed. */
  @Test
  void posteriorOfTheOtherSymptoms() {
    assertThat(after("f=10 g=12 x=4").posterior("M1")).isCloseTo(0.997473, within(5.1e-7));
    assertThat(after("f=10 g=12 x=6").posterior("A1")).isCloseTo(0.996199, within(5.1e-7));
    assertThat(after("f=10 g=10").posterior("M2")).isCloseTo(0.994911, within(5.1e-7));
    WeakFaults apart = after("f=10 g=14");
    for (String pair : apart.minimalDiagnoses()) {
      assertThat(apart.posterior(pair.split(" "))).isCloseTo(0.123434, within(5.1e-7));
    }
    assertThat(apart.marginal("M2")).isCloseTo(0.501266, within(5.1e-7));
    for (String other : List.of("A1", "A2", "M1", "M3")) {
      assertThat(apart.marginal(other)).isCloseTo(0.377832, within(5.1e-7));
    }
  }

  /**
   * Computed with the published closed form
   *
   * <pre>He = H + sum over n predicted v of p(v) log p(v) + p(U) log p(U) - n p(U)/m log(p(U)/m)
   * </pre>
   *
   * U being the hypotheses that predict nothing. Mutual information with 1/m for each value under U
   * is the same: the entropy of the outcome is - sum p(v) log p(v) - (m-n) p(U)/m log(p(U)/m), of
   * which p(U) log m is noise, and
   *
   * <pre>(m-n) p(U)/m log(p(U)/m) + p(U) log m = p(U) log p(U) - n p(U)/m log(p(U)/m)</pre>
   *
   * which is the closed form with its last term. Here H and the information are the program's.
   */
  @ParameterizedTest
  @CsvSource({
    "f=10, 1.82783, x, 0.86848",
    "f=10, 1.82783, y, 0.86848",
    "f=10, 1.82783, z, 1.75459",
    "f=10, 1.82783, g, 0.79021",
    "f=10 g=12, 1.07135, x, 0.03834",
    "f=10 g=12, 1.07135, y, 1.06355",
    "f=10 g=12, 1.07135, z, 1.06701",
    "f=10 g=12 x=4, 0.03058, y, 0.03058",
    "f=10 g=12 x=4, 0.03058, z, 0.03047",
    "f=10 g=12 x=6, 0.04609, y, 0.03189",
    "f=10 g=12 x=6, 0.04609, z, 0.03820",
    "f=10 g=10, 0.06187, x, 0.04743",
    "f=10 g=10, 0.06187, y, 0.03596",
    "f=10 g=10, 0.06187, z, 0.04743",
    "f=10 g=14, 3.10169, x, 1.77107",
    "f=10 g=14, 3.10169, y, 1.57557",
    "f=10 g=14, 3.10169, z, 1.77107",
  })
  void expectedEntropyAfterAMeasurement(
      String symptoms, double now, String point, double expected) {
    WeakFaults box = after(symptoms);
    assertThat(box.entropy()).isCloseTo(now, within(DIGITS));
    assertThat(box.expectedEntropy(point)).isCloseTo(expected, within(DIGITS));
  }

  /** Computed, from the entropies above. */
  @ParameterizedTest
  @CsvSource({
    "f=10, x y z g, g",
    "f=10 g=12, x y z, x",
    "f=10 g=12 x=4, y z, z",
    "f=10 g=12 x=6, y z, y",
    "f=10 g=10, x y z, y",
    "f=10 g=14, x y z, y",
  })
  void theProbeChosenFirst(String symptoms, String points, String first) {
    assertThat(after(symptoms).ranked(points.split(" "))).startsWith(first);
  }

  /** Read: Forbus and de Kleer (1993). The three best tie, in any order. */
  @Test
  void costsAfterOneWrongSumTieAtThreePoints() {
    WeakFaults box = f10();
    assertThat(List.of("x", "y", "g"))
        .allSatisfy(point -> assertThat(box.cost(point)).isCloseTo(2.0, within(1e-9)));
    assertThat(List.of("a", "b", "c", "d", "e", "z", "f"))
        .allSatisfy(point -> assertThat(box.cost(point)).isCloseTo(4.7548876, within(SINGLE)));
  }

  /** Read: Forbus and de Kleer (1993). */
  @Test
  void costsAfterOneWrongAndOneRightSumLeaveOneBest() {
    WeakFaults box = f10g12();
    assertThat(box.cost("x")).isCloseTo(0.0, within(1e-9));
    assertThat(List.of("a", "b", "c", "d", "e", "y", "z", "f", "g"))
        .allSatisfy(point -> assertThat(box.cost(point)).isCloseTo(2.0, within(1e-9)));
  }

  /** Either order of the same two readings leaves the same suspects, to the last digit or so. */
  @Test
  void theOrderOfTheReadingsDoesNotMatter() {
    assertThat(after("g=12 f=10 x=4").posterior())
        .containsExactly(after("f=10 g=12 x=4").posterior(), within(1e-12));
    assertThat(after("x=4 g=12 f=10").posterior())
        .containsExactly(after("f=10 g=12 x=4").posterior(), within(1e-12));
  }
}
