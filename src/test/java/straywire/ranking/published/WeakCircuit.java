package straywire.ranking.published;

import java.util.List;
import java.util.Map;
import java.util.OptionalInt;

/**
 * A circuit of gates any of which may be broken and then do anything: what follows about a net is
 * found by trying every output of the broken gates against the evidence.
 */
final class WeakCircuit {
  private final Netlist circuit;
  private final long[] inputs;

  private WeakCircuit(Netlist circuit, long vector) {
    this.circuit = circuit;
    this.inputs = circuit.spread(vector);
  }

  /**
   * Prior 0.01 of each gate, 2 values at each net.
   *
   * @param vector bit i for input i
   */
  static WeakFaults fresh(Netlist circuit, long vector) {
    WeakCircuit weak = new WeakCircuit(circuit, vector);
    List<String> gates = circuit.gateNets().stream().map(circuit::name).toList();
    return new WeakFaults(gates, 0.01, 2, weak::value);
  }

  private OptionalInt value(int broken, Map<String, Integer> evidence, String point) {
    int free = Integer.bitCount(broken);
    boolean low = false;
    boolean high = false;
    for (long first = 0; first < 1L << free; first += Long.SIZE) {
      long[] levels = circuit.levels(inputs, choices(broken, first));
      long fits = free < 6 ? (1L << (1 << free)) - 1 : -1;
      for (Map.Entry<String, Integer> seen : evidence.entrySet()) {
        long level = levels[circuit.net(seen.getKey())];
        fits &= seen.getValue() == 1 ? level : ~level;
      }
      long level = levels[circuit.net(point)];
      high |= (fits & level) != 0;
      low |= (fits & ~level) != 0;
    }
    if (!low && !high) {
      throw new IllegalStateException("The evidence excludes this hypothesis already");
    }
    return low == high ? OptionalInt.empty() : OptionalInt.of(high ? 1 : 0);
  }

  /** Machine i holds the broken gates to the bits of {@code first} + i. */
  private Netlist.Holds choices(int broken, long first) {
    Netlist.Holds holds = circuit.noHolds();
    int bit = 0;
    for (int gate = 0; gate < circuit.gateNets().size(); gate++) {
      if ((broken >> gate & 1) == 1) {
        long ones = 0;
        for (int machine = 0; machine < Long.SIZE; machine++) {
          ones |= (first + machine >> bit & 1) << machine;
        }
        int net = circuit.gateNets().get(gate);
        holds.hold(net, 1, ones).hold(net, 0, ~ones);
        bit++;
      }
    }
    return holds;
  }
}
