package straywire.module;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.api.Test;

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
}
