package straywire.faults;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import straywire.module.End;
import straywire.module.Jumper;
import straywire.module.Module;
import straywire.module.Point;
import straywire.sim.Variation;
import straywire.sim.Wiring;

/** Compiles the edits of a hypothesis into what the simulation knows. */
public final class VariationOf {
  private final Wiring wiring;
  private final Module module;

  public VariationOf(Wiring wiring) {
    this.wiring = wiring;
    module = wiring.module();
  }

  /**
   * The variation of one hypothesis.
   *
   * @throws IllegalArgumentException when an edit names something the module does not have
   */
  public Variation compile(Hypothesis hypothesis) {
    Variation variation = new Variation();
    hypothesis.edits().forEach(edit -> add(edit, variation));
    runs(hypothesis.edits()).forEach((jumper, run) -> move(jumper, run, variation));
    return variation;
  }

  private void add(Edit edit, Variation variation) {
    if (edit instanceof Edit.JumperRemoved e) {
      variation.remove(wiring.jumper(e.jumper()));
    } else if (edit instanceof Edit.JumperAdded e) {
      variation.join(wiring.vertex(e.from()), wiring.vertex(e.to()));
    } else if (edit instanceof Edit.ContactOpen e) {
      variation.remove(wiring.contact(e.pin()));
    } else if (edit instanceof Edit.LegElsewhere e) {
      variation.remove(wiring.contact(e.pin()));
      e.row().ifPresent(row -> variation.join(wiring.leg(e.pin()), wiring.row(row)));
    } else if (edit instanceof Edit.OutputHeld e) {
      variation.holdOutput(e.pin().label(), e.pin().pin(), e.high());
    } else if (edit instanceof Edit.OutputDead e) {
      variation.killOutput(e.pin().label(), e.pin().pin());
    } else if (edit instanceof Edit.InputHeld e) {
      variation.holdInput(e.pin().label(), e.pin().pin(), e.high());
    } else {
      addReplacement(edit, variation);
    }
  }

  private void addReplacement(Edit edit, Variation variation) {
    if (edit instanceof Edit.PartReplaced e) {
      variation.replace(
          e.part(),
          module
              .library()
              .part(e.type())
              .orElseThrow(() -> new IllegalArgumentException("No part type " + e.type())),
          module
              .library()
              .family(e.family())
              .orElseThrow(() -> new IllegalArgumentException("No family " + e.family())));
    } else if (edit instanceof Edit.PartUnlisted e) {
      variation.unlist(e.part());
    } else if (edit instanceof Edit.LampChanged e) {
      variation.lamp(
          e.lamp(),
          e.fault() == Edit.LampFault.NO_RESISTOR
              ? Variation.LampFault.NO_RESISTOR
              : Variation.LampFault.NEVER_LIGHTS);
    } else if (edit instanceof Edit.ControlChanged e) {
      variation.control(
          e.control(),
          switch (e.fault()) {
            case CONTACT_NEVER_CLOSES -> Variation.ControlFault.NEVER_CLOSES;
            case CONTACT_ALWAYS_CLOSED -> Variation.ControlFault.ALWAYS_CLOSED;
            case PULL_MISSING -> Variation.ControlFault.NO_PULL;
          });
    } else if (edit instanceof Edit.RailUnlinked e) {
      variation.remove(wiring.link(e.segment()));
    } else if (edit instanceof Edit.SupplyReversed || edit instanceof Edit.RailsJoined) {
      variation.noLogic();
    }
  }

  /** Where a moved jumper runs: of a pair of faults each may have moved one of its ends. */
  private record Run(End from, End to) {}

  private static Map<Jumper, Run> runs(List<Edit> edits) {
    Map<Jumper, Run> runs = new LinkedHashMap<>();
    for (Edit edit : edits) {
      if (edit instanceof Edit.EndMoved moved) {
        Jumper jumper = moved.jumper();
        Run run = runs.getOrDefault(jumper, new Run(jumper.from(), jumper.to()));
        runs.put(
            jumper,
            moved.end().equals(jumper.from())
                ? new Run(moved.now(), run.to())
                : new Run(run.from(), moved.now()));
      }
    }
    return runs;
  }

  private void move(Jumper jumper, Run run, Variation variation) {
    variation.remove(wiring.jumper(jumper));
    variation.join(
        wiring.vertex(new Point(run.from(), false)), wiring.vertex(new Point(run.to(), false)));
  }
}
