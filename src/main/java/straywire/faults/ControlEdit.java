package straywire.faults;

import java.util.List;
import straywire.module.Control;
import straywire.module.End;
import straywire.module.Module;
import straywire.sim.Variation;

/** What is wrong with a switch or button. */
public sealed interface ControlEdit extends Edit {
  /** A control that does not do what the hand does. */
  record ControlChanged(String control, ControlFault fault) implements ControlEdit {
    @Override
    public void build(Building building) {
      building.variation.control(control, fault.simulated());
    }

    @Override
    public List<End> touches(Module module) {
      return List.of(new End(End.Kind.CONTROL, control, 0));
    }

    @Override
    public Claim claim() {
      return Claim.of("control", control);
    }

    @Override
    public String words(Module module) {
      String name = "The " + new BoardWords(module).control(control);
      return switch (fault) {
        case CONTACT_NEVER_CLOSES -> name + " never closes";
        case CONTACT_ALWAYS_CLOSED -> name + " is closed whatever the hand does";
        case PULL_MISSING -> name + " has no pull resistor";
        case BOUNCES_ANYHOW -> name + " bounces: one press may count once or several times";
        case BOUNCES_TWICE -> name + " bounces: it closes twice at each press";
        case BOUNCES_THREE_TIMES -> name + " bounces: it closes three times at each press";
        case BOUNCES_FOUR_TIMES -> name + " bounces: it closes four times at each press";
      };
    }

    @Override
    public String repair(Module module) {
      String name = "the " + new BoardWords(module).control(control);
      return switch (fault) {
        case BOUNCES_ANYHOW, BOUNCES_TWICE, BOUNCES_THREE_TIMES, BOUNCES_FOUR_TIMES ->
            "Quiet "
                + name
                + ": 10 kilohm and 1 uF before a Schmitt input, or a change-over contact with a"
                + " latch of two gates";
        case CONTACT_NEVER_CLOSES, CONTACT_ALWAYS_CLOSED ->
            module.controls().get(control).kind() == Control.Kind.BUTTON
                ? "Turn " + name + " by a quarter, or exchange it"
                : "Exchange " + name;
        case PULL_MISSING ->
            "Put a resistor of "
                + module.controls().get(control).pullOhms()
                + " ohms from "
                + name
                + " to "
                + new BoardWords(module).rail(module.controls().get(control).pullTo());
      };
    }

    @Override
    public List<String> seenAt(Module module) {
      return fault == ControlFault.PULL_MISSING ? List.of("control " + control) : List.of();
    }
  }

  /** How a control can be wrong. */
  enum ControlFault {
    CONTACT_NEVER_CLOSES(Variation.ControlFault.NEVER_CLOSES),
    CONTACT_ALWAYS_CLOSED(Variation.ControlFault.ALWAYS_CLOSED),
    PULL_MISSING(Variation.ControlFault.NO_PULL),
    /** Each press may give one edge or more. */
    BOUNCES_ANYHOW(Variation.ControlFault.CLOSES_ANYHOW),
    BOUNCES_TWICE(Variation.ControlFault.CLOSES_TWICE),
    BOUNCES_THREE_TIMES(Variation.ControlFault.CLOSES_THREE_TIMES),
    BOUNCES_FOUR_TIMES(Variation.ControlFault.CLOSES_FOUR_TIMES);

    private final Variation.ControlFault simulated;

    ControlFault(Variation.ControlFault simulated) {
      this.simulated = simulated;
    }

    Variation.ControlFault simulated() {
      return simulated;
    }
  }
}
