package straywire.faults;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.HashSet;
import java.util.Optional;
import java.util.Set;
import java.util.SortedMap;
import java.util.TreeMap;
import org.snakeyaml.engine.v2.api.LoadSettings;
import org.snakeyaml.engine.v2.api.lowlevel.Compose;
import org.snakeyaml.engine.v2.exceptions.Mark;
import org.snakeyaml.engine.v2.exceptions.MarkedYamlEngineException;
import org.snakeyaml.engine.v2.exceptions.YamlEngineException;
import org.snakeyaml.engine.v2.nodes.MappingNode;
import org.snakeyaml.engine.v2.nodes.Node;
import org.snakeyaml.engine.v2.nodes.NodeTuple;
import org.snakeyaml.engine.v2.nodes.ScalarNode;
import straywire.parts.InputError;
import straywire.parts.TextFile;

/**
 * Reads the table of priors: the shipped {@code tables/priors.yaml}, and a person's own file that
 * overrides lines of it.
 */
public final class PriorsFile {
  private static final String FORMAT = "straywire-priors/1";
  private static final String SHIPPED = "/tables/priors.yaml";

  private final String file;
  private final SortedMap<Mechanism, Double> table = new TreeMap<>();
  private Optional<Double> nothingWrong = Optional.empty();
  private Optional<Double> strength = Optional.empty();

  private PriorsFile(String file) {
    this.file = file;
  }

  /** The shipped table. */
  public static Priors shipped() {
    try (InputStream in = PriorsFile.class.getResourceAsStream(SHIPPED)) {
      return parseWhole("priors.yaml", new String(in.readAllBytes(), StandardCharsets.UTF_8));
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  /**
   * The shipped table with the lines of {@code file} put over it.
   *
   * @throws InputError when the file cannot be read or a line of it is wrong
   */
  public static Priors over(Path file) {
    return parseOver(shipped(), file.toString(), TextFile.read(file));
  }

  static Priors parseWhole(String file, String text) {
    PriorsFile parsed = new PriorsFile(file);
    parsed.read(text);
    for (Mechanism mechanism : Mechanism.values()) {
      if (mechanism != Mechanism.NOTHING_WRONG && !parsed.table.containsKey(mechanism)) {
        throw new InputError(
            file, 0, "frequencies lacks " + mechanism.slug() + "; give it a number above 0");
      }
    }
    return new Priors(
        parsed.nothingWrong.orElseThrow(() -> parsed.lacks("nothing-wrong", "0.5")),
        parsed.strength.orElseThrow(() -> parsed.lacks("strength", "100")),
        parsed.table,
        new TreeMap<>());
  }

  static Priors parseOver(Priors below, String file, String text) {
    PriorsFile parsed = new PriorsFile(file);
    parsed.read(text);
    SortedMap<Mechanism, Double> table = new TreeMap<>(below.table());
    table.putAll(parsed.table);
    return new Priors(
        parsed.nothingWrong.orElse(below.nothingWrong()),
        parsed.strength.orElse(below.strength()),
        table,
        below.confirmed());
  }

  private void read(String text) {
    Node root;
    try {
      root =
          new Compose(LoadSettings.builder().setLabel(file).build())
              .composeString(text)
              .orElseThrow(() -> wrong(0, "the file is empty; start with format: " + FORMAT));
    } catch (MarkedYamlEngineException e) {
      throw wrong(e.getProblemMark().map(m -> m.getLine() + 1).orElse(0), e.getProblem());
    } catch (YamlEngineException e) {
      throw wrong(0, String.valueOf(e.getMessage()));
    }
    boolean format = false;
    Set<String> seen = new HashSet<>();
    for (NodeTuple line : mapping(root, "the file").getValue()) {
      String key = key(line, seen);
      switch (key) {
        case "format" -> {
          String value = scalar(line.getValueNode(), key);
          if (!value.equals(FORMAT)) {
            throw wrong(line(line), "format is " + FORMAT + ", got " + value);
          }
          format = true;
        }
        case "nothing-wrong" -> {
          double value = above0(line, key);
          if (value >= 1) {
            throw wrong(line(line), "nothing-wrong is a number between 0 and 1, got " + value);
          }
          nothingWrong = Optional.of(value);
        }
        case "strength" -> strength = Optional.of(above0(line, key));
        case "frequencies" -> readFrequencies(line.getValueNode());
        default ->
            throw wrong(
                line(line),
                "unknown key "
                    + key
                    + "; known are format, nothing-wrong, strength and frequencies");
      }
    }
    if (!format) {
      throw lacks("format", FORMAT);
    }
  }

  private void readFrequencies(Node node) {
    Set<String> seen = new HashSet<>();
    for (NodeTuple line : mapping(node, "frequencies").getValue()) {
      String key = key(line, seen);
      Mechanism mechanism =
          Mechanism.ofSlug(key)
              .filter(m -> m != Mechanism.NOTHING_WRONG)
              .orElseThrow(() -> wrong(line(line), "unknown mechanism " + key + known(key)));
      table.put(mechanism, above0(line, key));
    }
  }

  private static String known(String key) {
    return key.equals(Mechanism.NOTHING_WRONG.slug())
        ? " here; it stands outside frequencies, as a probability"
        : "; the shipped table lists all of them";
  }

  private MappingNode mapping(Node node, String what) {
    if (node instanceof MappingNode mapping) {
      return mapping;
    }
    throw wrong(line(node), what + " holds lines of the form key: value");
  }

  private String key(NodeTuple line, Set<String> seen) {
    String key = scalar(line.getKeyNode(), "a key");
    if (!seen.add(key)) {
      throw wrong(line(line), key + " is given twice");
    }
    return key;
  }

  private String scalar(Node node, String what) {
    if (node instanceof ScalarNode scalar) {
      return scalar.getValue();
    }
    throw wrong(line(node), what + " is a single value");
  }

  private double above0(NodeTuple line, String key) {
    String text = scalar(line.getValueNode(), key);
    double value;
    try {
      value = Double.parseDouble(text);
    } catch (NumberFormatException e) {
      value = Double.NaN;
    }
    if (!(value > 0) || Double.isInfinite(value)) {
      throw wrong(line(line), key + " is a number above 0, got " + text);
    }
    return value;
  }

  private InputError lacks(String key, String example) {
    return wrong(0, key + " is missing; write for example " + key + ": " + example);
  }

  private InputError wrong(int line, String message) {
    return new InputError(file, line, message);
  }

  private static int line(NodeTuple line) {
    return line(line.getKeyNode());
  }

  private static int line(Node node) {
    return node.getStartMark().map(Mark::getLine).map(l -> l + 1).orElse(0);
  }
}
