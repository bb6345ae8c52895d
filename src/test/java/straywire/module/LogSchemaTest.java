package straywire.module;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import straywire.format.InputError;
import straywire.format.Schema;
import straywire.parts.ShippedParts;

/** The schemas in docs and the strict reader must say the same of a line's shape. */
class LogSchemaTest {
  private static final String HEADER = "{\"v\":1,\"n\":0,\"log\":\"beat-memory\"}";

  private static Optional<String> problem(String line) {
    return Schema.BENCH_LOG.firstProblem(LogLine.json(line).orElseThrow());
  }

  @Test
  void everyLineThatIsWrittenFitsTheSchema() {
    EntryFormat format = new EntryFormat(BeatMemory.MODULE);
    for (long seed = 0; seed < 10; seed++) {
      RandomEntries random = new RandomEntries(BeatMemory.MODULE, seed);
      for (int kind = 0; kind < RandomEntries.KINDS; kind++) {
        String line =
            new LogLine(9, format.write(random.ofKind(kind, 9)))
                .text(Optional.of(java.time.Instant.ofEpochSecond(seed)), true);

        assertThat(problem(line)).as("seed %d: %s", seed, line).isEmpty();
      }
    }
  }

  @Test
  void everyShippedFileIsAModuleOrACaseThatFitsItsSchema() throws IOException {
    List<Path> files;
    try (Stream<Path> walk = Files.walk(Path.of("cases"))) {
      files = walk.filter(Files::isRegularFile).sorted().toList();
    }

    assertThat(files).contains(BeatMemory.FILE);
    for (Path file : files) {
      Path about = file.resolveSibling("module.yaml");
      Module module = ModuleFile.read(about, new ShippedParts());
      if (!file.equals(about)) {
        assertThat(LogFile.readCase(file, module, false).title()).as("%s", file).isNotEmpty();
      }
    }
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "{}",
        "{'v':2,'n':1,'power':'on'}",
        "{'n':1,'power':'on'}",
        "{'v':1,'power':'on'}",
        "{'v':1,'n':-1,'power':'on'}",
        "{'v':1,'n':1}",
        "{'v':1,'n':1,'power':'up'}",
        "{'v':1,'n':1,'power':true}",
        "{'v':1,'n':1,'power':'on','press':'write'}",
        "{'v':1,'n':1,'power':'on','volts':1}",
        "{'v':1,'n':1,'power':'on','colour':'red'}",
        "{'v':1,'n':1,'t':'noon','power':'on'}",
        "{'v':1,'n':1,'power':'on','sum':'xyz'}",
        "{'v':1,'n':1,'set':'high'}",
        "{'v':1,'n':1,'set':{}}",
        "{'v':1,'n':1,'set':{'drive':'up'}}",
        "{'v':1,'n':1,'set':{'address':'00d1'}}",
        "{'v':1,'n':1,'set':{'drive':true}}",
        "{'v':1,'n':1,'press':['write']}",
        "{'v':1,'n':1,'seen':{}}",
        "{'v':1,'n':1,'seen':{'R3':'bright'}}",
        "{'v':1,'n':1,'seen':{'memory':'1001011x'}}",
        "{'v':1,'n':1,'measured':'U1.3'}",
        "{'v':1,'n':1,'measured':'U1.3','volts':'0.2'}",
        "{'v':1,'n':1,'measured':'U1.3','volts':50}",
        "{'v':1,'n':1,'probed':'U1.3','shows':'on'}",
        "{'v':1,'n':1,'continuity':['U1.3'],'joined':true}",
        "{'v':1,'n':1,'continuity':['U1.3','U1.3'],'joined':true}",
        "{'v':1,'n':1,'continuity':['U1.3','U2.3'],'joined':'yes'}",
        "{'v':1,'n':1,'symptom':'All dark','answer':'yes'}",
        "{'v':1,'n':1,'symptom':'all-dark'}",
        "{'v':1,'n':1,'symptom':'all-dark','answer':'maybe'}",
        "{'v':1,'n':1,'symptom':'all-dark','answer':'yes','entries':[0]}",
        "{'v':1,'n':1,'inspected':'wire U1.3-U2.3','as-meant':true}",
        "{'v':1,'n':1,'inspected':'part U3'}",
        "{'v':1,'n':1,'repaired':' '}",
        "{'v':1,'n':1,'note':''}",
        "{'v':1,'n':1,'instruments':['scope']}",
        "{'v':1,'n':1,'instruments':['eyes','eyes']}",
        "{'v':1,'n':1,'withdrawn':0}",
        "{'v':1,'n':1,'withdrawn':'1'}",
        "{'v':1,'n':1,'look':['memory']}",
        "{'v':1,'n':1,'finding':'a','words':'x'}",
        "{'v':1,'n':1,'finding':[]}",
        "{'v':1,'n':1,'expected':[]}",
        "{'v':1,'n':1,'expected':[],'within-steps':-1}",
        "{'v':1,'n':1,'log':'beat-memory'}"
      })
  void bothRefuseAWrongShape(String line) {
    String json = line.replace('\'', '"');

    assertThat(problem(json)).isPresent();
    assertThatThrownBy(
            () ->
                LogFile.parse(
                    "a.log",
                    (HEADER + "\n" + json + "\n").getBytes(StandardCharsets.UTF_8),
                    BeatMemory.MODULE))
        .isInstanceOf(InputError.class)
        .hasMessageStartingWith("a.log:2: ");
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "{'v':1,'n':0}",
        "{'v':1,'n':0,'log':7}",
        "{'v':1,'n':0,'log':'beat-memory','title':' '}",
        "{'v':1,'n':0,'log':'beat-memory','power':'on'}"
      })
  void bothRefuseAWrongHeader(String line) {
    String json = line.replace('\'', '"');

    assertThat(problem(json)).isPresent();
    assertThatThrownBy(
            () -> LogFile.parse("a.log", json.getBytes(StandardCharsets.UTF_8), BeatMemory.MODULE))
        .isInstanceOf(InputError.class)
        .hasMessageStartingWith("a.log:1: ");
  }

  private static ArrayNode lines(List<String> lines) {
    ArrayNode all = JsonNodeFactory.instance.arrayNode();
    for (String line : lines) {
      ObjectNode object = LogLine.json(line.replace('\'', '"')).orElseThrow();
      all.add(object);
    }
    return all;
  }

  private static final String TITLED = "{'v':1,'n':0,'log':'beat-memory','title':'x'}";
  private static final String FOUND = "{'v':1,'n':1,'finding':[],'words':'nothing'}";
  private static final String EXPECTED = "{'v':1,'n':2,'expected':[],'within-steps':0}";

  @Test
  void theCaseSchemaAsksForTitleFindingAndExpectation() {
    assertThat(Schema.CASE.firstProblem(lines(List.of(TITLED, FOUND, EXPECTED)))).isEmpty();
    assertThat(Schema.CASE.firstProblem(lines(List.of(HEADER, FOUND, EXPECTED)))).isPresent();
    assertThat(Schema.CASE.firstProblem(lines(List.of(TITLED, EXPECTED, EXPECTED)))).isPresent();
    assertThat(Schema.CASE.firstProblem(lines(List.of(TITLED, FOUND, FOUND)))).isPresent();
    assertThat(Schema.CASE.firstProblem(lines(List.of(TITLED, TITLED, FOUND, EXPECTED))))
        .isPresent();
    assertThat(
            Schema.CASE.firstProblem(
                lines(List.of(TITLED, "{'v':1,'n':1,'power':'up'}", FOUND, EXPECTED))))
        .isPresent();
  }
}
