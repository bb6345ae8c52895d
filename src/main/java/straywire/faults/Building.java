package straywire.faults;

import java.util.LinkedHashMap;
import java.util.Map;
import straywire.module.End;
import straywire.module.Jumper;
import straywire.module.Point;
import straywire.parts.PartLibrary;
import straywire.sim.Variation;
import straywire.sim.Wiring;

/** A module being built with the edits of one hypothesis in it. */
final class Building {
  final Wiring wiring;
  final Variation variation = new Variation();

  private final Map<Jumper, Run> moved = new LinkedHashMap<>();

  Building(Wiring wiring) {
    this.wiring = wiring;
  }

  /** Where a moved jumper runs: of a pair of faults each may have moved one of its ends. */
  private record Run(End from, End to) {}

  void move(Jumper jumper, End end, End now) {
    Run run = moved.getOrDefault(jumper, new Run(jumper.from(), jumper.to()));
    moved.put(
        jumper, end.equals(jumper.from()) ? new Run(now, run.to()) : new Run(run.from(), now));
  }

  void replace(String part, String type, String family) {
    PartLibrary library = wiring.module().library();
    variation.replace(
        part,
        library.part(type).orElseThrow(() -> new IllegalArgumentException("No part type " + type)),
        library
            .family(family)
            .orElseThrow(() -> new IllegalArgumentException("No family " + family)));
  }

  /** The variation, once all edits are in. */
  Variation finished() {
    moved.forEach(
        (jumper, run) -> {
          variation.remove(wiring.jumper(jumper));
          variation.join(
              wiring.vertex(new Point(run.from(), false)),
              wiring.vertex(new Point(run.to(), false)));
        });
    return variation;
  }
}
