package straywire.faults;

import java.util.Optional;
import straywire.module.End;
import straywire.module.Jumper;
import straywire.module.Point;

/** One difference between a module as built and as meant. */
public sealed interface Edit {

  /** A jumper forgotten, loose or broken inside. */
  record JumperRemoved(Jumper jumper) implements Edit {}

  /** Two points joined that should not be. A rail is a point, too. */
  record JumperAdded(Point from, Point to) implements Edit {}

  /**
   * One end of a jumper in another row.
   *
   * @param end the end as meant, one of the jumper's two
   * @param now where it sits
   */
  record EndMoved(Jumper jumper, End end, End now) implements Edit {}

  /** A leg without contact to the row it should sit in. */
  record ContactOpen(End pin) implements Edit {}

  /**
   * A leg that sits in the row meant for another pin of the same part.
   *
   * @param row the pin whose row it sits in; empty when it meets none
   */
  record LegElsewhere(End pin, Optional<End> row) implements Edit {}

  /** An output of a part that drives one level whatever its inputs say. */
  record OutputHeld(End pin, boolean high) implements Edit {}

  /** An output of a part that never drives. */
  record OutputDead(End pin) implements Edit {}

  /** An input that the part takes for one level whatever is on its leg. */
  record InputHeld(End pin, boolean high) implements Edit {}

  /** Another part type, or another family, in the socket. */
  record PartReplaced(String part, String type, String family) implements Edit {}

  /** A part that misbehaves in a way no other edit describes: its outputs are unknown. */
  record PartUnlisted(String part) implements Edit {}

  /** A lamp that shows something else than its net. */
  record LampChanged(String lamp, LampFault fault) implements Edit {}

  /** How a lamp can be wrong. */
  enum LampFault {
    NO_RESISTOR,
    BACKWARDS,
    DEAD
  }

  /** A control that does not do what the hand does. */
  record ControlChanged(String control, ControlFault fault) implements Edit {}

  /** How a control can be wrong. */
  enum ControlFault {
    CONTACT_NEVER_CLOSES,
    CONTACT_ALWAYS_CLOSED,
    PULL_MISSING
  }

  /** A rail segment not linked to the one that feeds it. */
  record RailUnlinked(String segment) implements Edit {}

  /** Plus and minus exchanged at the supply: no logic is simulated. */
  record SupplyReversed() implements Edit {}

  /** Supply and ground rail joined: no logic is simulated. */
  record RailsJoined() implements Edit {}
}
