package straywire.diagnosis.published;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collections;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import straywire.diagnosis.Posterior;
import straywire.diagnosis.StepChoice;

/**
 * Sequential probing of small circuits: one line stuck, one failing vector, all outputs seen, then
 * gate outputs probed one after the other until none tells the suspects left apart.
 */
class ProbesNeededTest {
  private static final long SEED = 74;
  private static final int VECTORS_EACH = 30;

  /** Picks one of the nets that would tell something. */
  private interface Policy {
    StepChoice.Worth<Integer> pick(List<StepChoice.Worth<Integer>> ranked);
  }

  /** Means over the runs of one policy. */
  private record Means(int runs, double suspects, double probes, double left) {}

  private static Means run(Netlist circuit, SingleStuck machines, Policy policy) {
    Random random = new Random(SEED);
    int runs = 0;
    double suspects = 0;
    double probes = 0;
    double left = 0;
    for (int fault = 0; fault < machines.faults(); fault++) {
      List<Integer> failing = new ArrayList<>();
      for (int vector = 0; vector < machines.vectors(); vector++) {
        if (machines.outputs(fault, vector) != machines.outputs(machines.healthy(), vector)) {
          failing.add(vector);
        }
      }
      Collections.shuffle(failing, random);
      for (int vector : failing.subList(0, Math.min(VECTORS_EACH, failing.size()))) {
        int[] counts = sitting(circuit, machines, fault, vector, policy);
        runs++;
        suspects += counts[0];
        probes += counts[1];
        left += counts[2];
      }
    }
    return new Means(runs, suspects / runs, probes / runs, left / runs);
  }

  /** Suspects before the first probe, probes made, suspects left. */
  private static int[] sitting(
      Netlist circuit, SingleStuck machines, int truth, int vector, Policy policy) {
    double[] equal = new double[machines.faults()];
    Arrays.fill(equal, 1);
    double[] logLikelihoods = new double[machines.faults()];
    for (int fault = 0; fault < machines.faults(); fault++) {
      if (machines.outputs(fault, vector) != machines.outputs(truth, vector)) {
        logLikelihoods[fault] = Double.NEGATIVE_INFINITY;
      }
    }
    int suspects = possible(Posterior.of(equal, logLikelihoods));
    for (int probes = 0; ; probes++) {
      double[] posterior = Posterior.of(equal, logLikelihoods);
      assertThat(posterior[truth]).isPositive();
      List<StepChoice.Worth<Integer>> useful = useful(circuit, machines, vector, posterior);
      if (useful.isEmpty()) {
        return new int[] {suspects, probes, possible(posterior)};
      }
      int net = policy.pick(StepChoice.ranked(useful)).step();
      for (int fault = 0; fault < machines.faults(); fault++) {
        if (machines.level(fault, vector, net) != machines.level(truth, vector, net)) {
          logLikelihoods[fault] = Double.NEGATIVE_INFINITY;
        }
      }
    }
  }

  private static List<StepChoice.Worth<Integer>> useful(
      Netlist circuit, SingleStuck machines, int vector, double[] posterior) {
    List<StepChoice.Worth<Integer>> useful = new ArrayList<>();
    double[][] outcomes = new double[posterior.length][];
    for (int net : circuit.gateNets()) {
      for (int fault = 0; fault < posterior.length; fault++) {
        int level = machines.level(fault, vector, net);
        outcomes[fault] = new double[] {1 - level, level};
      }
      double bits = StepChoice.information(posterior, outcomes);
      if (bits > 1e-9) {
        useful.add(new StepChoice.Worth<>(net, bits, 1));
      }
    }
    return useful;
  }

  private static int possible(double[] posterior) {
    return (int) Arrays.stream(posterior).filter(p -> p > 0).count();
  }

  /**
   * Computed, with other random vectors (hence the tolerance of 0.15 probes and half a suspect). The
   * mean number of probes must also stay below log2 of the mean number of suspects plus a half, and
   * not above that of probing any useful net.
   */
  @ParameterizedTest
  @CsvSource({
    "c17, 3.03, 1.02, 1.47",
    "74182, 3.15, 1.17, 1.44",
    "74L85, 5.25, 1.94, 1.23",
    "74283, 5.76, 1.70, 1.98",
  })
  void probesByInformationAreAsFewAsPublished(
      String name, double suspects, double probes, double left) {
    Netlist circuit = Netlist.published(name);
    SingleStuck machines = SingleStuck.exhaustive(circuit);
    Means informed = run(circuit, machines, ranked -> ranked.get(0));
    Random random = new Random(SEED + 1);
    Means chance = run(circuit, machines, ranked -> ranked.get(random.nextInt(ranked.size())));
    String all = name + " by information " + informed + ", by chance " + chance;

    assertThat(informed.suspects).as(all).isCloseTo(suspects, within(0.5));
    assertThat(informed.probes).as(all).isCloseTo(probes, within(0.15));
    assertThat(informed.left).as(all).isCloseTo(left, within(0.3));
    assertThat(informed.probes).as(all).isLessThanOrEqualTo(chance.probes);
    assertThat(informed.probes)
        .as(all)
        .isLessThan(Math.log(informed.suspects) / Math.log(2) + 0.5);
    System.out.println(all);
  }
}
