package straywire.faults;

import java.util.List;
import straywire.module.End;
import straywire.module.Module;
import straywire.sim.Variation;

/** What is wrong with a lamp. */
public sealed interface LampEdit extends Edit {
  /** A lamp that shows something else than its net. */
  record LampChanged(String lamp, LampFault fault) implements LampEdit {
    @Override
    public void build(Building building) {
      building.variation.lamp(lamp, fault.simulated());
    }

    @Override
    public List<End> touches(Module module) {
      return List.of(new End(End.Kind.LAMP, lamp, 0));
    }

    @Override
    public Claim claim() {
      return Claim.of("lamp", lamp);
    }

    @Override
    public String words(Module module) {
      String name = "The " + new BoardWords(module).lamp(lamp);
      return switch (fault) {
        case NO_RESISTOR -> name + " has no series resistor";
        case BACKWARDS -> name + " is in backwards";
        case DEAD -> name + " is dead";
      };
    }

    @Override
    public String repair(Module module) {
      String name = "the " + new BoardWords(module).lamp(lamp);
      return switch (fault) {
        case NO_RESISTOR ->
            "Put its resistor of "
                + module.lamps().get(lamp).ohms()
                + " ohms in series with "
                + name;
        case BACKWARDS -> "Turn " + name + " round";
        case DEAD -> "Exchange " + name + " for a known good one";
      };
    }

    @Override
    public List<String> seenAt(Module module) {
      return fault == LampFault.DEAD ? List.of() : List.of("lamp " + lamp);
    }
  }

  /** How a lamp can be wrong. */
  enum LampFault {
    NO_RESISTOR(Variation.LampFault.NO_RESISTOR),
    BACKWARDS(Variation.LampFault.NEVER_LIGHTS),
    DEAD(Variation.LampFault.NEVER_LIGHTS);

    private final Variation.LampFault simulated;

    LampFault(Variation.LampFault simulated) {
      this.simulated = simulated;
    }

    Variation.LampFault simulated() {
      return simulated;
    }
  }
}
