package straywire.faults;

import java.util.List;
import straywire.module.Contact;
import straywire.module.Control;
import straywire.module.ControlContact;
import straywire.module.End;
import straywire.module.Module;
import straywire.module.Net;
import straywire.module.Pass;
import straywire.sim.Variation;

/** What is wrong with a switch or button. */
public sealed interface ControlEdit extends Edit {
  /**
   * A contact that does not do what the hand does.
   *
   * @param contact its label, the control's own for the first
   */
  record ControlChanged(String control, String contact, ControlFault fault) implements ControlEdit {
    /** At the first contact of a control. */
    ControlChanged(String control, ControlFault fault) {
      this(control, control, fault);
    }

    @Override
    public void build(Building building) {
      building.variation.control(contact, fault.simulated());
    }

    @Override
    public List<End> touches(Module module) {
      return module.everyContact().stream()
          .filter(c -> c.label().equals(contact))
          .flatMap(c -> c.ends().stream())
          .toList();
    }

    @Override
    public Claim claim() {
      return Claim.of("control", control, contact);
    }

    /** A contact to a rail. */
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
      String whole = "the " + new BoardWords(module).control(control);
      boolean changesOver = module.controls().get(control).changeOver().isPresent();
      return switch (fault) {
        case BOUNCES_ANYHOW, BOUNCES_TWICE, BOUNCES_THREE_TIMES, BOUNCES_FOUR_TIMES -> {
          if (module.pass(contact).filter(pass -> passesOn(module, pass)).isPresent()) {
            yield "Let gates that "
                + whole
                + " steers pass on one of the two lines, in place of its contacts";
          }
          yield changesOver
              ? "Lead both throws of " + whole + " into a latch of two gates"
              : "Quiet "
                  + name
                  + ": 10 kilohm and 1 uF before a Schmitt input, or a change-over contact with a"
                  + " latch of two gates";
        }
        case CONTACT_NEVER_CLOSES, CONTACT_ALWAYS_CLOSED -> {
          if (changesOver) {
            yield "See that each leg of " + whole + " has its wire; if so, exchange it";
          }
          yield module.controls().get(control).kind() == Control.Kind.BUTTON
              ? "Turn " + whole + " by a quarter, or exchange it"
              : "Exchange " + whole;
        }
        case PULL_MISSING ->
            "Put a resistor of "
                + wired(module).pullOhms()
                + " ohms from "
                + name
                + " to "
                + new BoardWords(module).rail(wired(module).pullTo());
      };
    }

    /** Whether it joins two lines; not so with its common or its throw on a rail. */
    private static boolean passesOn(Module module, Pass pass) {
      return pass.ends().stream()
          .noneMatch(end -> module.netOf(end).map(Net::onRail).orElse(false));
    }

    @Override
    public List<String> seenAt(Module module) {
      return fault == ControlFault.PULL_MISSING ? List.of("control " + control) : List.of();
    }
  }

  /** A change-over as a whole wired otherwise than meant. */
  sealed interface Throws extends ControlEdit {
    String control();

    /** What a contact of it then does. */
    Variation.ControlFault faultOf(ControlContact contact);

    @Override
    default void build(Building building) {
      Module module = building.wiring.module();
      module
          .everyContact(module.controls().get(control()))
          .forEach(contact -> building.variation.control(contact.label(), faultOf(contact)));
    }

    @Override
    default List<End> touches(Module module) {
      return module.controls().get(control()).terminals();
    }

    @Override
    default Claim claim() {
      return Claim.of("control", control());
    }
  }

  /** The two throws wired the wrong way round; the outer legs look alike, so no look shows it. */
  record ThrowsExchanged(String control) implements Throws {
    @Override
    public Variation.ControlFault faultOf(ControlContact contact) {
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

  /** No wire from the common leg of a change-over to its rail. */
  record CommonOpen(String control) implements Throws {
    @Override
    public Variation.ControlFault faultOf(ControlContact contact) {
      return Variation.ControlFault.NEVER_CLOSES;
    }

    @Override
    public String words(Module module) {
      return "The common leg of " + new BoardWords(module).control(control) + " is on no rail";
    }

    @Override
    public String repair(Module module) {
      return CommonOpen.wired(module, control);
    }

    @Override
    public List<String> seenAt(Module module) {
      return List.of("control " + control);
    }

    static String wired(Module module, String control) {
      BoardWords board = new BoardWords(module);
      return "Wire the common leg, mostly the middle one, of "
          + board.control(control)
          + " to "
          + board.rail(module.controls().get(control).closesTo());
    }
  }

  /**
   * The wire meant for the common leg at an outer one: that throw is always at the rail, the other
   * never.
   *
   * @param contact the throw at whose leg it is
   */
  record CommonAtThrow(String control, String contact) implements Throws {
    @Override
    public Variation.ControlFault faultOf(ControlContact of) {
      return of.label().equals(contact)
          ? Variation.ControlFault.ALWAYS_CLOSED
          : Variation.ControlFault.NEVER_CLOSES;
    }

    @Override
    public String words(Module module) {
      BoardWords board = new BoardWords(module);
      return "The wire to the common leg of "
          + board.control(control)
          + " sits at the leg of throw "
          + contact;
    }

    @Override
    public String repair(Module module) {
      return CommonOpen.wired(module, control)
          + ", and free the leg of throw "
          + contact
          + " of it";
    }

    @Override
    public List<String> seenAt(Module module) {
      return List.of("control " + control);
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
