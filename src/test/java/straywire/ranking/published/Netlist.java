package straywire.ranking.published;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;

/**
 * A combinational circuit read from the bench format, with every line of it: one stem for each net,
 * and one branch for each gate input on a net that goes to more than one.
 *
 * <p>Evaluation works on 64 machines at once, one bit each; a line can be held low or high in any
 * of them.
 */
final class Netlist {
  private record Gate(String kind, int output, int[] inputs) {}

  private final List<String> names = new ArrayList<>();
  private final Map<String, Integer> byName = new HashMap<>();
  private final List<Integer> inputs = new ArrayList<>();
  private final List<Integer> outputs = new ArrayList<>();
  private final List<Gate> gates = new ArrayList<>();
  private final List<Integer> gateNets = new ArrayList<>();

  /** Net of each line; the first lines are the stems, in the order of the nets. */
  private final int[] netOfLine;

  private final int[] fanout;

  private Netlist(String text) {
    Map<String, String> functions = new HashMap<>();
    List<String> outputNames = new ArrayList<>();
    List<String> order = new ArrayList<>();
    for (String raw : text.lines().toList()) {
      String line = raw.replaceAll("#.*", "").replaceAll("\\s", "");
      if (line.startsWith("INPUT(")) {
        inputs.add(numbered(line.substring(6, line.length() - 1)));
      } else if (line.startsWith("OUTPUT(")) {
        outputNames.add(line.substring(7, line.length() - 1));
      } else if (!line.isEmpty()) {
        String output = line.substring(0, line.indexOf('='));
        order.add(output);
        functions.put(output, line.substring(line.indexOf('=') + 1));
      }
    }
    List<Gate> byNet = new ArrayList<>();
    order.forEach(output -> place(output, functions, byNet));
    outputNames.forEach(output -> outputs.add(byName.get(output)));
    fanout = new int[names.size()];
    byNet.forEach(
        gate -> {
          for (int input : gate.inputs) {
            fanout[input]++;
          }
        });
    outputs.forEach(output -> fanout[output]++);
    List<Integer> lines = new ArrayList<>();
    for (int net = 0; net < names.size(); net++) {
      lines.add(net);
    }
    for (Gate gate : byNet) {
      int[] from = gate.inputs.clone();
      for (int i = 0; i < from.length; i++) {
        if (fanout[from[i]] > 1) {
          lines.add(from[i]);
          from[i] = lines.size() - 1;
        }
      }
      gates.add(new Gate(gate.kind, gate.output, from));
      gateNets.add(gate.output);
    }
    netOfLine = lines.stream().mapToInt(Integer::intValue).toArray();
  }

  static Netlist of(String text) {
    return new Netlist(text);
  }

  /** A circuit of the resources beside this package, by its file name without the ending. */
  static Netlist published(String name) {
    try (InputStream in = Netlist.class.getResourceAsStream("/published/" + name + ".bench")) {
      return new Netlist(new String(in.readAllBytes(), StandardCharsets.UTF_8));
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  private int numbered(String name) {
    return byName.computeIfAbsent(
        name,
        n -> {
          names.add(n);
          return names.size() - 1;
        });
  }

  /** Places a gate after the gates it reads. */
  private void place(String output, Map<String, String> functions, List<Gate> placed) {
    if (byName.containsKey(output)) {
      return;
    }
    String function = functions.get(output);
    String kind = function.substring(0, function.indexOf('(')).toLowerCase(Locale.ROOT);
    String[] from = function.substring(function.indexOf('(') + 1, function.length() - 1).split(",");
    int[] nets = new int[from.length];
    for (int i = 0; i < from.length; i++) {
      place(from[i], functions, placed);
      nets[i] = byName.get(from[i]);
    }
    placed.add(new Gate(kind.equals("buff") ? "buf" : kind, numbered(output), nets));
  }

  int net(String name) {
    return byName.get(name);
  }

  String name(int net) {
    return names.get(net);
  }

  List<Integer> inputs() {
    return inputs;
  }

  List<Integer> outputs() {
    return outputs;
  }

  /** Output nets of the gates, each gate after those it reads. */
  List<Integer> gateNets() {
    return gateNets;
  }

  int lines() {
    return netOfLine.length;
  }

  int netOfLine(int line) {
    return netOfLine[line];
  }

  /** Lines held to a level in some of 64 machines. */
  final class Holds {
    private final long[] low = new long[lines()];
    private final long[] high = new long[lines()];

    Holds hold(int line, int level, long machines) {
      (level == 0 ? low : high)[line] |= machines;
      return this;
    }

    private long apply(int line, long healthy) {
      return healthy & ~low[line] | high[line];
    }
  }

  Holds noHolds() {
    return new Holds();
  }

  /**
   * Level of every net in 64 machines.
   *
   * @param inputWords one word for each input
   */
  long[] levels(long[] inputWords, Holds holds) {
    long[] levels = new long[names.size()];
    for (int i = 0; i < inputWords.length; i++) {
      levels[inputs.get(i)] = holds.apply(inputs.get(i), inputWords[i]);
    }
    for (Gate gate : gates) {
      long word = gate.kind.contains("and") ? -1 : 0;
      for (int line : gate.inputs) {
        long level = levels[netOfLine[line]];
        level = line < names.size() ? level : holds.apply(line, level);
        word =
            switch (gate.kind) {
              case "and", "nand" -> word & level;
              case "or", "nor", "not", "buf" -> word | level;
              case "xor" -> word ^ level;
              default -> throw new IllegalStateException("No gate " + gate.kind);
            };
      }
      boolean inverts = gate.kind.equals("not") || gate.kind.startsWith("n");
      levels[gate.output] = holds.apply(gate.output, inverts ? ~word : word);
    }
    return levels;
  }

  /** The same input vector for all 64 machines; bit i of the vector for input i. */
  long[] spread(long vector) {
    long[] words = new long[inputs.size()];
    for (int i = 0; i < words.length; i++) {
      words[i] = (vector >>> i & 1) == 1 ? -1 : 0;
    }
    return words;
  }

  /** One line stuck at one level. */
  record StuckAt(int line, int level) {}

  /**
   * One fault of each class of faults that the gates make equal: an AND with one input low is an
   * AND with its output low, and so on; an exclusive-OR makes none equal.
   */
  List<StuckAt> collapsedFaults() {
    int[] parent = new int[2 * lines()];
    for (int f = 0; f < parent.length; f++) {
      parent[f] = f;
    }
    for (Gate gate : gates) {
      for (int line : gate.inputs) {
        for (int level = 0; level < 2; level++) {
          int same = equalOutput(gate.kind, level);
          if (same >= 0) {
            parent[root(parent, 2 * line + level)] = root(parent, 2 * gate.output + same);
          }
        }
      }
    }
    List<StuckAt> faults = new ArrayList<>();
    for (int f = 0; f < parent.length; f++) {
      if (parent[f] == f) {
        faults.add(new StuckAt(f / 2, f % 2));
      }
    }
    return faults;
  }

  /** Output level that an input stuck at a level forces, -1 for none. */
  private static int equalOutput(String kind, int level) {
    return switch (kind) {
      case "buf" -> level;
      case "not" -> 1 - level;
      case "and" -> level == 0 ? 0 : -1;
      case "nand" -> level == 0 ? 1 : -1;
      case "or" -> level == 1 ? 1 : -1;
      case "nor" -> level == 1 ? 0 : -1;
      case "xor" -> -1;
      default -> throw new IllegalStateException("No gate " + kind);
    };
  }

  private static int root(int[] parent, int f) {
    int root = f;
    while (parent[root] != root) {
      root = parent[root];
    }
    return root;
  }
}
