package straywire.ranking.published;

import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import java.util.TreeSet;
import java.util.function.Predicate;
import straywire.ranking.Posterior;

/** Diagnosis with one gate output stuck at 0 or 1, all alike before, by one look at all outputs. */
final class StuckOutputs {
  private StuckOutputs() {}

  /**
   * Faults that turn exactly the outputs given and no other, as "gate/level".
   *
   * @param vector bit i for input i
   */
  static Set<String> explaining(Netlist circuit, long vector, Predicate<String> turned) {
    long[] inputs = circuit.spread(vector);
    long[] healthy = circuit.levels(inputs, circuit.noHolds());
    List<Netlist.StuckAt> faults = new ArrayList<>();
    for (int net : circuit.gateNets()) {
      faults.add(new Netlist.StuckAt(net, 0));
      faults.add(new Netlist.StuckAt(net, 1));
    }
    double[] priors = new double[faults.size()];
    double[] logLikelihoods = new double[faults.size()];
    for (int first = 0; first < faults.size(); first += Long.SIZE) {
      int count = Math.min(Long.SIZE, faults.size() - first);
      Netlist.Holds holds = circuit.noHolds();
      for (int i = 0; i < count; i++) {
        Netlist.StuckAt fault = faults.get(first + i);
        holds.hold(fault.line(), fault.level(), 1L << i);
      }
      long[] levels = circuit.levels(inputs, holds);
      long fits = -1;
      for (int output : circuit.outputs()) {
        long changed = levels[output] ^ healthy[output];
        fits &= turned.test(circuit.name(output)) ? changed : ~changed;
      }
      for (int i = 0; i < count; i++) {
        priors[first + i] = 1;
        logLikelihoods[first + i] = (fits >>> i & 1) == 1 ? 0 : Double.NEGATIVE_INFINITY;
      }
    }
    double[] posterior = Posterior.of(priors, logLikelihoods);
    Set<String> explaining = new TreeSet<>();
    for (int f = 0; f < faults.size(); f++) {
      if (posterior[f] > 0) {
        explaining.add(circuit.name(faults.get(f).line()) + "/" + faults.get(f).level());
      }
    }
    return explaining;
  }
}
