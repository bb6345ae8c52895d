package straywire.module;

import java.nio.file.Path;

/** The demo module and a text of it to spoil. */
final class BeatMemory {
  static final Path FILE = Path.of("cases", "beat-memory", "module.yaml");
  static final Module MODULE = ModuleFile.readShipped(FILE, new BeatParts());

  private BeatMemory() {}

  static Module parse(String yaml) {
    return ModuleFile.parse("m.yaml", yaml, new BeatParts());
  }
}
