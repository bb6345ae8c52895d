package straywire.sitting;

import java.nio.file.Path;
import straywire.advice.RuleBase;
import straywire.casebook.Workbench;
import straywire.module.Module;
import straywire.module.ModuleFile;
import straywire.parts.ShippedParts;

/** The demo module with everything prepared; made once, since it takes a second. */
final class BeatBench {
  static final Module MODULE =
      ModuleFile.readShipped(Path.of("cases", "beat-memory", "module.yaml"), new ShippedParts());
  static final Workbench WORKBENCH = new Workbench(MODULE, RuleBase.shipped());

  private BeatBench() {}
}
