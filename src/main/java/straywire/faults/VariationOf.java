package straywire.faults;

import straywire.sim.Variation;
import straywire.sim.Wiring;

/** Compiles the edits of a hypothesis into what the simulation knows. */
public final class VariationOf {
  private final Wiring wiring;

  public VariationOf(Wiring wiring) {
    this.wiring = wiring;
  }

  /**
   * The variation of one hypothesis.
   *
   * @throws IllegalArgumentException when an edit names something the module does not have
   */
  public Variation compile(Hypothesis hypothesis) {
    Building building = new Building(wiring);
    hypothesis.edits().forEach(edit -> edit.build(building));
    return building.finished();
  }
}
