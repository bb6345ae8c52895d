package straywire.faults;

import java.util.List;
import straywire.module.Contact;
import straywire.module.Control;
import straywire.module.End;
import straywire.module.Module;
import straywire.sim.Variation;

/** What is wrong with a switch or button. */
public sealed interface ControlEdit extends Edit {
  /**
   * A contact that does not do what the hand does.
   *
   * @param contact its label
   */
  record ControlChanged(String contact, ControlFault fault) implements ControlEdit {
    @Override
    public void build(Building building) {
      building.variation.control(contact, fault.simulated());
    }

    @Override
    public List<End> touches(Module module) {
      return List.of(wired(module).terminal());
    }

    @Override
    public Claim claim() {
      return Claim.of("control", contact);
    }

    private Contact wired(Module module) {
      return module.contact(contact).orElseThrow();
    }

    @Override
    public String words(Module module) {
      String name = "The " + new BoardWords(module).contact(contact);
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
      String name = "the " + new BoardWords(module).contact(contact);
      return switch (fault) {
        case BOUNCES_ANYHOW, BOUNCES_TWICE, BOUNCES_THREE_TIMES, BOUNCES_FOUR_TIMES ->
            "Quiet "
                + name
                + ": 10 kilohm and 1 uF before a Schmitt input, or a change-over contact with a"
                + " latch of two gates";
        case CONTACT_NEVER_CLOSES, CONTACT_ALWAYS_CLOSED ->
            turns(module) ? "Turn " + name + " by a quarter, or exchange it" : "Exchange " + name;
        case PULL_MISSING ->
            "Put a resistor of "
                + wired(module).pullOhms()
                + " ohms from "
                + name
                + " to "
                + new BoardWords(module).rail(wired(module).pullTo());
      };
    }

    /** A plain push-button has four legs, in two pairs. */
    private boolean turns(Module module) {
      Control control = module.controls().get(wired(module).control());
      return control.kind() == Control.Kind.BUTTON && control.changeOver().isEmpty();
    }

    @Override
    public List<String> seenAt(Module module) {
      return fault == ControlFault.PULL_MISSING
          ? List.of("control " + wired(module).control())
          : List.of();
    }
  }

  /** A change-over as a whole wired otherwise than meant. */
  sealed interface Throws extends ControlEdit {
    String control();

    /** What each of its contacts then does. */
    Variation.ControlFault contacts();

    @Override
    default void build(Building building) {
      Module module = building.wiring.module();
      module
          .contacts(module.controls().get(control()))
          .forEach(contact -> building.variation.control(contact.label(), contacts()));
    }

    @Override
    default List<End> touches(Module module) {
      return module.contacts(module.controls().get(control())).stream()
          .map(Contact::terminal)
          .distinct()
          .toList();
    }

    @Override
    default Claim claim() {
      return Claim.of("control", control());
    }

    @Override
    default List<String> seenAt(Module module) {
      return List.of("control " + control());
    }
  }

  /** The two throws wired the wrong way round. */
  record ThrowsExchanged(String control) implements Throws {
    @Override
    public Variation.ControlFault contacts() {
      return Variation.ControlFault.EXCHANGED;
    }

    @Override
    public String words(Module module) {
      return "The two throws of " + new BoardWords(module).control(control) + " are exchanged";
    }

    @Override
    public String repair(Module module) {
      return "Exchange the two wires at the outer legs of "
          + new BoardWords(module).control(control);
    }
  }

  /** The common leg of a change-over on no rail, or on the wrong leg. */
  record CommonOpen(String control) implements Throws {
    @Override
    public Variation.ControlFault contacts() {
      return Variation.ControlFault.NEVER_CLOSES;
    }

    @Override
    public String words(Module module) {
      return "The common leg of " + new BoardWords(module).control(control) + " is on no rail";
    }

    @Override
    public String repair(Module module) {
      BoardWords board = new BoardWords(module);
      return "Wire the common leg, mostly the middle one, of "
          + board.control(control)
          + " to "
          + board.rail(module.controls().get(control).closesTo());
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
