package straywire.module;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import straywire.format.InputError;
import straywire.format.Schema;
import straywire.format.YamlValue;

/** The schema in docs and the strict reader must say the same of a file's shape. */
class ModuleSchemaTest {
  private static Optional<String> problem(String yaml) {
    return Schema.MODULE.firstProblem(YamlValue.parse("m.yaml", yaml).toJson());
  }

  @Test
  void everyShippedModuleFitsItsSchema() throws IOException {
    List<Path> modules;
    try (Stream<Path> files = Files.walk(Path.of("cases"))) {
      modules = files.filter(f -> f.endsWith("module.yaml")).sorted().toList();
    }

    assertThat(modules).contains(BeatMemory.FILE);
    assertThat(modules)
        .allSatisfy(file -> assertThat(problem(Files.readString(file))).as("%s", file).isEmpty());
  }

  @Test
  void theSmallModuleFitsItsSchema() {
    assertThat(problem(SmallModule.YAML)).isEmpty();
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      quoteCharacter = '`',
      textBlock =
          """
          straywire-module/1 | straywire-module/2
          title: Striker gate | titel: Striker gate
          title: Striker gate | title:
          title: Striker gate | title: 7
          title: Striker gate | title: [Striker]
          name: striker | name: the striker
          name: striker | name: 7
          about: | abuot:
          {level: ground, linked-to: GND} | {level: gruond}
          {level: ground, linked-to: GND} | {linked-to: GND}
          {level: ground, linked-to: GND} | {level: ground, linked-to: ""}
          GND.right: {level | GND right: {level
          family: LS, note | famly: LS, note
          {type: 74x04, family: LS, note: upper half} | {type: 74x04}
          {type: 74x04, family: LS, note: upper half} | 74x04
          note: upper half | note: 7
          fitted: false | fitted: no
          U2: {type | true: {type
          U2: {type | 2: {type
          kind: button | kind: knob
          kind: button, closes-to: GND | kind: button
          kind: button, closes-to: GND | kind: button, low-throw: go1
          kind: button, closes-to: GND | kind: button, low-throw: go1, high-throw: go2
          kind: button, closes-to: GND | kind: button, closes-to: GND, low-throw: go1, high-throw: go2
          pull-to: VCC, pull-ohms: 4700 | pull-to: VCC
          pull-to: VCC, pull-ohms: 4700 | pull-ohms: 4700
          pull-ohms: 4700 | pull-ohms: 4n7
          pull-ohms: 4700 | pull-ohms: 0
          pull-ohms: 4700 | pull-ohms: 99999999
          rest: low | rest: down
          {to: VCC, ohms: 0} | {to: VCC}
          {to: VCC, ohms: 0} | {to: VCC, ohms: -1}
          bells: [BELL1, BELL0] | bells: []
          bells: [BELL1, BELL0] | bells: [BELL1, BELL1]
          bells: [BELL1, BELL0] | bells: BELL1
          bells: [BELL1, BELL0] | bells: [BELL.1, BELL0]
          {controls: [A, B]} | {controls: [A, A]}
          {controls: [A, B]} | {switches: [A, B]}
          {lamps: [L1, L0]} | {lamps: [L1], controls: [A]}
          {lamps: [L1, L0]} | {lamps: []}
          {lamps: [L1, L0]} | {}
          [VCC, U1.VCC, U2.16] | VCC
          [VCC, U1.VCC, U2.16] | [VCC, [U1.VCC, U2.16]]
          order: unknown, ends: [U1.4 | order: none, ends: [U1.4
          order: unknown, ends: [U1.4 | ends: [U1.4
          B: [B, U1.3] | B: [B]
          B: [B, U1.3] | B: []
          B: [B, U1.3] | B: [B, B]
          B: [B, U1.3] | B C: [B, U1.3]
          - [U1.14, U2.1] | - [U1.14]
          - [U1.14, U2.1] | - [U1.14, U1.14]
          - [U1.14, U2.1] | - U1.14
          {power: on} | {power: yes}
          {power: on} | {note: wait}
          {power: on} | {power: on, press: go}
          {power: on} | {}
          {power: on} | power
          {set: {A: high}} | {set: {A: up}}
          {set: {A: high}} | {set: {A: true}}
          {set: {A: high}} | {set: {}}
          {set: {A: high}} | {set: high}
          {look: [out, L1]} | {look: []}
          {look: [out, L1]} | {look: out}
          """)
  void bothRefuseAWrongShape(String place, String change) {
    String yaml = SmallModule.with(place, change);

    assertThat(problem(yaml)).isPresent();
    assertThatThrownBy(
            () -> new ModuleBinder(YamlValue.parse("m.yaml", yaml), new BeatParts()).bind())
        .isInstanceOf(InputError.class)
        .hasMessageStartingWith("m.yaml:");
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      quoteCharacter = '`',
      textBlock =
          """
          about: strikes while both switches are up | about: ""
          fitted: false | fitted: true
          rest: low | rest: high
          pull-ohms: 4700 | pull-ohms: "4700"
          closes-to: GND, pull-to: VCC, pull-ohms: 4700 | low-throw: go1, high-throw: go2
          pull-ohms: 4700 | pull-ohms: 4k7
          {to: VCC, ohms: 0} | {to: VCC, ohms: 2.2k}
          B: [B, U1.3] | B: {order: unknown, ends: [B, U1.3]}
          B: [B, U1.3] | B.upper: [B, U1.3]
          - [U1.14, U2.1] | []
          {set: {ab: 01}} | {set: {ab: 10}}
          {set: {ab: 01}} | {set: {ab: "01"}}
          - {release: go} | - {set: {A: low, B: high}}
          """)
  void bothTakeARightShape(String place, String change) {
    String yaml = SmallModule.with(place, change);

    assertThat(problem(yaml)).isEmpty();
    assertThat(BeatMemory.parse(yaml).parts()).hasSize(2);
  }

  @Test
  void theSchemasComplaintIsOneLine() {
    assertThat(problem(SmallModule.with("kind: button", "kind: knob")))
        .hasValueSatisfying(
            line ->
                assertThat(line)
                    .startsWith("does not fit docs/schema/module.schema.json: ")
                    .contains("controls.go.kind")
                    .doesNotContain("\n"));
  }
}
