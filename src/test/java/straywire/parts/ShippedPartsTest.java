package straywire.parts;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import straywire.format.PartSchema;
import straywire.logic.PinSpec;

class ShippedPartsTest {
  private static final ShippedParts PARTS = new ShippedParts();

  /** Pins of timers that take a resistor, a capacitor or a voltage, not a level. */
  private static final Set<String> WITHOUT_LEVEL = Set.of("CONT", "RINT", "CEXT", "1CEXT", "2CEXT");

  static Stream<String> types() {
    return PARTS.types().stream();
  }

  @Test
  void theIndexNamesEveryPartFileOnceAndInOrder() throws IOException {
    try (Stream<Path> files = Files.list(Path.of("src/main/resources/parts"))) {
      List<String> shipped =
          files
              .map(f -> f.getFileName().toString())
              .filter(f -> f.endsWith(".yaml") && !f.equals("families.yaml"))
              .map(f -> f.substring(0, f.length() - 5))
              .sorted()
              .toList();
      assertThat(ShippedParts.resource("index.txt").lines()).isEqualTo(shipped);
    }
  }

  @ParameterizedTest
  @MethodSource("types")
  void aPartDoesWhatItsFunctionTableSays(String type) {
    assertThat(TableCheck.failures(PARTS.file(type).orElseThrow(), false)).isEmpty();
  }

  @ParameterizedTest
  @MethodSource("types")
  void whatTheFunctionTableCallsAnyLevelMayBeUnknown(String type) {
    assertThat(TableCheck.failures(PARTS.file(type).orElseThrow(), true)).isEmpty();
  }

  @Test
  void thereAre109PartsAndEachHasATable() {
    assertThat(PARTS.types()).hasSize(109);
    assertThat(PARTS.types())
        .allSatisfy(t -> assertThat(PARTS.file(t).orElseThrow().table().rows()).isNotEmpty());
  }

  /** A pin that no row names would be tested by nothing. */
  @ParameterizedTest
  @MethodSource("types")
  void theFunctionTableDrivesEveryInputAndTellsEveryOutput(String type) {
    PartFile file = PARTS.file(type).orElseThrow();
    Set<Integer> driven = new TreeSet<>();
    Set<Integer> told = new TreeSet<>();
    for (FunctionTable.Row row : file.table().rows()) {
      driven.addAll(row.inputs().keySet());
      told.addAll(row.outputs().keySet());
    }
    for (PinSpec pin : file.part().pins()) {
      if (pin.kind().listens() && !WITHOUT_LEVEL.contains(pin.name())) {
        assertThat(driven).as("inputs in the table, of them %s", pin).contains(pin.number());
      }
      if (pin.kind().drives()) {
        assertThat(told).as("outputs in the table, of them %s", pin).contains(pin.number());
      }
    }
  }

  @ParameterizedTest
  @MethodSource("types")
  void theTypeIsTheFileName(String type) {
    assertThat(PARTS.part(type).orElseThrow().type()).isEqualTo(type);
  }

  @ParameterizedTest
  @MethodSource("types")
  void theFileFitsItsSchema(String type) {
    PartSchema.check(type + ".yaml", ShippedParts.resource(type + ".yaml"));
  }

  @Test
  void anUnknownTypeIsNotFound() {
    assertThat(PARTS.part("74x9999")).isEmpty();
    assertThat(PARTS.notes("74x9999")).isEmpty();
  }
}
