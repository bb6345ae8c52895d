package straywire.symptoms;

import java.nio.file.Path;
import java.util.List;
import straywire.faults.Edit;
import straywire.faults.Hypothesis;
import straywire.faults.LegEdit;
import straywire.faults.Mechanism;
import straywire.faults.WireEdit;
import straywire.module.End;
import straywire.module.Jumper;
import straywire.module.Module;
import straywire.module.ModuleFile;
import straywire.module.Point;
import straywire.observe.ReadingTable;
import straywire.parts.ShippedParts;
import straywire.sim.Wiring;

/** Modules and faults for the tests of symptoms. */
public final class SymptomBench {
  public static final Module BEAT_MEMORY =
      ModuleFile.readShipped(Path.of("cases", "beat-memory", "module.yaml"), new ShippedParts());

  private SymptomBench() {}

  static SymptomScores scores(Module module) {
    return new SymptomScores(module, new Wiring(module), ReadingTable.shipped(), 1);
  }

  public static Hypothesis fault(String id, List<Edit> edits) {
    return new Hypothesis(id, Mechanism.JUMPER_MISSING, edits, 1, "", "", id, "");
  }

  static Hypothesis sound() {
    return fault("sound", List.of());
  }

  static Jumper jumper(Module module, String name) {
    return module.jumpers().stream().filter(j -> j.name().equals(name)).findFirst().orElseThrow();
  }

  public static Edit missing(String jumper) {
    return new WireEdit.JumperRemoved(jumper(BEAT_MEMORY, jumper));
  }

  static Edit moved(String jumper, String end, String now) {
    return new WireEdit.EndMoved(jumper(BEAT_MEMORY, jumper), pin(end), pin(now));
  }

  static Edit joined(String pin, String other) {
    return new WireEdit.JumperAdded(leg(pin), leg(other));
  }

  static Edit shortedTo(String rail, String pin) {
    return new WireEdit.JumperAdded(leg(pin), new Point(new End(End.Kind.RAIL, rail, 0), false));
  }

  public static Edit open(String pin) {
    return new LegEdit.ContactOpen(pin(pin));
  }

  static End pin(String label) {
    int dot = label.indexOf('.');
    return End.pin(label.substring(0, dot), Integer.parseInt(label.substring(dot + 1)));
  }

  private static Point leg(String pin) {
    return new Point(pin(pin), true);
  }
}
