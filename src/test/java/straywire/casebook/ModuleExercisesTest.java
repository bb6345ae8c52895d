package straywire.casebook;

import static org.assertj.core.api.Assertions.assertThat;
import static org.junit.jupiter.params.provider.Arguments.arguments;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.TreeSet;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.Arguments;
import org.junit.jupiter.params.provider.MethodSource;
import org.snakeyaml.engine.v2.api.Load;
import org.snakeyaml.engine.v2.api.LoadSettings;
import straywire.advice.RuleBase;
import straywire.module.Entry;
import straywire.module.Module;
import straywire.module.ModuleFile;
import straywire.parts.ShippedParts;

/**
 * Every shipped module with nothing wrong, worked through its by-hand exercise, against the lamp
 * words in {@code src/test/resources/modules}, which were worked out apart from the simulator.
 */
class ModuleExercisesTest {
  private static final Path CASES = Path.of("cases");
  private static final Path EXPECTED = Path.of("src", "test", "resources", "modules");

  /** The demo module is older than these files; its exercise is held by tests of its own. */
  private static final String DEMO = "beat-memory";

  private static final int MODULES = 24;

  private static final RuleBase RULES = RuleBase.shipped();

  @Test
  void everyShippedModuleHasItsExpectedWords() {
    assertThat(names()).hasSize(MODULES).contains(DEMO);
    assertThat(fileNames(EXPECTED))
        .containsExactlyElementsOf(
            names().stream().filter(n -> !n.equals(DEMO)).map(n -> n + ".yaml").toList());
  }

  static Stream<Arguments> exercises() {
    return names().stream()
        .filter(name -> !name.equals(DEMO))
        .flatMap(name -> Stream.of(arguments(name, 1L), arguments(name, 2L)));
  }

  @ParameterizedTest(name = "{0}, power-up contents {1}")
  @MethodSource("exercises")
  void theHealthyModuleShowsWhatItsDataSheetsSay(String name, long seed) {
    ModuleBench bench = new ModuleBench(module(name), seed);
    List<Map<String, String>> seen = new ArrayList<>();
    for (Entry entry : bench.module().exercise()) {
      if (entry instanceof Entry.Look look) {
        Map<String, String> words = new LinkedHashMap<>();
        look.what().forEach(word -> words.put(word, bench.word(word)));
        seen.add(words);
      } else {
        bench.act(entry);
      }
    }
    assertThat(seen).isEqualTo(expected(name));
  }

  @ParameterizedTest
  @MethodSource("modules")
  void theModuleIsSoundOnPaper(String name) {
    Module module = ModuleFile.read(CASES.resolve(name).resolve("module.yaml"), new ShippedParts());
    assertThat(module.name()).isEqualTo(name);
    assertThat(ModuleFile.notes(module)).isEmpty();
  }

  /** Faults exist for every part, and the exercise is there to show them. */
  @ParameterizedTest
  @MethodSource("modules")
  void somethingCanBeWrongAtEveryPart(String name) {
    Module module = module(name);
    Workbench bench = new Workbench(module, RULES);
    List<String> ids = bench.hypotheses().stream().map(h -> h.id()).toList();
    for (String part : module.parts().keySet()) {
      assertThat(ids)
          .contains("part-unlisted " + part, "turned " + part)
          .anyMatch(id -> id.startsWith("leg-not-in-row " + part + "."));
    }
    assertThat(module.exercise()).hasAtLeastOneElementOfType(Entry.Look.class);
  }

  static Stream<String> modules() {
    return names().stream();
  }

  private static List<String> names() {
    return fileNames(CASES).stream()
        .filter(name -> Files.exists(CASES.resolve(name).resolve("module.yaml")))
        .toList();
  }

  private static List<String> fileNames(Path folder) {
    try (Stream<Path> files = Files.list(folder)) {
      return List.copyOf(new TreeSet<>(files.map(f -> f.getFileName().toString()).toList()));
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  private static Module module(String name) {
    return ModuleFile.readShipped(CASES.resolve(name).resolve("module.yaml"), new ShippedParts());
  }

  private static Object expected(String name) {
    try {
      return new Load(LoadSettings.builder().build())
          .loadFromString(Files.readString(EXPECTED.resolve(name + ".yaml")));
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }
}
