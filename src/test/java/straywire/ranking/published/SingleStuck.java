package straywire.ranking.published;

import java.util.ArrayList;
import java.util.List;

/** Every collapsed single stuck line of a small circuit under every input vector. */
final class SingleStuck {
  private final Netlist circuit;
  private final List<Netlist.StuckAt> faults;

  /** Levels of all nets: {@code levels[vector][64 faults][net]}. The last machine is healthy. */
  private final long[][][] levels;

  private SingleStuck(Netlist circuit) {
    this.circuit = circuit;
    faults = circuit.collapsedFaults();
    List<Netlist.Holds> groups = new ArrayList<>();
    for (int machine = 0; machine <= faults.size(); machine++) {
      if (machine % Long.SIZE == 0) {
        groups.add(circuit.noHolds());
      }
      if (machine < faults.size()) {
        Netlist.StuckAt fault = faults.get(machine);
        groups.get(machine / Long.SIZE).hold(fault.line(), fault.level(), 1L << machine);
      }
    }
    levels = new long[1 << circuit.inputs().size()][groups.size()][];
    for (int vector = 0; vector < levels.length; vector++) {
      for (int group = 0; group < groups.size(); group++) {
        levels[vector][group] = circuit.levels(circuit.spread(vector), groups.get(group));
      }
    }
  }

  static SingleStuck exhaustive(Netlist circuit) {
    return new SingleStuck(circuit);
  }

  int faults() {
    return faults.size();
  }

  int vectors() {
    return levels.length;
  }

  /** Number of the machine without a fault. */
  int healthy() {
    return faults.size();
  }

  int level(int machine, int vector, int net) {
    return (int) (levels[vector][machine / Long.SIZE][net] >>> machine & 1);
  }

  /** Levels of the outputs, bit i for output i. */
  long outputs(int machine, int vector) {
    long word = 0;
    for (int i = 0; i < circuit.outputs().size(); i++) {
      word |= (long) level(machine, vector, circuit.outputs().get(i)) << i;
    }
    return word;
  }
}
