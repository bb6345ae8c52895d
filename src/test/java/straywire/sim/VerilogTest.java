package straywire.sim;

import static org.assertj.core.api.Assertions.assertThat;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Random;
import java.util.TreeMap;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import straywire.advice.RuleBase;
import straywire.faults.FaultExpansion;
import straywire.faults.Hypothesis;
import straywire.faults.Mechanism;
import straywire.faults.PriorsFile;
import straywire.faults.VariationOf;
import straywire.module.Module;
import straywire.module.ModuleFile;
import straywire.parts.Iverilog;
import straywire.parts.ShippedParts;

/**
 * The demo module against an independent simulator, healthy and with every single fault that
 * Verilog can say: every lamp after every step, where unknown equals only unknown.
 */
@Tag("slow")
class VerilogTest {
  private static final Path PARTS = Path.of("src", "test", "resources", "verilog");
  private static final int STEPS = 200;

  /** Units of time between steps; what still moves in the second half does not come to rest. */
  private static final int STEP_TIME = 400;

  private static final Module MODULE =
      ModuleFile.readShipped(Path.of("cases", "beat-memory", "module.yaml"), new ShippedParts());

  @TempDir private Path folder;

  @Test
  void everyLampAgreesWithVerilogAtEveryStepUnderEveryFault() {
    assumeTrue(
        Iverilog.isInstalled(),
        "iverilog is not installed: the check against an independent simulator is skipped");
    List<Hypothesis> faults = faults();
    Map<Mechanism, Integer> mechanisms = new EnumMap<>(Mechanism.class);
    faults.forEach(f -> mechanisms.merge(f.mechanism(), 1, Integer::sum));
    assertThat(faults.get(0).mechanism()).isEqualTo(Mechanism.NOTHING_WRONG);
    assertThat(faults).hasSizeGreaterThan(25);
    assertThat(mechanisms).hasSizeGreaterThan(20);

    List<Tally> tallies =
        IntStream.range(0, Lanes.groups(faults.size()))
            .parallel()
            .mapToObj(batch -> compare(faults, batch))
            .toList();
    Tally tally = Tally.sum(tallies);
    System.out.printf(
        "Verilog: %d boards (%s), %d steps each, %d lamp readings, %.2f %% unknown, %d differ%n",
        faults.size(),
        mechanisms,
        STEPS,
        tally.readings,
        100.0 * tally.unknown / tally.readings,
        tally.differ);
    tally.firstOfBoard.values().forEach(System.out::println);
    assertThat(tally.firstOfBoard.values()).isEmpty();
    assertThat(tally.unknown).isPositive().isLessThan(tally.readings / 4);
  }

  /** Nothing wrong first, then all that the rules propose and Verilog can say. */
  private static List<Hypothesis> faults() {
    return FaultExpansion.expandAll(
            MODULE, RuleBase.shipped().propose(MODULE), PriorsFile.shipped())
        .stream()
        .filter(h -> sayable(h.mechanism()))
        .toList();
  }

  /** Without a sane supply there is no logic; of the unlisted nothing is known to be written. */
  private static boolean sayable(Mechanism mechanism) {
    return switch (mechanism) {
      case SUPPLY_REVERSED, RAILS_JOINED, PART_UNLISTED -> false;
      default -> true;
    };
  }

  private static final class Tally {
    long readings;
    long unknown;
    long differ;
    final Map<String, String> firstOfBoard = new TreeMap<>();

    static Tally sum(List<Tally> tallies) {
      Tally sum = new Tally();
      for (Tally tally : tallies) {
        sum.readings += tally.readings;
        sum.unknown += tally.unknown;
        sum.differ += tally.differ;
        sum.firstOfBoard.putAll(tally.firstOfBoard);
      }
      return sum;
    }
  }

  /** One control moved, to the level given. */
  private record Step(String control, boolean high) {}

  private static List<Step> steps(long seed) {
    Random random = new Random(seed);
    List<String> controls = List.copyOf(MODULE.controls().keySet());
    Map<String, Boolean> at = new TreeMap<>();
    MODULE.controls().forEach((label, control) -> at.put(label, control.restLevel()));
    List<Step> steps = new ArrayList<>();
    while (steps.size() < STEPS) {
      // The button a third of the time, so that much of the memory gets written.
      String control =
          random.nextInt(3) == 0 ? "write" : controls.get(random.nextInt(controls.size()));
      at.put(control, !at.get(control));
      steps.add(new Step(control, at.get(control)));
    }
    return steps;
  }

  /** One batch fills the lanes of a word; each batch has steps of its own. */
  private Tally compare(List<Hypothesis> faults, int number) {
    int from = number * Lanes.COUNT;
    List<Hypothesis> batch = faults.subList(from, Math.min(from + Lanes.COUNT, faults.size()));
    List<Step> steps = steps(number);
    Tally tally = new Tally();
    String[][] theirs = verilog(batch, steps, folder.resolve("batch" + number));
    Wiring wiring = new Wiring(MODULE);
    VariationOf variationOf = new VariationOf(wiring);
    Boards boards = new Boards(wiring, batch.stream().map(variationOf::compile).toList());
    BoardState state = boards.powerUp(boards.off());
    for (int step = 0; step <= steps.size(); step++) {
      if (step > 0) {
        Step move = steps.get(step - 1);
        state = boards.move(state, Map.of(move.control(), move.high()));
      }
      String[] ours = ours(boards, state, batch.size());
      for (int board = 0; board < batch.size(); board++) {
        note(batch.get(board).id(), step, steps, ours[board], theirs[board][step], tally);
      }
    }
    return tally;
  }

  private static void note(
      String id, int step, List<Step> steps, String ours, String theirs, Tally tally) {
    tally.readings += ours.length();
    tally.unknown += ours.chars().filter(c -> c == 'x').count();
    for (int lamp = 0; lamp < ours.length(); lamp++) {
      if (ours.charAt(lamp) != theirs.charAt(lamp)) {
        tally.differ++;
        String after = step == 0 ? "power-up" : steps.get(step - 1).toString();
        tally.firstOfBoard.putIfAbsent(
            id,
            "%s, step %d, after %s: lamps %s, Verilog %s (%s)"
                .formatted(id, step, after, ours, theirs, MODULE.lamps().keySet()));
      }
    }
  }

  /** Lamps in order of their labels, for each board: 1 lit, 0 dark, x either. */
  private static String[] ours(Boards boards, BoardState state, int count) {
    StringBuilder[] text = new StringBuilder[count];
    Arrays.setAll(text, i -> new StringBuilder());
    for (String lamp : boards.lamps()) {
      Boards.Glow glow = boards.glow(state, 0, lamp);
      for (int lane = 0; lane < count; lane++) {
        boolean lit = Lanes.has(glow.lit(), lane);
        text[lane].append(lit ? '1' : Lanes.has(glow.dark(), lane) ? '0' : 'x');
      }
    }
    return Arrays.stream(text).map(StringBuilder::toString).toArray(String[]::new);
  }

  /** The same by Verilog: for each board a reading after power-up and one after each step. */
  private static String[][] verilog(List<Hypothesis> batch, List<Step> steps, Path folder) {
    StringBuilder text = new StringBuilder();
    for (int i = 0; i < batch.size(); i++) {
      text.append("// ").append(batch.get(i).id()).append('\n');
      text.append(VerilogBoard.text(MODULE, batch.get(i).edits(), "board" + i)).append('\n');
      text.append(bench(i));
    }
    text.append(top(batch.size(), steps));
    Path source = folder.resolve("boards.v");
    Path compiled = folder.resolve("boards");
    Path output = folder.resolve("output.txt");
    write(source, text.toString());
    List<String> compile = new ArrayList<>(List.of("iverilog", "-g2005", "-o"));
    compile.add(compiled.toString());
    for (String part : List.of("pins.v", "74x189.v", "74x04.v", "74x245.v")) {
      compile.add(PARTS.resolve(part).toString());
    }
    compile.add(source.toString());
    assertThat(Iverilog.run(compile, output)).as("complaints of iverilog").isEmpty();
    String[][] readings = new String[batch.size()][steps.size() + 1];
    for (String line : Iverilog.run(List.of("vvp", "-n", compiled.toString()), output)) {
      String[] words = line.split(" ");
      readings[Integer.parseInt(words[0])][Integer.parseInt(words[1])] = words[2];
    }
    return readings;
  }

  /** A board with a watch on each lamp: what still moves when it is read counts as unknown. */
  private static String bench(int number) {
    int count = MODULE.lamps().size();
    List<String> ports = new ArrayList<>();
    List<String> controls = List.copyOf(MODULE.controls().keySet());
    for (int i = 0; i < controls.size(); i++) {
      ports.add(".closed_" + controls.get(i) + "(closed[" + i + "])");
    }
    List<String> lamps = List.copyOf(MODULE.lamps().keySet());
    for (int i = 0; i < count; i++) {
      ports.add(".lamp_" + lamps.get(i) + "(lamps[" + (count - 1 - i) + "])");
    }
    String watch =
        """
        module bench%1$d (input [%2$d:0] closed, input read, input [31:0] step);
          wire [%3$d:0] lamps;
          reg [%3$d:0] shown;
          integer moved [0:%3$d];
          integer i;
          board%1$d board (%4$s);
          initial for (i = 0; i < %5$d; i = i + 1) moved[i] = 0;
          genvar g;
          generate
            for (g = 0; g < %5$d; g = g + 1) begin : watch
              always @(lamps[g]) moved[g] = $time;
            end
          endgenerate
          always @(posedge read) begin
            shown = lamps;
            for (i = 0; i < %5$d; i = i + 1)
              if ($time - moved[i] < %6$d) shown[i] = 1'bx;
            $display("%1$d %%0d %%b", step, shown);
          end
        endmodule
        """;
    return watch.formatted(
        number, controls.size() - 1, count - 1, String.join(", ", ports), count, STEP_TIME / 2);
  }

  private static String top(int boards, List<Step> steps) {
    List<String> controls = List.copyOf(MODULE.controls().keySet());
    StringBuilder text = new StringBuilder("module top;\n");
    text.append(
        "  reg [%d:0] closed;\n  reg read;\n  integer step;\n".formatted(controls.size() - 1));
    for (int i = 0; i < boards; i++) {
      text.append("  bench%1$d bench%1$d (closed, read, step);\n".formatted(i));
    }
    text.append("  initial begin\n    read = 0;\n    step = 0;\n");
    for (int i = 0; i < controls.size(); i++) {
      // Every control of this module closes to ground.
      boolean high = MODULE.controls().get(controls.get(i)).restLevel();
      text.append("    closed[%d] = %d;\n".formatted(i, high ? 0 : 1));
    }
    String reading = "    #%d read = 1; #1 read = 0; step = step + 1;\n".formatted(STEP_TIME);
    text.append(reading);
    for (Step step : steps) {
      int index = controls.indexOf(step.control());
      text.append("    closed[%d] = %d;\n".formatted(index, step.high() ? 0 : 1)).append(reading);
    }
    return text.append("    $finish;\n  end\nendmodule\n").toString();
  }

  private static void write(Path file, String text) {
    try {
      Files.createDirectories(file.getParent());
      Files.writeString(file, text);
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }
}
