package straywire.module;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;
import straywire.format.InputError;

class ModuleFileTest {
  @Test
  void theBeatMemoryLoadsWithTheRightCounts() {
    Module module = ModuleFile.read(BeatMemory.FILE, new BeatParts());

    assertThat(module.name()).isEqualTo("beat-memory");
    assertThat(module.parts()).hasSize(5);
    assertThat(module.rails()).hasSize(2);
    assertThat(module.nets()).hasSize(40);
    assertThat(module.jumpers()).hasSize(76);
    assertThat(module.controls()).hasSize(14);
    assertThat(module.lamps()).hasSize(16);
    assertThat(module.ports().get("bell-bus")).hasSize(8);
    assertThat(module.controlWords()).hasSize(2);
    assertThat(module.lampWords()).hasSize(2);
    assertThat(module.exercise()).hasSize(63);
    assertThat(ModuleFile.notes(module)).isEmpty();
  }

  @Test
  void aShippedFileReadsTheSameWithoutItsSchema() {
    Module checked = ModuleFile.read(BeatMemory.FILE, new BeatParts());

    assertThat(BeatMemory.MODULE.nets()).isEqualTo(checked.nets());
    assertThat(BeatMemory.MODULE.exercise()).isEqualTo(checked.exercise());
  }

  @Test
  void aJumperOfAKnownOrderRunsFromEndToEnd() {
    Net write = BeatMemory.MODULE.netOf(End.pin("U2", 3)).orElseThrow();

    assertThat(write.jumpers()).extracting(Jumper::name).containsExactly("write-U1.3", "U1.3-U2.3");
  }

  @Test
  void pinsMayBeNamedAsOnTheDataSheet() {
    Net supply = SmallModule.module().nets().get(0);

    assertThat(supply.ends())
        .containsExactly(new End(End.Kind.RAIL, "VCC", 0), End.pin("U1", 14), End.pin("U2", 16));
  }

  @Test
  void aNetOfUnknownOrderStartsWithItsRailAndIsAStar() {
    Net right = SmallModule.module().nets().get(2);

    assertThat(right.orderKnown()).isFalse();
    assertThat(right.jumpers())
        .extracting(Jumper::name)
        .containsExactly("GND.right-U2.2", "GND.right-U2.3");
  }

  @Test
  void aNetMaySayThatItsOrderIsKnown() {
    assertThat(SmallModule.module().netOf(End.pin("U1", 5)).orElseThrow().orderKnown()).isTrue();
  }

  @Test
  void partsRailsControlsAndLampsAreAsWritten() {
    Module module = SmallModule.module();

    assertThat(module.title()).isEqualTo("Striker gate");
    assertThat(module.about()).isEqualTo("strikes while both switches are up");
    assertThat(module.parts().get("U1").fitted()).isTrue();
    assertThat(module.parts().get("U1").note()).isEqualTo("upper half");
    assertThat(module.parts().get("U2").fitted()).isFalse();
    assertThat(module.parts().get("U2").family().name()).isEqualTo("HC");
    assertThat(module.rails())
        .containsExactly(
            new RailSegment("VCC", true, ""),
            new RailSegment("GND", false, ""),
            new RailSegment("GND.right", false, "GND"));
    assertThat(module.controls().get("A"))
        .isEqualTo(new Control("A", Control.Kind.SWITCH, "strike", "GND", "VCC", 1000, false));
    assertThat(module.lamps().get("L1")).isEqualTo(new Lamp("L1", "striker", "GND", 1000, true));
    assertThat(module.lamps().get("L0")).isEqualTo(new Lamp("L0", "", "VCC", 0, false));
    assertThat(module.ports()).isEqualTo(Map.of("bells", List.of("BELL1", "BELL0")));
    assertThat(module.neighbours()).containsExactly(List.of(End.pin("U1", 14), End.pin("U2", 1)));
  }

  @Test
  void aControlRestsOpenWhenNothingElseIsSaid() {
    Module module = SmallModule.module();

    assertThat(module.controls().get("B"))
        .isEqualTo(new Control("B", Control.Kind.SWITCH, "", "VCC", "", 0, false));
    assertThat(module.controls().get("go").restLevel()).isTrue();
  }

  @Test
  void aWordWithoutQuotesKeepsItsZeros() {
    assertThat(SmallModule.module().exercise())
        .containsExactly(
            new Entry.Power(true),
            new Entry.Set(Map.of("A", false, "B", true)),
            new Entry.Set(Map.of("A", true)),
            new Entry.Press("go"),
            new Entry.Hold("go"),
            new Entry.Look(List.of("out", "L1")),
            new Entry.Release("go"),
            new Entry.Power(false));
  }

  @Test
  void whatHangsInTheAirIsNotedNotRefused() {
    Module module =
        BeatMemory.parse(
            SmallModule.with("[VCC, U1.VCC, U2.16]", "[VCC, U1.VCC]")
                .replace("  B: [B, U1.3]\n", "")
                .replace("ends: [U1.4, L0, BELL0]", "ends: [U1.4, U1.6]"));

    assertThat(ModuleFile.notes(module))
        .containsExactly(
            "U2.16 (VCC) is on no net", "B is on no net", "L0 is on no net", "BELL0 is on no net");
  }

  @Test
  void aMissingFileIsNamed() {
    assertThatThrownBy(() -> ModuleFile.read(Path.of("none.yaml"), new BeatParts()))
        .isInstanceOf(InputError.class)
        .hasMessage("none.yaml: there is no such file");
  }

  @Test
  void anEmptyFileIsRefused() {
    assertThatThrownBy(() -> BeatMemory.parse("")).hasMessage("m.yaml: the file is empty");
  }
}
