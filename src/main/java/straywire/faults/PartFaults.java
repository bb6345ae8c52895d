package straywire.faults;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;
import straywire.logic.PinKind;
import straywire.module.End;
import straywire.module.Fitted;
import straywire.module.Module;
import straywire.parts.Part;
import straywire.sim.Variation;

/** Parts with a leg out of its row, turned, counted wrongly, exchanged or broken inside. */
final class PartFaults {
  private final Module module;
  private final Places places;
  private final BoardWords board;

  PartFaults(Module module, Places places) {
    this.module = module;
    this.places = places;
    this.board = new BoardWords(module);
  }

  Draft legNotInRow() {
    End pin = onePin();
    return Draft.plain(module, pin.toString(), new LegEdit.ContactOpen(pin))
        .saying(
            board.end(pin)
                + " has no contact with its row: leg bent under, bad hole or part not pressed"
                + " home");
  }

  Draft outputStuck(boolean high) {
    End pin = places.output(onePin());
    return Draft.plain(module, pin.toString(), new ChipEdit.OutputHeld(pin, high));
  }

  Draft outputDead() {
    End pin = places.output(onePin());
    return Draft.plain(module, pin.toString(), new ChipEdit.OutputDead(pin));
  }

  Draft inputStuck(boolean high) {
    End pin = places.input(onePin());
    return Draft.plain(module, pin.toString(), new ChipEdit.InputHeld(pin, high));
  }

  /** A half turn brings leg p to where leg p + N/2 should be. */
  Draft turned() {
    Fitted fitted = twoRowPart();
    int half = fitted.part().pinCount() / 2;
    List<Edit> edits = new ArrayList<>();
    for (End pin : board.pins(fitted.label())) {
      int row = (pin.pin() - 1 + half) % (2 * half) + 1;
      edits.add(elsewhere(pin, OptionalInt.of(row)));
    }
    return new Draft(
        fitted.label(),
        edits,
        board.part(fitted.label()) + " sits turned round, its notch at the wrong end",
        Draft.MAY_BE_HOT
            + "Turn "
            + fitted.label()
            + " so that pin 1 is "
            + LegPlace.of(1, fitted.part().pinCount()).words()
            + ", "
            + LegPlace.VIEW
            + ". It had its supply reversed: treat it as suspect until it has been tested.");
  }

  /** What is meant for leg p went to leg N+1-p. */
  Draft countedMirrored() {
    Fitted fitted = twoRowPart();
    int count = fitted.part().pinCount();
    List<Edit> edits = new ArrayList<>();
    for (End pin : board.pins(fitted.label())) {
      edits.add(elsewhere(pin, OptionalInt.of(count + 1 - pin.pin())));
    }
    return new Draft(
        fitted.label(),
        edits,
        "The pins of "
            + board.part(fitted.label())
            + " are counted from the wrong side, so that each wire is at the opposite row",
        Draft.MAY_BE_HOT
            + "Wire "
            + fitted.label()
            + " again: pin 1 is "
            + LegPlace.of(1, count).words()
            + ", the count runs down the left row and up the right one, "
            + LegPlace.VIEW
            + ". Treat it as suspect until it has been tested if its supply was at wrong legs.");
  }

  /** On one side of the trench leg p and leg N+1-p share a row of holes. */
  Draft notAcrossTrench() {
    Fitted fitted = twoRowPart();
    int count = fitted.part().pinCount();
    List<Edit> edits = new ArrayList<>();
    for (int pin = 1; pin <= count / 2; pin++) {
      edits.add(
          new LegEdit.LegsInOneRow(
              End.pin(fitted.label(), pin), End.pin(fitted.label(), count + 1 - pin)));
    }
    return new Draft(
        fitted.label(),
        edits,
        board.part(fitted.label())
            + " does not sit across the trench, so that each leg shares a row with the one"
            + " opposite",
        Draft.MAY_BE_HOT
            + "Set "
            + fitted.label()
            + " across the trench, with its jumpers on either side. Its outputs were joined to its"
            + " inputs: treat it as suspect until it has been tested.");
  }

  /**
   * The wires of a 14-pin part at the places a 16-pin part has them, notch ends aligned. Down the
   * left row the places fit legs 1 to 7; place 8 lies beyond the last leg, as does place 9 across
   * from it; places 10 to 16 are legs 8 to 14. Ground goes to the corner, place 8, and supply to
   * place 16. (Read off the two outlines; no source.)
   */
  Draft countedAs16() {
    Fitted fitted = part14();
    return counted16(
        fitted,
        this::placeCountedAs16,
        board.part(fitted.label())
            + " is wired as if it had 16 pins: the left row fits, ground and the right row do not",
        "Wire "
            + fitted.label()
            + " again as a 14-pin part: pin 7 is "
            + LegPlace.of(7, 14).words()
            + ", pin 8 is "
            + LegPlace.of(8, 14).words()
            + ", pin 14 is "
            + LegPlace.of(14, 14).words()
            + ", "
            + LegPlace.VIEW
            + ". Outputs may have been joined to other outputs: treat it as suspect until it has"
            + " been tested.");
  }

  /** As above, but only supply and ground are at the places of a 16-pin part: ground misses. */
  Draft supplyAs16() {
    Fitted fitted = part14();
    End ground = End.pin(fitted.label(), 7);
    if (places.spec(ground).kind() != PinKind.GROUND
        || places.spec(End.pin(fitted.label(), 14)).kind() != PinKind.SUPPLY) {
      throw places.wrong(
          "part " + fitted.label() + " does not have ground on pin 7 and supply on pin 14");
    }
    return counted16(
        fitted,
        pin -> places.powers(pin) ? placeCountedAs16(pin) : placeOfLeg(pin.pin()),
        "The ground wire of "
            + board.part(fitted.label())
            + " sits where a 16-pin part has it, beyond the last leg",
        "Move the ground wire of "
            + fitted.label()
            + " one hole towards the notch, to "
            + board.end(ground)
            + board.where(List.of(ground))
            + ".");
  }

  Draft wrongPart() {
    places.need(3, "a part, a part type and a family");
    Fitted fitted = places.part(0);
    String type = places.label(1);
    String family = places.label(2);
    Part other =
        module
            .library()
            .part(type)
            .orElseThrow(() -> places.wrong("there is no part type " + type));
    if (module.library().family(family).isEmpty()) {
      throw places.wrong("there is no family " + family);
    }
    if (type.equals(fitted.part().type()) && family.equals(fitted.family().name())) {
      throw places.wrong(fitted.label() + " is meant to be a " + type + " of family " + family);
    }
    if (other.pinCount() != fitted.part().pinCount()) {
      throw places.wrong(
          type
              + " has "
              + other.pinCount()
              + " pins, "
              + fitted.label()
              + " is meant to have "
              + fitted.part().pinCount());
    }
    return Draft.plain(
        module,
        fitted.label() + " " + type + " " + family,
        new ChipEdit.PartReplaced(fitted.label(), type, family));
  }

  Draft contentsWrong() {
    places.need(2, "a part and how its contents are wrong");
    Fitted fitted = places.part(0);
    if (!fitted.contents().known()) {
      throw places.wrong("the module states no contents of " + fitted.label());
    }
    String how = places.label(1);
    Variation.ContentsFault fault =
        switch (how) {
          case "blank" -> Variation.ContentsFault.BLANK;
          case "shifted" -> Variation.ContentsFault.SHIFTED;
          case "reversed" -> Variation.ContentsFault.REVERSED;
          default -> throw places.wrong("contents are blank, shifted or reversed, got " + how);
        };
    return Draft.plain(
        module, fitted.label() + " " + how, new ChipEdit.Misprogrammed(fitted.label(), fault));
  }

  Draft supplyNotQuiet() {
    Fitted fitted = onePart();
    return Draft.plain(module, fitted.label(), new ChipEdit.PartUpset(fitted.label()));
  }

  Draft unlisted() {
    Fitted fitted = onePart();
    return Draft.plain(module, fitted.label(), new ChipEdit.PartUnlisted(fitted.label()));
  }

  /** Which place of a 16-pin outline the wire meant for a pin goes to. */
  private interface WirePlace {
    int of(End pin);
  }

  private Draft counted16(Fitted fitted, WirePlace places16, String words, String repair) {
    List<End> pins = board.pins(fitted.label());
    List<Edit> edits = new ArrayList<>();
    for (End leg : pins) {
      OptionalInt row =
          pins.stream()
              .filter(pin -> places16.of(pin) == placeOfLeg(leg.pin()))
              .mapToInt(End::pin)
              .findFirst();
      if (row.isEmpty() || row.getAsInt() != leg.pin()) {
        edits.add(elsewhere(leg, row));
      }
    }
    return new Draft(fitted.label(), edits, words, Draft.POWER_OFF + repair);
  }

  private int placeCountedAs16(End pin) {
    return switch (places.spec(pin).kind()) {
      case GROUND -> pin.pin() == 7 ? 8 : pin.pin();
      case SUPPLY -> pin.pin() == 14 ? 16 : pin.pin();
      default -> pin.pin();
    };
  }

  /** The place of a 16-pin outline in which a leg of a 14-pin part sits, notch ends aligned. */
  private static int placeOfLeg(int leg) {
    return leg <= 7 ? leg : leg + 2;
  }

  private static Edit elsewhere(End pin, OptionalInt row) {
    return new LegEdit.LegElsewhere(
        pin,
        row.isPresent() ? Optional.of(End.pin(pin.label(), row.getAsInt())) : Optional.empty());
  }

  private End onePin() {
    places.need(1, "a pin");
    return places.pin(0);
  }

  private Fitted onePart() {
    places.need(1, "a part");
    return places.part(0);
  }

  private Fitted twoRowPart() {
    Fitted fitted = onePart();
    if (fitted.part().pinCount() % 2 != 0) {
      throw places.wrong("part " + fitted.label() + " does not have two rows of legs");
    }
    return fitted;
  }

  private Fitted part14() {
    Fitted fitted = onePart();
    if (fitted.part().pinCount() != 14) {
      throw places.wrong(
          "part " + fitted.label() + " has " + fitted.part().pinCount() + " pins, not 14");
    }
    return fitted;
  }
}
