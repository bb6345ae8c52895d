package straywire.parts;

import static org.assertj.core.api.Assertions.assertThat;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import straywire.logic.PinKind;
import straywire.logic.PinSpec;

/**
 * Every part against a description in Verilog that was written apart from its file: all input
 * combinations of a part without memory, seeded random walks of one with memory, 64 at a time. An
 * unknown level equals only an unknown one, and a line that is let go only one that is let go.
 */
@Tag("slow")
class PartsVerilogTest {
  private static final Path FOLDER = Path.of("src", "test", "resources", "verilog", "parts");
  private static final ShippedParts PARTS = new ShippedParts();
  private static final int LANES = Long.SIZE;

  @TempDir private Path folder;

  static Stream<String> types() {
    return PARTS.types().stream();
  }

  private static List<Path> sources() {
    try (Stream<Path> files = Files.list(FOLDER)) {
      return files.filter(f -> f.toString().endsWith(".v")).sorted().toList();
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  @Test
  void everyPartHasADescriptionInVerilog() throws IOException {
    Set<String> described = new TreeSet<>();
    for (Path source : sources()) {
      Matcher module = Pattern.compile("(?m)^module t(\\d\\w*) ").matcher(Files.readString(source));
      while (module.find()) {
        assertThat(described.add(module.group(1))).as(module.group(1)).isTrue();
      }
    }
    assertThat(described).containsExactlyElementsOf(new TreeSet<>(PARTS.types()));
  }

  @ParameterizedTest
  @MethodSource("types")
  void aPartDoesWhatItsDescriptionInVerilogDoes(String type) throws Exception {
    assumeTrue(
        Iverilog.isInstalled(),
        "iverilog is not installed: the check of parts against Verilog is skipped");
    Part part = PARTS.part(type).orElseThrow();
    List<PinSpec> inputs = part.pins().stream().filter(p -> p.kind().listens()).toList();
    List<PinSpec> outputs = part.pins().stream().filter(p -> p.kind().drives()).toList();
    List<long[]> steps = new PartWalk(part, inputs).steps();
    List<String> theirs = verilog(part, inputs, outputs, steps);
    Bench bench = new Bench(part);
    Map<Integer, Set<Character>> seen = new TreeMap<>();
    long known = 0;
    for (int step = 0; step < steps.size(); step++) {
      put(bench, inputs, steps.get(step));
      String[] words = theirs.get(step).split(" ", -1);
      for (int i = 0; i < outputs.size(); i++) {
        PinSpec pin = outputs.get(i);
        for (int lane = 0; lane < LANES; lane++) {
          char ours = level(bench, pin, lane);
          char verilog = words[i].charAt(LANES - 1 - lane);
          if (ours != verilog) {
            assertThat(ours)
                .as("%s, %s, step %d, lane %d: %s", type, pin, step, lane, at(bench, lane))
                .isEqualTo(verilog);
          }
          known += ours == 'x' ? 0 : 1;
          seen.computeIfAbsent(pin.number(), p -> new TreeSet<>()).add(ours);
        }
      }
    }
    outputs.forEach(pin -> assertThat(seen.get(pin.number())).as("%s", pin).containsAll(all(pin)));
    assertThat(known)
        .as("known of %d readings", (long) steps.size() * outputs.size() * LANES)
        .isGreaterThan((long) steps.size() * outputs.size() * LANES / 4);
  }

  /** What a pin has to have shown, so that the comparison is worth something. */
  private static Set<Character> all(PinSpec pin) {
    if (pin.name().equals("RDY//BUSY")) {
      // Times of writing are left out, so it never pulls low.
      return Set.of('z');
    }
    return switch (pin.kind()) {
      case TRISTATE -> Set.of('0', '1', 'z');
      case OPEN_COLLECTOR -> Set.of('0', 'z');
      default -> Set.of('0', '1');
    };
  }

  /** Puts levels on the inputs, weakly where the part may drive, and waits for rest. */
  private static void put(Bench bench, List<PinSpec> inputs, long[] levels) {
    for (int unit = 0; unit < 12; unit++) {
      boolean moved = false;
      for (int i = 0; i < inputs.size(); i++) {
        int pin = inputs.get(i).number();
        // An input never drives: it is off in all lanes.
        long one = bench.pins.drive1[pin] | (bench.pins.off[pin] & levels[i]);
        long zero = bench.pins.drive0[pin] | (bench.pins.off[pin] & ~levels[i]);
        moved |= bench.pins.can1[pin] != one || bench.pins.can0[pin] != zero;
        bench.put(pin, one, zero);
      }
      moved |= bench.part.logic().step(bench.pins, bench.state, 3, -1L);
      System.arraycopy(bench.pins.can1, 0, bench.pins.was1, 0, bench.pins.can1.length);
      System.arraycopy(bench.pins.can0, 0, bench.pins.was0, 0, bench.pins.can0.length);
      if (!moved) {
        return;
      }
    }
    throw new AssertionError(bench.part.type() + " does not come to rest");
  }

  private static char level(Bench bench, PinSpec pin, int lane) {
    if (pin.kind() == PinKind.BIDIRECTIONAL) {
      boolean one = ((bench.pins.can1[pin.number()] >>> lane) & 1) == 1;
      boolean zero = ((bench.pins.can0[pin.number()] >>> lane) & 1) == 1;
      return one && zero ? 'x' : one ? '1' : '0';
    }
    char shown = bench.shows(pin.number(), lane);
    return shown == 'Z' ? 'z' : shown == 'X' || shown == '?' ? 'x' : shown;
  }

  private static String at(Bench bench, int lane) {
    StringBuilder text = new StringBuilder();
    for (PinSpec pin : bench.part.pins()) {
      if (pin.kind().listens()) {
        text.append(pin.name()).append('=').append((bench.pins.can1[pin.number()] >>> lane) & 1);
        text.append(' ');
      }
    }
    return text.toString();
  }

  /** For each step the outputs in order, 64 lanes each, the highest lane first. */
  private List<String> verilog(
      Part part, List<PinSpec> inputs, List<PinSpec> outputs, List<long[]> steps)
      throws IOException {
    StringBuilder words = new StringBuilder();
    for (long[] levels : steps) {
      for (long level : levels) {
        words.append(Long.toHexString(level)).append('\n');
      }
    }
    Path levels = Files.writeString(folder.resolve("levels.txt"), words);
    Path source =
        Files.writeString(folder.resolve("top.v"), top(part, inputs, outputs, steps, levels));
    Path compiled = folder.resolve("top");
    List<String> compile =
        new ArrayList<>(List.of("iverilog", "-g2005", "-s", "top", "-o", compiled.toString()));
    sources().forEach(file -> compile.add(file.toString()));
    compile.add(source.toString());
    Path output = folder.resolve("output.txt");
    assertThat(Iverilog.run(compile, output)).as("complaints of iverilog").isEmpty();
    return Iverilog.run(List.of("vvp", "-n", compiled.toString()), output);
  }

  private static String top(
      Part part, List<PinSpec> inputs, List<PinSpec> outputs, List<long[]> steps, Path levels) {
    StringBuilder text = new StringBuilder("module top;\n");
    List<String> ports = new ArrayList<>();
    for (PinSpec pin : part.pins()) {
      int number = pin.number();
      if (pin.kind().listens() || pin.kind().drives()) {
        text.append("  wire [63:0] p").append(number).append(";\n");
        ports.add(".p" + number + "(p" + number + ")");
      }
    }
    for (PinSpec pin : inputs) {
      text.append("  reg [63:0] put").append(pin.number()).append(";\n");
      text.append("  assign (pull1, pull0) p%1$d = put%1$d;\n".formatted(pin.number()));
    }
    text.append("  t%s parts [63:0] (%s);\n".formatted(part.type(), String.join(", ", ports)));
    text.append("  reg [63:0] levels [0:%d];\n".formatted(steps.size() * inputs.size() - 1));
    text.append("  integer step;\n  initial begin\n");
    text.append("    $readmemh(\"%s\", levels);\n".formatted(levels));
    text.append("    for (step = 0; step < %d; step = step + 1) begin\n".formatted(steps.size()));
    for (int i = 0; i < inputs.size(); i++) {
      text.append(
          "      put%d = levels[step * %d + %d];\n"
              .formatted(inputs.get(i).number(), inputs.size(), i));
    }
    List<String> shown = outputs.stream().map(pin -> "p" + pin.number()).toList();
    text.append(
        "      #1 $display(\"%s\", %s);\n"
            .formatted("%b ".repeat(shown.size()).strip(), String.join(", ", shown)));
    return text.append("    end\n    $finish;\n  end\nendmodule\n").toString();
  }
}
