package straywire.module;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import straywire.format.InputError;
import straywire.parts.ShippedParts;

/** Resistors, digits, rows of switches and what sets the times of a 555, in a module file. */
class PassivesTest {
  private static final String YAML =
      """
      format: straywire-module/1
      name: passives
      title: Parts without logic
      rails:
        VCC: {level: supply}
        GND: {level: ground}
      parts:
        U1: {type: 74x05, family: LS}
        U2: {type: 555, family: "74"}
        U3: {type: 555, family: "74"}
        U4: {type: 4060, family: HC}
      controls:
        key: {kind: dip, ways: 3, closes-to: GND, pull-to: VCC, pull-ohms: 4k7, rest: high}
      resistors:
        R1: {to: VCC, ohms: 2k2}
        RN: {to: GND, ohms: 470, count: 2}
        RS: {ohms: 1k}
      digits:
        D: {title: beat, to: VCC, ohms: 330}
      timing:
        U2: {r1: 10k, r2: 68k, c: 10u}
        U3: {r: 1M, c: 100n}
        U4: {crystal: 32.768k}
      nets:
        VCC: [VCC, U1.14, U2.8, U3.8, U4.16]
        GND: [GND, U1.7, U2.1, U3.1, U4.8, U4.12]
        KEY: [key1, U1.1]
        OUT: [U1.2, R1, Da]
        IN: [RN1, U1.3]
      """;

  private static Module read(String yaml) {
    return ModuleFile.parse("m.yaml", yaml, new ShippedParts());
  }

  @Test
  void resistorsAreEndsOfTheirOwn() {
    Module module = read(YAML);
    assertThat(module.passives().resistors())
        .containsOnlyKeys("R1", "RN1", "RN2")
        .containsEntry("R1", new Resistor("R1", "VCC", 2200))
        .containsEntry("RN2", new Resistor("RN2", "GND", 470));
    assertThat(module.jumpers().stream().map(Jumper::name)).contains("U1.2-R1", "RN1-U1.3");
    assertThat(ModuleFile.notes(module)).contains("RN2 is on no net", "Db is on no net");
  }

  @Test
  void aResistorWithoutARailLiesBetweenTwoLines() {
    Module module =
        read(YAML.replace("KEY: [key1, U1.1]", "KEY: [key1, RS.1]\n  SLOW: [RS.2, U1.1]"));
    SeriesResistor between = new SeriesResistor("RS", 1000);
    assertThat(module.passives().series()).containsOnly(Map.entry("RS", between));
    assertThat(module.jumpers().stream().map(Jumper::name)).contains("key1-RS.1", "RS.2-U1.1");
    assertThat(between.across(between.ends().get(0))).isEqualTo(between.ends().get(1));
    assertThat(ModuleFile.notes(read(YAML))).contains("RS.1 is on no net", "RS.2 is on no net");
  }

  @Test
  void aDipIsARowOfSwitchesAndAWordOfThem() {
    Module module = read(YAML);
    assertThat(module.controls()).containsOnlyKeys("key1", "key2", "key3");
    assertThat(module.controls().get("key2"))
        .isEqualTo(new Control("key2", Control.Kind.SWITCH, "", "GND", "VCC", 4700, true));
    assertThat(module.controlWords())
        .containsExactly(new Word("key", List.of("key1", "key2", "key3")));
  }

  @Test
  void aDigitIsSevenLampsAndAWordOfThem() {
    Module module = read(YAML);
    assertThat(module.lamps()).hasSize(7);
    assertThat(module.lamps().get("Dg"))
        .isEqualTo(new Lamp("Dg", "beat, segment g", "VCC", 330, false));
    assertThat(module.lampWords().get(0).members())
        .containsExactly("Da", "Db", "Dc", "Dd", "De", "Df", "Dg");
  }

  @Test
  void timersHaveTheirResistorsAndCapacitor() {
    assertThat(read(YAML).passives().timings())
        .containsExactly(
            new Timing.Astable("U2", 10_000, 68_000, 10_000),
            new Timing.OneShot("U3", 1_000_000, 100),
            new Timing.Crystal("U4", 32768));
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      quoteCharacter = '`',
      value = {
        "R1: {to: VCC, ohms: 2k2} | R1: {to: VCC, ohms: 0} | m.yaml:15: resistors.R1.ohms: expected ohms such as 470, 4k7 or 1M, from 1 to 10M, got 0",
        "R1: {to: VCC, ohms: 2k2} | R1: {to: VC, ohms: 2k2} | m.yaml:15: resistors.R1.to: no rail is labelled VC; nearest is VCC",
        "R1: {to: VCC, ohms: 2k2} | U1: {to: VCC, ohms: 2k2} | m.yaml:15: resistors.U1: the label U1 is taken by a part on line 8",
        "ohms: 470, count: 2 | ohms: 470, count: 17 | m.yaml:16: resistors.RN.count: expected a whole number from 1 to 16, got 17",
        "KEY: [key1, U1.1] | KEY: [key1, R1.1] | m.yaml:27: nets.KEY: R1 goes to a rail and has one place for wires; write R1",
        "kind: dip, ways: 3, closes-to: GND, pull-to: VCC, pull-ohms: 4k7 | kind: dip, ways: 3, low-throw: a, high-throw: b | m.yaml:13: controls.key: a dip has single contacts; write its change-overs as switches",
        "KEY: [key1, U1.1] | KEY: [key1, RS] | m.yaml:27: nets.KEY: RS lies between two lines; write RS.1 or RS.2, or say in its line which rail it goes to",
        "KEY: [key1, U1.1] | KEY: [key1, RS.3] | m.yaml:27: nets.KEY: nothing is labelled RS.3; nearest is RS.1",
        "kind: dip, ways: 3 | kind: dip, other-rail: VCC, ways: 3 | m.yaml:13: controls.key: a dip has single contacts; write its change-overs as switches",
        "kind: dip, ways: 3 | kind: dip | m.yaml:13: controls.key: a dip is a row of switches; say how many, such as ways: 8",
        "kind: dip, ways: 3 | kind: switch, ways: 3 | m.yaml:13: controls.key: ways belong to a dip, which is a row of switches",
        "D: {title: beat, to: VCC | R1: {title: beat, to: VCC | m.yaml:15: resistors.R1: the label R1 is taken by a word on line 19",
        "U3: {r: 1M, c: 100n} | U3: {r: 1M, c: 100} | m.yaml:22: timing.U3.c: expected farads such as 100n, 4u7 or 10u, got 100",
        "U3: {r: 1M, c: 100n} | U3: {r: 1M, r1: 1k, c: 100n} | m.yaml:22: timing.U3: write r1, r2 and c for one that runs by itself, r and c for single pulses",
        "U3: {r: 1M, c: 100n} | U1: {r: 1M, c: 100n} | m.yaml:22: timing.U1: U1 is a 74x05; times are worked out for a 555 or a 4060",
        "U4: {crystal: 32.768k} | U4: {crystal: 32k768Hz} | m.yaml:23: timing.U4.crystal: expected hertz such as 32768, 32.768k or 4M, got 32k768Hz",
        "U4: {crystal: 32.768k} | U4: {crystal: 4M, c: 1n} | m.yaml:23: timing.U4: write crystal, or r and c",
        "U3: {r: 1M, c: 100n} | U9: {r: 1M, c: 100n} | m.yaml:22: timing.U9: no part is labelled U9; nearest is U1",
      })
  void whatIsWrongIsToldInOneLine(String place, String change, String complaint) {
    String yaml = YAML.replace(place, change);
    assertThat(yaml).isNotEqualTo(YAML);
    assertThatThrownBy(() -> read(yaml)).isInstanceOf(InputError.class).hasMessage(complaint);
  }
}
