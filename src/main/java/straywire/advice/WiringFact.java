package straywire.advice;

import java.util.List;
import straywire.logic.PinKind;
import straywire.module.Control;
import straywire.module.End;

/**
 * What rules know of a module as meant. Places are labels as the drawing writes them: {@code U1.3},
 * {@code U1.3-U2.3}, {@code U1}, {@code A3}, {@code VCC}. A missing label is the empty text.
 */
public sealed interface WiringFact {

  /** The module as a whole. */
  record BoardFact(String module) implements WiringFact {}

  /**
   * A fitted part.
   *
   * @param pins number of legs
   * @param bus true when its outputs drive a bus
   * @param cells remembered bits; 0 for a gate
   * @param keeps true when a memory in it holds its contents without power
   */
  record PartFact(
      String part,
      String type,
      String family,
      int pins,
      boolean bus,
      int cells,
      boolean keeps,
      boolean feedsThroughInputs)
      implements WiringFact {}

  /**
   * A leg of a fitted part.
   *
   * @param number counted from the notch, from 1
   * @param net empty when nothing is wired to it
   * @param tie whether its net hangs on a rail
   */
  record PinFact(
      String pin,
      String part,
      int number,
      int legs,
      String name,
      PinKind kind,
      PinRole role,
      String net,
      Tie tie)
      implements WiringFact {
    public boolean activeLow() {
      return name.startsWith("/");
    }

    /**
     * Which of several like functions of the part it belongs to, such as 1 of /1CLR; often none.
     */
    public String element() {
      return name.replaceAll("^/?(\\d?).*$", "$1");
    }

    /** A low here sets a flip-flop or latch. */
    public boolean setsByLow() {
      return name.matches("/\\d?PRE|/\\dS\\d?");
    }

    /** A low here clears a flip-flop or latch. */
    public boolean clearsByLow() {
      return name.matches("/\\d?CLR|/\\dR");
    }

    /** A leg at one of the four corners of the package. */
    public boolean corner() {
      return number == 1 || number == legs || number == legs / 2 || number == legs / 2 + 1;
    }

    /** Number of the next leg down or up the same side; 0 at the end of a side. */
    public int beside() {
      return number == legs / 2 || number == legs ? 0 : number + 1;
    }

    /** The pin with its name, for words. */
    public String spoken() {
      return pin + " (" + name + ")";
    }

    public boolean wired() {
      return !net.isEmpty();
    }

    /** A wired leg that is meant to carry a signal. */
    public boolean signal() {
      return wired() && tie == Tie.NONE;
    }

    public boolean power() {
      return role == PinRole.SUPPLY || role == PinRole.GROUND;
    }

    /** An input that decides whether or how the part works at all, rather than what on. */
    public boolean steers() {
      return switch (role) {
        case WRITE, ENABLE, DIRECTION, CLEAR, LOAD -> true;
        default -> false;
      };
    }

    public boolean drives() {
      return kind.drives();
    }

    public boolean listens() {
      return kind.listens();
    }
  }

  /** A jumper as meant. */
  record JumperFact(String jumper, String net, String from, String to, Tie tie)
      implements WiringFact {}

  /** One of the two ends of a jumper, and the end across from it. */
  record JumperEnd(String jumper, String net, Tie tie, End.Kind kind, String end, String other)
      implements WiringFact {}

  /** Two ends that the module file calls side by side. */
  record StatedNeighbours(String end, String beside) implements WiringFact {}

  /** Two ends whose rows lie side by side; stated in both directions. Derived. */
  record Neighbour(String end, String beside) implements WiringFact {}

  /** The net an end belongs to; empty when none. */
  record EndFact(String end, End.Kind kind, String net, Tie tie) implements WiringFact {}

  /**
   * A control.
   *
   * @param net of its own terminal; empty when none
   */
  record ControlFact(
      String control, Control.Kind kind, boolean restHigh, boolean pulled, String net)
      implements WiringFact {}

  /**
   * A contact of a control.
   *
   * @param contact its label; the control's own for the first to a rail
   * @param changesOver true when the control has another contact
   * @param commonOnRail true when that has a terminal of its own, and both close to one rail
   * @param pulled true when its terminal is meant to have a resistor of the control
   * @param net at its terminal; empty when none, or when its common leg is on none
   */
  record ContactFact(
      String contact,
      String control,
      Control.Kind kind,
      boolean changesOver,
      boolean commonOnRail,
      boolean pulled,
      String net)
      implements WiringFact {
    /** True for the contact by whose label its control goes. */
    public boolean first() {
      return contact.equals(control);
    }
  }

  /**
   * A contact between lines.
   *
   * @param common the net that its throw is joined to; empty when none
   */
  record PassFact(String contact, String common) implements WiringFact {}

  /**
   * A lamp.
   *
   * @param ohms series resistor; 0 for none
   */
  record LampFact(String lamp, String net, int ohms, boolean lightsOnHigh) implements WiringFact {}

  /**
   * A resistor between two lines; stated in both directions.
   *
   * @param net at one end; empty for none
   * @param otherNet at the other end; empty for none
   */
  record ResistorBetween(String resistor, String end, String net, String otherEnd, String otherNet)
      implements WiringFact {}

  /** A control or lamp within a word; position 0 is the high bit. */
  record WordMember(String word, int position, String label) implements WiringFact {
    public int next() {
      return position + 1;
    }
  }

  /** A word of lamps with its members, high bit first. */
  record LampWord(String word, List<String> lamps) implements WiringFact {}

  /**
   * A rail segment.
   *
   * @param tie the level it gives
   * @param linkedTo the segment it is fed from; empty where power enters
   */
  record RailFact(String rail, Tie tie, String linkedTo) implements WiringFact {}

  /** A line of a bus: the jumper, and the end at which it could be exchanged with another line. */
  record BusMember(String bus, int position, String net, String jumper, String end)
      implements WiringFact {
    public int next() {
      return position + 1;
    }
  }

  /** Where a bus lies in the module. */
  enum Side {
    /** From controls into parts. */
    IN,
    /** From parts to lamps or a port. */
    OUT,
    /** Between parts. */
    INNER
  }

  /**
   * Parallel jumpers in bit order.
   *
   * @param slice {@code all}, or {@code high} or {@code low} for half of a wider bus
   * @param role what the listening pins of its lines are for
   * @param places jumper, end, jumper, end ..., high bit first
   */
  record BusFact(String bus, Side side, String slice, int width, PinRole role, List<String> places)
      implements WiringFact {}

  /**
   * An output that is nothing but the inverse of one input, with the module's ties in place.
   *
   * @param used true when both pins lie on signal nets
   */
  record Inverter(String part, String input, String output, boolean used) implements WiringFact {}

  /**
   * The inverters of a part that a module uses.
   *
   * @param places the part, then input pin, output pin, input pin ...
   */
  record UsedInverters(String part, int count, List<String> places) implements WiringFact {}

  /** What a button says reaches a net, directly or through inverters. Derived. */
  record Leads(String control, String net) implements WiringFact {}

  /** A memory whose contents the module states. */
  record Programmed(String part) implements WiringFact {}

  /** A part without a capacitor across its supply legs, though the module names that of others. */
  record WithoutCapacitor(String part) implements WiringFact {}

  /** A part type that fits the same socket but works differently. */
  record LookAlike(String type, String other, String how) implements WiringFact {}

  /** A family other than the one meant that a shop sells for the same number. */
  record OtherFamily(String family, String other, String how) implements WiringFact {}
}
