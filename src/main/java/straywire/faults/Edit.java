package straywire.faults;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import straywire.module.Control;
import straywire.module.End;
import straywire.module.Jumper;
import straywire.module.Module;
import straywire.module.Point;
import straywire.sim.Variation;

/** One difference between a module as built and as meant. */
public sealed interface Edit {

  /** The ends whose wiring or behaviour this changes, in the order the edit names them. */
  List<End> touches(Module module);

  /** Builds the module so. */
  void build(Building building);

  /** What this decides about: two edits with contradicting claims cannot both hold. */
  Claim claim();

  /** What is different, as a person says it, without a full stop. */
  String words(Module module);

  /** The inverse, as a request, without cautions and without a full stop. */
  String repair(Module module);

  /** Subjects of a careful look that shows this, such as {@code jumper U1.3-U2.3}; often none. */
  default List<String> seenAt(Module module) {
    return List.of();
  }

  /** A jumper forgotten, loose or broken inside. */
  record JumperRemoved(Jumper jumper) implements Edit {
    @Override
    public void build(Building building) {
      building.variation.remove(building.wiring.jumper(jumper));
    }

    @Override
    public List<End> touches(Module module) {
      return List.of(jumper.from(), jumper.to());
    }

    @Override
    public Claim claim() {
      return Claim.of("jumper", jumper.name());
    }

    @Override
    public String words(Module module) {
      return "The " + new BoardWords(module).jumper(jumper) + " is missing or broken";
    }

    @Override
    public String repair(Module module) {
      BoardWords board = new BoardWords(module);
      return "Put in a sound " + board.jumper(jumper) + board.where(touches(module));
    }

    @Override
    public List<String> seenAt(Module module) {
      return List.of("jumper " + jumper);
    }
  }

  /** Two points joined that should not be. A rail is a point, too. */
  record JumperAdded(Point from, Point to) implements Edit {
    @Override
    public void build(Building building) {
      building.variation.join(building.wiring.vertex(from), building.wiring.vertex(to));
    }

    @Override
    public List<End> touches(Module module) {
      return List.of(from.end(), to.end());
    }

    @Override
    public Claim claim() {
      return Claim.of("joint", from.toString(), to.toString());
    }

    @Override
    public String words(Module module) {
      BoardWords board = new BoardWords(module);
      return capitalised(board.point(from)) + " is joined to " + board.point(to);
    }

    @Override
    public String repair(Module module) {
      BoardWords board = new BoardWords(module);
      return "Separate "
          + board.point(from)
          + " from "
          + board.point(to)
          + board.where(touches(module));
    }

    /** Touching legs show at either leg; joined rows at the jumpers that end there. */
    @Override
    public List<String> seenAt(Module module) {
      if (from.leg() && to.leg()) {
        return List.of("leg " + from.end(), "leg " + to.end());
      }
      if (from.leg() || to.leg()) {
        return List.of();
      }
      List<String> subjects = new ArrayList<>();
      for (Jumper jumper : module.jumpers()) {
        if (jumper.touches(from.end()) || jumper.touches(to.end())) {
          subjects.add("jumper " + jumper);
        }
      }
      return subjects;
    }
  }

  /**
   * One end of a jumper in another row.
   *
   * @param end the end as meant, one of the jumper's two
   * @param now where it sits
   */
  record EndMoved(Jumper jumper, End end, End now) implements Edit {
    @Override
    public void build(Building building) {
      building.move(jumper, end, now);
    }

    @Override
    public List<End> touches(Module module) {
      return List.of(end, now);
    }

    @Override
    public Claim claim() {
      return Claim.of("jumper", jumper.name(), end.toString());
    }

    @Override
    public String words(Module module) {
      BoardWords board = new BoardWords(module);
      return "The "
          + board.jumper(jumper)
          + " ends at "
          + board.end(now)
          + " instead of "
          + board.end(end);
    }

    @Override
    public String repair(Module module) {
      BoardWords board = new BoardWords(module);
      End other = jumper.from().equals(end) ? jumper.to() : jumper.from();
      return "On the wire from "
          + board.end(other)
          + " move the end at "
          + board.end(now)
          + " to "
          + board.end(end)
          + board.where(List.of(end));
    }

    @Override
    public List<String> seenAt(Module module) {
      return List.of("jumper " + jumper);
    }
  }

  /** A leg without contact to the row it should sit in. */
  record ContactOpen(End pin) implements Edit {
    @Override
    public void build(Building building) {
      building.variation.remove(building.wiring.contact(pin));
    }

    @Override
    public List<End> touches(Module module) {
      return List.of(pin);
    }

    @Override
    public Claim claim() {
      return Claim.of("leg", pin.toString());
    }

    @Override
    public String words(Module module) {
      return new BoardWords(module).end(pin) + " has no contact with its row";
    }

    @Override
    public String repair(Module module) {
      BoardWords board = new BoardWords(module);
      return "Lift "
          + pin.label()
          + ", straighten the leg of "
          + board.end(pin)
          + " and press the part home, in other holes if this one is worn"
          + board.where(List.of(pin));
    }

    @Override
    public List<String> seenAt(Module module) {
      return List.of("leg " + pin);
    }
  }

  /**
   * A leg that sits in the row meant for another pin of the same part.
   *
   * @param row the pin whose row it sits in; empty when it meets none
   */
  record LegElsewhere(End pin, Optional<End> row) implements Edit {
    @Override
    public void build(Building building) {
      building.variation.remove(building.wiring.contact(pin));
      row.ifPresent(r -> building.variation.join(building.wiring.leg(pin), building.wiring.row(r)));
    }

    @Override
    public List<End> touches(Module module) {
      List<End> touched = new ArrayList<>();
      touched.add(pin);
      row.ifPresent(touched::add);
      return touched;
    }

    @Override
    public Claim claim() {
      return Claim.of("leg", pin.toString());
    }

    @Override
    public String words(Module module) {
      BoardWords board = new BoardWords(module);
      return board.end(pin)
          + row.map(r -> " meets the wires meant for " + board.end(r)).orElse(" meets no wire");
    }

    @Override
    public String repair(Module module) {
      BoardWords board = new BoardWords(module);
      return "Bring the wires meant for "
          + board.end(pin)
          + " to that leg"
          + board.where(List.of(pin));
    }

    @Override
    public List<String> seenAt(Module module) {
      return List.of("part " + pin.label());
    }
  }

  /** Two legs across from each other in one row: the part does not straddle the trench. */
  record LegsInOneRow(End pin, End other) implements Edit {
    @Override
    public void build(Building building) {
      building.variation.join(building.wiring.leg(pin), building.wiring.leg(other));
    }

    @Override
    public List<End> touches(Module module) {
      return List.of(pin, other);
    }

    @Override
    public Claim claim() {
      return Claim.of("joint", pin.toString(), other.toString());
    }

    @Override
    public String words(Module module) {
      BoardWords board = new BoardWords(module);
      return board.end(pin) + " shares a row with " + board.end(other);
    }

    @Override
    public String repair(Module module) {
      return "Set " + pin.label() + " across the trench";
    }

    @Override
    public List<String> seenAt(Module module) {
      return List.of("part " + pin.label());
    }
  }

  /** An output of a part that drives one level whatever its inputs say. */
  record OutputHeld(End pin, boolean high) implements Edit {
    @Override
    public void build(Building building) {
      building.variation.holdOutput(pin.label(), pin.pin(), high);
    }

    @Override
    public List<End> touches(Module module) {
      return List.of(pin);
    }

    @Override
    public Claim claim() {
      return Claim.of("inside", pin.label(), "output " + pin.pin());
    }

    @Override
    public String words(Module module) {
      return "The output "
          + new BoardWords(module).end(pin)
          + " stays "
          + (high ? "high" : "low")
          + " whatever the inputs say";
    }

    @Override
    public String repair(Module module) {
      return new BoardWords(module).exchange(pin.label());
    }
  }

  /** An output of a part that never drives. */
  record OutputDead(End pin) implements Edit {
    @Override
    public void build(Building building) {
      building.variation.killOutput(pin.label(), pin.pin());
    }

    @Override
    public List<End> touches(Module module) {
      return List.of(pin);
    }

    @Override
    public Claim claim() {
      return Claim.of("inside", pin.label(), "output " + pin.pin());
    }

    @Override
    public String words(Module module) {
      return "The output " + new BoardWords(module).end(pin) + " never drives";
    }

    @Override
    public String repair(Module module) {
      return new BoardWords(module).exchange(pin.label());
    }
  }

  /** An input that the part takes for one level whatever is on its leg. */
  record InputHeld(End pin, boolean high) implements Edit {
    @Override
    public void build(Building building) {
      building.variation.holdInput(pin.label(), pin.pin(), high);
    }

    @Override
    public List<End> touches(Module module) {
      return List.of(pin);
    }

    @Override
    public Claim claim() {
      return Claim.of("inside", pin.label(), "input " + pin.pin());
    }

    @Override
    public String words(Module module) {
      return "The part takes "
          + new BoardWords(module).end(pin)
          + " for "
          + (high ? "high" : "low")
          + " whatever is on the leg";
    }

    @Override
    public String repair(Module module) {
      return new BoardWords(module).exchange(pin.label());
    }
  }

  /** Another part type, or another family, in the socket. */
  record PartReplaced(String part, String type, String family) implements Edit {
    @Override
    public void build(Building building) {
      building.replace(part, type, family);
    }

    @Override
    public List<End> touches(Module module) {
      return new BoardWords(module).pins(part);
    }

    @Override
    public Claim claim() {
      return Claim.of("inside", part);
    }

    @Override
    public String words(Module module) {
      return "In the place of "
          + new BoardWords(module).part(part)
          + " sits a "
          + type
          + " of family "
          + family;
    }

    @Override
    public String repair(Module module) {
      return "Read the marking; " + decapitalised(new BoardWords(module).exchange(part));
    }

    @Override
    public List<String> seenAt(Module module) {
      return List.of("part " + part);
    }
  }

  /** A part that misbehaves in a way no other edit describes: its outputs are unknown. */
  record PartUnlisted(String part) implements Edit {
    @Override
    public void build(Building building) {
      building.variation.unlist(part);
    }

    @Override
    public List<End> touches(Module module) {
      return new BoardWords(module).pins(part);
    }

    @Override
    public Claim claim() {
      return Claim.of("inside", part);
    }

    @Override
    public String words(Module module) {
      return new BoardWords(module).part(part) + " misbehaves in a way not listed";
    }

    @Override
    public String repair(Module module) {
      return new BoardWords(module).exchange(part);
    }
  }

  /** A lamp that shows something else than its net. */
  record LampChanged(String lamp, LampFault fault) implements Edit {
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

  /** A control that does not do what the hand does. */
  record ControlChanged(String control, ControlFault fault) implements Edit {
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

  /** A rail segment not linked to the one that feeds it. */
  record RailUnlinked(String segment) implements Edit {
    @Override
    public void build(Building building) {
      building.variation.remove(building.wiring.link(segment));
    }

    @Override
    public List<End> touches(Module module) {
      return List.of(new End(End.Kind.RAIL, segment, 0));
    }

    @Override
    public Claim claim() {
      return Claim.of("rail", segment);
    }

    @Override
    public String words(Module module) {
      return capitalised(new BoardWords(module).rail(segment)) + " is not linked to " + fed(module);
    }

    @Override
    public String repair(Module module) {
      return "Link " + new BoardWords(module).rail(segment) + " to " + fed(module);
    }

    @Override
    public List<String> seenAt(Module module) {
      return List.of("rail " + segment);
    }

    private String fed(Module module) {
      return new BoardWords(module).rail(module.rail(segment).orElseThrow().linkedTo());
    }
  }

  /** Plus and minus exchanged at the supply: no logic is simulated. */
  record SupplyReversed() implements Edit {
    @Override
    public void build(Building building) {
      building.variation.noLogic();
    }

    @Override
    public List<End> touches(Module module) {
      return rails(module);
    }

    @Override
    public Claim claim() {
      return Claim.of();
    }

    @Override
    public String words(Module module) {
      return "Plus and minus are exchanged at the supply";
    }

    @Override
    public String repair(Module module) {
      return "Exchange the two supply leads";
    }

    @Override
    public List<String> seenAt(Module module) {
      return List.of("supply");
    }
  }

  /** Supply and ground rail joined: no logic is simulated. */
  record RailsJoined() implements Edit {
    @Override
    public void build(Building building) {
      building.variation.noLogic();
    }

    @Override
    public List<End> touches(Module module) {
      return rails(module);
    }

    @Override
    public Claim claim() {
      return Claim.of();
    }

    @Override
    public String words(Module module) {
      return "The supply rail and the ground rail are joined";
    }

    @Override
    public String repair(Module module) {
      return "Find the wire or part that joins the two rails, with a continuity check, and take it"
          + " out";
    }
  }

  private static List<End> rails(Module module) {
    return module.rails().stream().map(r -> new End(End.Kind.RAIL, r.label(), 0)).toList();
  }

  private static String capitalised(String words) {
    return Character.toUpperCase(words.charAt(0)) + words.substring(1);
  }

  private static String decapitalised(String words) {
    return Character.toLowerCase(words.charAt(0)) + words.substring(1);
  }
}
