package straywire.module;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import straywire.format.InputError;
import straywire.format.TextFile;
import straywire.parts.ShippedParts;

class ModuleListTest {
  private static final String GOOD =
      """
      # a comment
      VCC supply
      GND ground
      VCC.right supply from VCC
      U1 74x00 LS strikes: "loud", and more
      U2 555 74
      A switch GND VCC 1000 low
      go button GND
      L lamp GND 2200
      M lamp VCC 680
      U1 capacitor 100n
      hands = A
      seen = L M
      VCC: U1.14
      VCC.right: U2.8
      GND: U1.7 U2.1
      A: A U1.1
      OUT: U1.3 L
      """;

  @TempDir private Path folder;

  private String made(String list) throws IOException {
    Path file = folder.resolve("list.txt");
    Files.writeString(file, list);
    return ModuleList.moduleFile(file, "new-one", new ShippedParts()).replace(folder + "/", "");
  }

  @Test
  void everyLineOfTheListIsInTheModule() throws IOException {
    Module module = ModuleFile.parse("made", made(GOOD), new ShippedParts());
    assertThat(module.name()).isEqualTo("new-one");
    assertThat(module.parts().get("U1").note()).isEqualTo("strikes: \"loud\", and more");
    assertThat(module.parts().get("U2").family().name()).isEqualTo("74");
    assertThat(module.controls().get("A").pullOhms()).isEqualTo(1000);
    assertThat(module.controls().get("go").kind()).isEqualTo(Control.Kind.BUTTON);
    assertThat(module.lamps().get("M").lightsOnHigh()).isFalse();
    assertThat(module.rail("VCC.right").orElseThrow().linkedTo()).isEqualTo("VCC");
    assertThat(module.lampWords()).extracting(Word::label).containsExactly("seen");
    assertThat(module.jumpers()).extracting(Jumper::name).contains("VCC-U1.14", "A-U1.1", "U1.3-L");
    assertThat(module.exercise()).hasSize(2);
  }

  @Test
  void aResistorGoesToARailOrLiesBetweenTwoNets() throws IOException {
    String list =
        GOOD
            + "R1 resistor 4k7 VCC\nR3 resistor GND 470\nR2 resistor 1k\nN: R1 R2.1\nM1: R2.2 U1.4\n";
    Passives passives = ModuleFile.parse("made", made(list), new ShippedParts()).passives();
    assertThat(passives.resistors()).containsEntry("R1", new Resistor("R1", "VCC", 4700));
    assertThat(passives.resistors()).containsEntry("R3", new Resistor("R3", "GND", 470));
    assertThat(passives.series()).containsEntry("R2", new SeriesResistor("R2", 1000));
  }

  @Test
  void aControlMayChangeOver() throws IOException {
    String list =
        GOOD
            + "up button GND VCC 1000 other-throw down\nB switch GND other-rail VCC\nD: down U1.4\n";
    Module module = ModuleFile.parse("made", made(list), new ShippedParts());
    assertThat(module.controls().get("up").changeOver())
        .contains(new ChangeOver.OtherThrow("down"));
    assertThat(module.controls().get("B").changeOver()).contains(new ChangeOver.OtherRail("VCC"));
    assertThat(module.jumpers()).extracting(Jumper::name).contains("down-U1.4");
  }

  @Test
  void aControlMayPassOnOneOfTwoLines() throws IOException {
    String list =
        GOOD
            + "P switch low-throw slow high-throw fast high\nW: P U1.4\nX: slow U1.6\nY: fast U1.8\n";
    Module module = ModuleFile.parse("made", made(list), new ShippedParts());
    assertThat(module.controls().get("P").changeOver())
        .contains(new ChangeOver.BetweenLines("slow", "fast"));
    assertThat(module.controls().get("P").restLevel()).isTrue();
    assertThat(module.passes()).extracting(Pass::label).containsExactly("slow", "fast");
    assertThatThrownBy(() -> made(GOOD + "P switch low-throw slow high-throw\n"))
        .hasMessageContaining("such as P switch low-throw A high-throw B low");
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = ';',
      value = {
        "U1 74x00; list.txt:19: \"U1 74x00\" is no line of a list",
        "U3 74x0000 LS; list.txt:19: parts.U3.type",
        "B switch GND VCC; list.txt:19: a control is: label, switch or button",
        "other = U1; list.txt:19: a word is made of switches or lamps that stand above it; U1 is none",
        "X: U1.15 U1.4; list.txt:19: nets.X",
        "N lamp GND much; list.txt:19: lamps.N.ohms",
        "R1 resistor many VCC; list.txt:19: resistors.R1.ohms",
        "A capacitor lots; list.txt:19: capacitors-to-ground.A",
        "- {look: [nobody]}; list.txt:19: exercise",
      })
  void aSlipIsToldWithItsLine(String line, String message) {
    assertThatThrownBy(() -> made(GOOD + line + "\n"))
        .isInstanceOf(InputError.class)
        .hasMessageContaining(message);
  }

  @Test
  void aCopyHasTheNewNameAndNothingElseChanged() {
    Path from = Path.of("cases", "beat-memory", "module.yaml");
    String copy = ModuleList.renamed(from, "second");
    assertThat(copy)
        .contains("\nname: second\n")
        .hasLineCount(TextFile.read(from).split("\n").length);
    assertThat(ModuleFile.parse("copy", copy, new ShippedParts()).name()).isEqualTo("second");
  }
}
