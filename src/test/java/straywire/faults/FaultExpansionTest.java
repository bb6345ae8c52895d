package straywire.faults;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static straywire.faults.SmallBoard.lamp;
import static straywire.faults.SmallBoard.pin;
import static straywire.faults.SmallBoard.rail;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import straywire.module.End;
import straywire.module.Jumper;
import straywire.module.Module;
import straywire.module.ModuleFile;
import straywire.module.Point;
import straywire.parts.ShippedParts;

/** Each mechanism's edits, words and repair on the small board, written out. */
class FaultExpansionTest {
  private static final Module MODULE = SmallBoard.module();
  private static final Priors PRIORS = PriorsFile.shipped();
  private static final String OFF = "Switch the power off first. ";
  private static final String HOT =
      "Switch the power off at once; do not touch, parts may be hot. ";
  private static final String VIEW = ", as seen from above with the notch up";

  private static Hypothesis expand(Mechanism mechanism, String... places) {
    return FaultExpansion.expand(
        MODULE, new Suggestion("T-01", mechanism, List.of(places), 1, "why"), PRIORS);
  }

  private static void assertWrong(String message, Mechanism mechanism, String... places) {
    assertThatThrownBy(() -> expand(mechanism, places))
        .isInstanceOf(IllegalArgumentException.class)
        .hasMessage("Rule T-01, " + mechanism + ": " + message);
  }

  private static Jumper jumper(String name) {
    return MODULE.jumpers().stream().filter(j -> j.name().equals(name)).findFirst().orElseThrow();
  }

  private static Edit moved(String jumper, End end, End now) {
    return new WireEdit.EndMoved(jumper(jumper), end, now);
  }

  private static Point leg(String pin) {
    return new Point(pin(pin), true);
  }

  private static Point row(End end) {
    return new Point(end, false);
  }

  /** Legs of one part in rows of others: {@code "7>- 8>10"}. */
  private static List<Edit> elsewhere(String part, String legs) {
    List<Edit> edits = new ArrayList<>();
    for (String leg : legs.split(" ")) {
      String[] fromTo = leg.split(">");
      edits.add(
          new LegEdit.LegElsewhere(
              pin(part + "." + fromTo[0]),
              fromTo[1].equals("-") ? Optional.empty() : Optional.of(pin(part + "." + fromTo[1]))));
    }
    return edits;
  }

  @Test
  void nothingWrongHasNoEdits() {
    Hypothesis h = expand(Mechanism.NOTHING_WRONG);
    assertThat(h.id()).isEqualTo("nothing-wrong");
    assertThat(h.edits()).isEmpty();
    assertThat(h.prior()).isEqualTo(0.5);
    assertThat(h.words()).isEqualTo("Nothing is wrong");
    assertWrong("names no place, got [U1]", Mechanism.NOTHING_WRONG, "U1");
  }

  @Test
  void aMissingJumperIsTakenAwayAndPutBack() {
    Hypothesis h = expand(Mechanism.JUMPER_MISSING, "U1.5-U3.1");
    assertThat(h.id()).isEqualTo("jumper-missing U1.5-U3.1");
    assertThat(h.edits()).containsExactly(new WireEdit.JumperRemoved(jumper("U1.5-U3.1")));
    assertThat(h.words())
        .isEqualTo("The jumper from U1 pin 5 (/O1) to U3 pin 1 (1A) is missing or broken");
    assertThat(h.repair())
        .isEqualTo(
            OFF
                + "Put in a sound jumper from U1 pin 5 (/O1) to U3 pin 1 (1A):"
                + " U1 left row, fifth from the notch; U3 left row, first from the notch"
                + VIEW
                + ".");
    assertWrong(
        "there is no jumper U1.5-U3.3 in module small", Mechanism.JUMPER_MISSING, "U1.5-U3.3");
    assertWrong("names a jumper, got []", Mechanism.JUMPER_MISSING);
  }

  @Test
  void aMissingSupplyJumperLeavesThePartWithoutSupplyOrGround() {
    Hypothesis supply = expand(Mechanism.SUPPLY_JUMPER_MISSING, "VCC-U3.14");
    assertThat(supply.id()).isEqualTo("supply-jumper-missing VCC-U3.14");
    assertThat(supply.edits()).containsExactly(new WireEdit.JumperRemoved(jumper("VCC-U3.14")));
    assertThat(supply.words())
        .isEqualTo(
            "U3 has no supply: the jumper from the supply rail VCC to U3 pin 14 (VCC) is missing"
                + " or broken");
    assertThat(supply.repair())
        .isEqualTo(
            OFF
                + "Put in a sound jumper from the supply rail VCC to U3 pin 14 (VCC):"
                + " right row, first from the notch"
                + VIEW
                + ".");
    assertThat(expand(Mechanism.SUPPLY_JUMPER_MISSING, "GND-U1.8").words())
        .startsWith("U1 has no ground: ");
    assertWrong(
        "jumper U1.5-U3.1 does not run to a rail", Mechanism.SUPPLY_JUMPER_MISSING, "U1.5-U3.1");
    assertWrong(
        "jumper GND-U1.2 does not run to a supply or ground pin",
        Mechanism.SUPPLY_JUMPER_MISSING,
        "GND-U1.2");
  }

  @Test
  void aLegOutOfItsRowHasNoContact() {
    Hypothesis h = expand(Mechanism.LEG_NOT_IN_ROW, "U1.3");
    assertThat(h.id()).isEqualTo("leg-not-in-row U1.3");
    assertThat(h.edits()).containsExactly(new LegEdit.ContactOpen(pin("U1.3")));
    assertThat(h.words())
        .isEqualTo(
            "U1 pin 3 (/WE) has no contact with its row: leg bent under, bad hole or part not"
                + " pressed home");
    assertThat(h.repair())
        .isEqualTo(
            OFF
                + "Lift U1, straighten the leg of U1 pin 3 (/WE) and press the part home, in other"
                + " holes if this one is worn: left row, third from the notch"
                + VIEW
                + ".");
    assertWrong("there is no end U1.17 in module small", Mechanism.LEG_NOT_IN_ROW, "U1.17");
    assertWrong("place A0 is not a pin", Mechanism.LEG_NOT_IN_ROW, "A0");
    assertWrong("part U9 is not fitted yet", Mechanism.LEG_NOT_IN_ROW, "U9.1");
  }

  @Test
  void aLegOfAOneRowPartIsNamedWithoutItsRow() {
    assertThat(expand(Mechanism.LEG_NOT_IN_ROW, "RN1.2").repair())
        .isEqualTo(
            OFF
                + "Lift RN1, straighten the leg of RN1 pin 2 (R01) and press the part home, in"
                + " other holes if this one is worn.");
  }

  @Test
  void anEndMovedGoesBackToWhereItIsMeant() {
    Hypothesis h = expand(Mechanism.END_MOVED, "U1.5-U3.1", "U3.1", "U3.2");
    assertThat(h.id()).isEqualTo("end-moved U1.5-U3.1 U3.1 to U3.2");
    assertThat(h.edits()).containsExactly(moved("U1.5-U3.1", pin("U3.1"), pin("U3.2")));
    assertThat(h.words())
        .isEqualTo(
            "The jumper from U1 pin 5 (/O1) to U3 pin 1 (1A) ends at U3 pin 2 (1Y) instead of U3"
                + " pin 1 (1A)");
    assertThat(h.repair())
        .isEqualTo(
            OFF
                + "On the wire from U1 pin 5 (/O1) move the end at U3 pin 2 (1Y) to U3 pin 1"
                + " (1A): left row, first from the notch"
                + VIEW
                + ".");
    assertThat(expand(Mechanism.END_MOVED, "U3.2-R1", "R1", "R0").repair())
        .isEqualTo(
            OFF
                + "On the wire from U3 pin 2 (1Y) move the end at lamp R0 (memory 0) to lamp R1"
                + " (memory 1).");
    assertWrong(
        "place U3.5 is not an end of jumper U1.5-U3.1",
        Mechanism.END_MOVED,
        "U1.5-U3.1",
        "U3.5",
        "U3.2");
    assertWrong(
        "end U3.1 of jumper U1.5-U3.1 is moved to where it is meant",
        Mechanism.END_MOVED,
        "U1.5-U3.1",
        "U3.1",
        "U3.1");
  }

  @Test
  void swappedEndsSitAtEachOthersPlace() {
    Hypothesis h = expand(Mechanism.ENDS_SWAPPED, "U1.7-U3.3", "U3.3", "U1.5-U3.1", "U3.1");
    assertThat(h.id()).isEqualTo("ends-swapped U1.5-U3.1 U3.1 with U1.7-U3.3 U3.3");
    assertThat(h.edits())
        .containsExactly(
            moved("U1.5-U3.1", pin("U3.1"), pin("U3.3")),
            moved("U1.7-U3.3", pin("U3.3"), pin("U3.1")));
    assertThat(h.words())
        .isEqualTo(
            "The wires from U1 pin 5 (/O1) and from U1 pin 7 (/O2) are exchanged at U3 pin 1 (1A)"
                + " and U3 pin 3 (2A)");
    assertThat(h.repair())
        .isEqualTo(
            OFF
                + "On the wire from U1 pin 5 (/O1) move the end at U3 pin 3 (2A) to U3 pin 1"
                + " (1A): left row, first from the notch"
                + VIEW
                + ". On the wire from U1 pin 7 (/O2) move the end at U3 pin 1 (1A) to U3 pin 3"
                + " (2A): left row, third from the notch"
                + VIEW
                + ".");
    assertThat(expand(Mechanism.ENDS_SWAPPED, "U1.5-U3.1", "U3.1", "U1.7-U3.3", "U3.3"))
        .isEqualTo(h);
    assertWrong(
        "both ends are R0, so there is nothing to exchange",
        Mechanism.ENDS_SWAPPED,
        "U3.4-R0",
        "R0",
        "R0-BUS0",
        "R0");
  }

  @Test
  void reversedOrderMirrorsTheEndsAndLeavesTheMiddleOne() {
    Hypothesis h =
        expand(
            Mechanism.ORDER_REVERSED,
            "U1.5-U3.1",
            "U3.1",
            "U1.7-U3.3",
            "U3.3",
            "U1.9-U3.5",
            "U3.5");
    assertThat(h.id()).isEqualTo("order-reversed U1.5-U3.1 U1.7-U3.3 U1.9-U3.5 at U3.1 U3.3 U3.5");
    assertThat(h.edits())
        .containsExactly(
            moved("U1.5-U3.1", pin("U3.1"), pin("U3.5")),
            moved("U1.9-U3.5", pin("U3.5"), pin("U3.1")));
    assertThat(h.words())
        .isEqualTo(
            "The wires from U1 pin 5 (/O1), U1 pin 7 (/O2), U1 pin 9 (/O3) sit in reverse order at"
                + " U3 pin 1 (1A), U3 pin 3 (2A), U3 pin 5 (3A)");
    assertThat(h.repair())
        .isEqualTo(
            OFF
                + "On the wire from U1 pin 5 (/O1) move the end at U3 pin 5 (3A) to U3 pin 1"
                + " (1A): left row, first from the notch"
                + VIEW
                + ". On the wire from U1 pin 9 (/O3) move the end at U3 pin 1 (1A) to U3 pin 5"
                + " (3A): left row, fifth from the notch"
                + VIEW
                + ".");
    assertWrong(
        "names two or more pairs of a jumper and its end, got [U1.5-U3.1, U3.1]",
        Mechanism.ORDER_REVERSED,
        "U1.5-U3.1",
        "U3.1");
    assertWrong(
        "end U3.1 of jumper U1.5-U3.1 is named twice",
        Mechanism.ORDER_REVERSED,
        "U1.5-U3.1",
        "U3.1",
        "U1.5-U3.1",
        "U3.1");
  }

  @Test
  void aBypassedInverterIsJoinedAcrossAndDrivesNothing() {
    Hypothesis h = expand(Mechanism.INVERTER_BYPASSED, "U3", "U3.1", "U3.2");
    assertThat(h.id()).isEqualTo("inverter-bypassed U3.1-U3.2");
    assertThat(h.edits())
        .containsExactly(
            new WireEdit.JumperAdded(row(pin("U3.1")), row(pin("U3.2"))),
            new LegEdit.ContactOpen(pin("U3.2")));
    assertThat(h.words())
        .isEqualTo(
            "The inverter U3 pin 1 (1A) to U3 pin 2 (1Y) is left out: the wire runs past it");
    assertThat(h.repair())
        .isEqualTo(
            OFF
                + "Take the wire past the inverter out; bring its signal to U3 pin 1 (1A) and take"
                + " it on from U3 pin 2 (1Y): U3 left row, first from the notch; U3 left row,"
                + " second from the notch"
                + VIEW
                + ".");
    Hypothesis both = expand(Mechanism.INVERTER_BYPASSED, "U3", "U3.1", "U3.2", "U3.3", "U3.4");
    assertThat(both.id()).isEqualTo("inverter-bypassed U3.1-U3.2 U3.3-U3.4");
    assertThat(both.edits()).hasSize(4);
    assertThat(both.words()).contains("The inverters ").contains(" are left out");
    assertWrong("place U1.5 is not a pin of U3", Mechanism.INVERTER_BYPASSED, "U3", "U1.5", "U3.2");
    assertWrong(
        "place U3.3 is not an output but INPUT", Mechanism.INVERTER_BYPASSED, "U3", "U3.1", "U3.3");
    assertWrong(
        "names a part and pairs of input pin and output pin, got [U3]",
        Mechanism.INVERTER_BYPASSED,
        "U3");
  }

  @Test
  void aBridgeJoinsTwoPointsWhicheverIsNamedFirst() {
    Hypothesis h = expand(Mechanism.BRIDGED, "U3.2", "U3.1");
    assertThat(h.id()).isEqualTo("bridged U3.1 U3.2");
    assertThat(h.edits()).containsExactly(new WireEdit.JumperAdded(leg("U3.1"), leg("U3.2")));
    assertThat(h.words()).isEqualTo("U3 pin 1 (1A) is joined to U3 pin 2 (1Y)");
    assertThat(h.repair())
        .isEqualTo(
            OFF
                + "Look for a whisker, a stray strand or touching legs. Separate U3 pin 1 (1A) from"
                + " U3 pin 2 (1Y): U3 left row, first from the notch; U3 left row, second from the"
                + " notch"
                + VIEW
                + ".");
    assertThat(expand(Mechanism.BRIDGED, "U3.1/row", "R1").edits())
        .containsExactly(new WireEdit.JumperAdded(row(pin("U3.1")), row(lamp("R1"))));
    assertWrong("a bridge joins two points, got only U3.1", Mechanism.BRIDGED, "U3.1", "U3.1");
    assertWrong("there is no point U3.15 in module small", Mechanism.BRIDGED, "U3.15", "U3.1");
  }

  @Test
  void aShortedPinIsJoinedToTheRailThePowerEnters() {
    Hypothesis low = expand(Mechanism.SHORTED_LOW, "U3.2");
    assertThat(low.id()).isEqualTo("shorted-low U3.2");
    assertThat(low.edits())
        .containsExactly(new WireEdit.JumperAdded(leg("U3.2"), row(rail("GND"))));
    assertThat(low.words()).isEqualTo("U3 pin 2 (1Y) is shorted to the ground rail GND");
    assertThat(low.repair())
        .isEqualTo(
            HOT
                + "Look for a whisker or a stray wire at U3 pin 2 (1Y): left row, second from the"
                + " notch"
                + VIEW
                + "; if there is none the short is inside a part on that line: exchange U3 first.");
    Hypothesis high = expand(Mechanism.SHORTED_HIGH, "U3.2");
    assertThat(high.id()).isEqualTo("shorted-high U3.2");
    assertThat(high.edits())
        .containsExactly(new WireEdit.JumperAdded(leg("U3.2"), row(rail("VCC"))));
    assertWrong(
        "U3.14 is a supply or ground pin; a short there joins the rails",
        Mechanism.SHORTED_LOW,
        "U3.14");
  }

  @Test
  void stuckAndDeadPinsAreInsideThePart() {
    Hypothesis low = expand(Mechanism.OUTPUT_STUCK_LOW, "U3.2");
    assertThat(low.id()).isEqualTo("output-stuck-low U3.2");
    assertThat(low.edits()).containsExactly(new ChipEdit.OutputHeld(pin("U3.2"), false));
    assertThat(low.words()).isEqualTo("The output U3 pin 2 (1Y) stays low whatever the inputs say");
    assertThat(low.repair()).isEqualTo(OFF + "Exchange U3 for a known good 74x04 of family LS.");
    assertThat(expand(Mechanism.OUTPUT_STUCK_HIGH, "U3.2").edits())
        .containsExactly(new ChipEdit.OutputHeld(pin("U3.2"), true));
    assertThat(expand(Mechanism.OUTPUT_DEAD, "U3.2").edits())
        .containsExactly(new ChipEdit.OutputDead(pin("U3.2")));
    assertThat(expand(Mechanism.INPUT_STUCK_LOW, "U3.1").edits())
        .containsExactly(new ChipEdit.InputHeld(pin("U3.1"), false));
    Hypothesis high = expand(Mechanism.INPUT_STUCK_HIGH, "U3.1");
    assertThat(high.edits()).containsExactly(new ChipEdit.InputHeld(pin("U3.1"), true));
    assertThat(high.words())
        .isEqualTo("The part takes U3 pin 1 (1A) for high whatever is on the leg");
    assertWrong("place U3.1 is not an output but INPUT", Mechanism.OUTPUT_STUCK_LOW, "U3.1");
    assertWrong("place U3.2 is not an input but OUTPUT", Mechanism.INPUT_STUCK_LOW, "U3.2");
    assertWrong("place U3.14 is not an output but SUPPLY", Mechanism.OUTPUT_DEAD, "U3.14");
  }

  @Test
  void theWrongRailHasTheOtherLevel() {
    Hypothesis h = expand(Mechanism.WRONG_RAIL, "GND-U1.2", "VCC");
    assertThat(h.id()).isEqualTo("wrong-rail GND-U1.2 to VCC");
    assertThat(h.edits()).containsExactly(moved("GND-U1.2", rail("GND"), rail("VCC")));
    assertThat(h.words())
        .isEqualTo("U1 pin 2 (/CS) is tied to the supply rail VCC instead of the ground rail GND");
    assertThat(h.repair())
        .isEqualTo(
            OFF
                + "On the wire from U1 pin 2 (/CS) move the end at the supply rail VCC to the"
                + " ground rail GND.");
    assertThat(expand(Mechanism.WRONG_RAIL, "VCC-U3.14", "GND.right").repair())
        .startsWith(HOT)
        .endsWith(" Treat U3 as suspect until it has been tested.");
    assertWrong(
        "GND.right is at the same level as GND, so it is not wrong",
        Mechanism.WRONG_RAIL,
        "GND-U1.2",
        "GND.right");
    assertWrong(
        "there is no rail segment VEE in module small", Mechanism.WRONG_RAIL, "GND-U1.2", "VEE");
  }

  @Test
  void aTurnedPartHasEachLegHalfAWayRound() {
    Hypothesis h = expand(Mechanism.TURNED, "U3");
    assertThat(h.id()).isEqualTo("turned U3");
    assertThat(h.edits())
        .isEqualTo(
            elsewhere("U3", "1>8 2>9 3>10 4>11 5>12 6>13 7>14 8>1 9>2 10>3 11>4 12>5 13>6 14>7"));
    assertThat(h.words()).isEqualTo("U3 (74x04, LS) sits turned round, its notch at the wrong end");
    assertThat(h.repair())
        .isEqualTo(
            HOT
                + "Turn U3 so that pin 1 is left row, first from the notch"
                + VIEW
                + ". It had its supply reversed: treat it as suspect until it has been tested.");
    assertWrong("there is no part U7 in module small", Mechanism.TURNED, "U7");
    assertWrong("part U9 is not fitted yet", Mechanism.TURNED, "U9");
    assertWrong("part RN1 does not have two rows of legs", Mechanism.TURNED, "RN1");
  }

  @Test
  void countedFromTheWrongSideEachLegMeetsItsOpposite() {
    Hypothesis h = expand(Mechanism.COUNTED_MIRRORED, "U1");
    assertThat(h.id()).isEqualTo("counted-mirrored U1");
    assertThat(h.edits())
        .isEqualTo(
            elsewhere(
                "U1",
                "1>16 2>15 3>14 4>13 5>12 6>11 7>10 8>9 9>8 10>7 11>6 12>5 13>4 14>3 15>2"
                    + " 16>1"));
    assertThat(h.words())
        .isEqualTo(
            "The pins of U1 (74x189, LS) are counted from the wrong side, so that each wire is at"
                + " the opposite row");
    assertThat(h.repair()).startsWith(HOT + "Wire U1 again: pin 1 is left row, first");
  }

  /** Place 8 and 9 of a 16-pin outline meet no leg; 10 to 15 meet legs 8 to 13. */
  @Test
  void countedAsSixteenTheLeftRowFitsAndTheRightRowIsTwoOff() {
    Hypothesis h = expand(Mechanism.COUNTED_AS_16, "U3");
    assertThat(h.id()).isEqualTo("counted-as-16 U3");
    assertThat(h.edits()).isEqualTo(elsewhere("U3", "7>- 8>10 9>11 10>12 11>13 12>- 13>-"));
    assertThat(h.repair())
        .startsWith(
            OFF
                + "Wire U3 again as a 14-pin part: pin 7 is left row, seventh from the notch, pin 8"
                + " is right row, seventh from the notch, pin 14 is right row, first from the notch"
                + VIEW);
    assertWrong("part U1 has 16 pins, not 14", Mechanism.COUNTED_AS_16, "U1");
  }

  /** A 74x90 has supply on 5 and ground on 10: only what is at a corner moves to a corner. */
  @Test
  void aPartWithInnerSupplyPinsCountedAsSixteenLosesItsGroundToAnotherLeg() {
    assertThat(expand(Mechanism.COUNTED_AS_16, "U4").edits())
        .isEqualTo(elsewhere("U4", "8>10 9>11 10>12 11>13 12>14 13>- 14>-"));
  }

  @Test
  void withOnlyTheSupplyAsOnSixteenOnlyGroundMisses() {
    Hypothesis h = expand(Mechanism.SUPPLY_AS_16, "U3");
    assertThat(h.id()).isEqualTo("supply-as-16 U3");
    assertThat(h.edits()).isEqualTo(elsewhere("U3", "7>-"));
    assertThat(h.words())
        .isEqualTo(
            "The ground wire of U3 (74x04, LS) sits where a 16-pin part has it, beyond the last"
                + " leg");
    assertThat(h.repair())
        .isEqualTo(
            OFF
                + "Move the ground wire of U3 one hole towards the notch, to U3 pin 7 (GND): left"
                + " row, seventh from the notch"
                + VIEW
                + ".");
    assertWrong(
        "part U4 does not have ground on pin 7 and supply on pin 14", Mechanism.SUPPLY_AS_16, "U4");
  }

  @Test
  void anUnlinkedRailSegmentIsLinked() {
    Hypothesis h = expand(Mechanism.RAIL_NOT_LINKED, "GND.right");
    assertThat(h.id()).isEqualTo("rail-not-linked GND.right");
    assertThat(h.edits()).containsExactly(new SupplyEdit.RailUnlinked("GND.right"));
    assertThat(h.words())
        .isEqualTo("The ground rail GND.right is not linked to the ground rail GND");
    assertThat(h.repair())
        .isEqualTo(OFF + "Link the ground rail GND.right to the ground rail GND.");
    assertWrong(
        "rail GND is where power enters; no link feeds it", Mechanism.RAIL_NOT_LINKED, "GND");
  }

  @Test
  void aWrongPartIsExchangedForTheOneMeant() {
    Hypothesis h = expand(Mechanism.WRONG_PART, "U1", "74x219", "LS");
    assertThat(h.id()).isEqualTo("wrong-part U1 74x219 LS");
    assertThat(h.edits()).containsExactly(new ChipEdit.PartReplaced("U1", "74x219", "LS"));
    assertThat(h.words()).isEqualTo("In the place of U1 (74x189, LS) sits a 74x219 of family LS");
    assertThat(h.repair())
        .isEqualTo(OFF + "Read the marking; exchange U1 for a known good 74x189 of family LS.");
    assertThat(expand(Mechanism.WRONG_PART, "U1", "74x189", "HC").edits())
        .containsExactly(new ChipEdit.PartReplaced("U1", "74x189", "HC"));
    assertWrong(
        "U1 is meant to be a 74x189 of family LS", Mechanism.WRONG_PART, "U1", "74x189", "LS");
    assertWrong("there is no part type 74x999", Mechanism.WRONG_PART, "U1", "74x999", "LS");
    assertWrong("there is no family XX", Mechanism.WRONG_PART, "U1", "74x219", "XX");
    assertWrong(
        "74x04 has 14 pins, U1 is meant to have 16", Mechanism.WRONG_PART, "U1", "74x04", "LS");
  }

  @Test
  void lampsCanBeBareBackwardsOrDead() {
    Hypothesis one = expand(Mechanism.BARE_LED, "R1");
    assertThat(one.id()).isEqualTo("bare-led R1");
    assertThat(one.edits())
        .containsExactly(new LampEdit.LampChanged("R1", LampEdit.LampFault.NO_RESISTOR));
    assertThat(one.words()).isEqualTo("The lamp R1 (memory 1) has no series resistor");
    assertThat(one.repair())
        .isEqualTo(OFF + "Put its resistor of 2200 ohms in series with the lamp R1 (memory 1).");
    Hypothesis both = expand(Mechanism.BARE_LED, "R1", "R0");
    assertThat(both.id()).isEqualTo("bare-led R0 R1");
    assertThat(both.edits())
        .containsExactly(
            new LampEdit.LampChanged("R0", LampEdit.LampFault.NO_RESISTOR),
            new LampEdit.LampChanged("R1", LampEdit.LampFault.NO_RESISTOR));
    assertThat(both.words()).isEqualTo("The lamps R0, R1 have no series resistors");
    assertThat(both.repair())
        .isEqualTo(OFF + "Put a resistor of 2200 ohms in series with each of the lamps R0, R1.");
    assertThat(expand(Mechanism.LED_BACKWARDS, "R1").edits())
        .containsExactly(new LampEdit.LampChanged("R1", LampEdit.LampFault.BACKWARDS));
    assertThat(expand(Mechanism.LED_BACKWARDS, "R1").repair())
        .isEqualTo(OFF + "Turn the lamp R1 (memory 1) round.");
    assertThat(expand(Mechanism.LED_DEAD, "R1").edits())
        .containsExactly(new LampEdit.LampChanged("R1", LampEdit.LampFault.DEAD));
    assertThat(expand(Mechanism.LED_DEAD, "R1").repair())
        .isEqualTo(OFF + "Exchange the lamp R1 (memory 1) for a known good one.");
    assertWrong("there is no lamp A0 in module small", Mechanism.LED_DEAD, "A0");
    assertWrong("lamp B0 is meant to have no resistor", Mechanism.BARE_LED, "B0");
    assertWrong("lamp R1 is named twice", Mechanism.BARE_LED, "R1", "R1");
    assertWrong("names one or more lamps, got none", Mechanism.BARE_LED);
  }

  @Test
  void controlsCanBeDeadStuckOrWithoutTheirPull() {
    Hypothesis dead = expand(Mechanism.CONTACT_DEAD, "write");
    assertThat(dead.id()).isEqualTo("contact-dead write");
    assertThat(dead.edits())
        .containsExactly(
            new ControlEdit.ControlChanged("write", ControlEdit.ControlFault.CONTACT_NEVER_CLOSES));
    assertThat(dead.words()).isEqualTo("The button write never closes");
    assertThat(dead.repair())
        .isEqualTo(OFF + "Turn the button write by a quarter, or exchange it.");
    assertThat(expand(Mechanism.CONTACT_STUCK, "A0").edits())
        .containsExactly(
            new ControlEdit.ControlChanged("A0", ControlEdit.ControlFault.CONTACT_ALWAYS_CLOSED));
    assertThat(expand(Mechanism.CONTACT_STUCK, "A0").repair())
        .isEqualTo(OFF + "Exchange the switch A0 (address 1).");
    Hypothesis pull = expand(Mechanism.PULL_MISSING, "A0");
    assertThat(pull.edits())
        .containsExactly(
            new ControlEdit.ControlChanged("A0", ControlEdit.ControlFault.PULL_MISSING));
    assertThat(pull.repair())
        .isEqualTo(
            OFF
                + "Put a resistor of 1000 ohms from the switch A0 (address 1) to the supply rail"
                + " VCC.");
    assertWrong("control write is meant to have no pull resistor", Mechanism.PULL_MISSING, "write");
    assertWrong("there is no control U1 in module small", Mechanism.CONTACT_DEAD, "U1");
  }

  @Test
  void aChangeOverHasTwoContactsAndMoreWaysToBeWrong() {
    assertThat(onChangeOvers(Mechanism.CONTACT_DEAD, "step-up").words())
        .isEqualTo("The throw step-up of button step (next) never closes");
    assertThat(onChangeOvers(Mechanism.CONTACT_DEAD, "step-up").repair())
        .isEqualTo(
            OFF + "See that each leg of the button step (next) has its wire; if so, exchange it.")
        .isEqualTo(onChangeOvers(Mechanism.CONTACT_DEAD, "step").repair());
    assertThat(onChangeOvers(Mechanism.CONTACT_DEAD, "side/VCC").words())
        .isEqualTo("The contact to VCC of switch side never closes");
    assertThat(onChangeOvers(Mechanism.PULL_MISSING, "step-up").repair())
        .contains("1000 ohms from the throw step-up of button step (next) to the supply rail VCC");
    Hypothesis exchanged = onChangeOvers(Mechanism.THROWS_EXCHANGED, "side");
    assertThat(exchanged.words()).isEqualTo("The two throws of switch side are exchanged");
    assertThat(exchanged.repair())
        .isEqualTo(OFF + "Exchange the two wires at the outer legs of switch side.");
    Hypothesis common = onChangeOvers(Mechanism.COMMON_OPEN, "step");
    assertThat(common.words()).isEqualTo("The common leg of button step (next) is on no rail");
    assertThat(common.repair())
        .isEqualTo(
            OFF
                + "Wire the common leg, mostly the middle one, of button step (next) to the ground"
                + " rail GND.");
    assertThat(common.edits().get(0).touches(CHANGE_OVERS))
        .extracting(End::toString)
        .containsExactly("step", "step-up");
    Hypothesis misplaced = onChangeOvers(Mechanism.COMMON_OPEN, "step", "step-up");
    assertThat(misplaced.id()).isEqualTo("common-open step step-up");
    assertThat(misplaced.words())
        .isEqualTo(
            "The wire to the common leg of button step (next) sits at the leg of throw step-up");
    assertThat(onChangeOvers(Mechanism.CONTACT_BOUNCES, "step", "2").repair())
        .isEqualTo(OFF + "Lead both throws of the button step (next) into a latch of two gates.");
    assertWrong("control write has a single contact", Mechanism.THROWS_EXCHANGED, "write");
    assertThatThrownBy(() -> onChangeOvers(Mechanism.COMMON_OPEN, "side"))
        .hasMessageContaining("control side has no common leg on a rail");
  }

  @Test
  void aChangeOverBetweenLinesIsWrongThrowByThrow() {
    Hypothesis dead = onChangeOvers(Mechanism.CONTACT_DEAD, "fast");
    assertThat(dead.words()).isEqualTo("The throw fast of button source never closes");
    assertThat(dead.repair())
        .isEqualTo(
            OFF + "See that each leg of the button source has its wire; if so, exchange it.");
    assertThat(dead.edits().get(0).touches(CHANGE_OVERS))
        .extracting(End::toString)
        .containsExactly("fast", "source");
    Hypothesis exchanged = onChangeOvers(Mechanism.THROWS_EXCHANGED, "source");
    assertThat(exchanged.words()).isEqualTo("The two throws of button source are exchanged");
    assertThat(exchanged.edits().get(0).touches(CHANGE_OVERS))
        .extracting(End::toString)
        .containsExactly("source", "slow", "fast");
    assertThat(onChangeOvers(Mechanism.CONTACT_BOUNCES, "slow", "3").words())
        .isEqualTo("The throw slow of button source bounces: it closes three times at each press");
    assertThat(onChangeOvers(Mechanism.CONTACT_BOUNCES, "slow", "3").repair())
        .isEqualTo(
            OFF
                + "Let gates that the button source steers pass on one of the two lines, in place of"
                + " its contacts.");
    assertThatThrownBy(() -> onChangeOvers(Mechanism.CONTACT_BOUNCES, "slow", "any"))
        .hasMessageContaining("a contact between lines closes 2, 3 or 4 times, got any");
    assertThatThrownBy(() -> onChangeOvers(Mechanism.PULL_MISSING, "slow"))
        .hasMessageContaining("control slow is meant to have no pull resistor");
    assertThatThrownBy(() -> onChangeOvers(Mechanism.COMMON_OPEN, "source"))
        .hasMessageContaining("control source has no common leg on a rail");
  }

  private static final Module CHANGE_OVERS =
      ModuleFile.parse(
          "change-overs.yaml",
          """
          format: straywire-module/1
          name: change-overs
          title: Change-overs
          rails: {VCC: {level: supply}, GND: {level: ground}}
          parts: {U1: {type: 74x00, family: LS}}
          controls:
            step: {kind: button, title: next, closes-to: GND, other-throw: step-up, pull-to: VCC,
              pull-ohms: 1000}
            side: {kind: switch, closes-to: GND, other-rail: VCC}
            source: {kind: button, low-throw: slow, high-throw: fast}
          nets:
            VCC: [VCC, U1.14]
            GND: [GND, U1.7]
            A: [step, U1.1]
            B: [step-up, U1.5]
            C: [side, U1.9]
            D: [U1.3, slow]
            E: [U1.6, fast]
            F: [source, U1.10]
          """,
          new ShippedParts());

  private static Hypothesis onChangeOvers(Mechanism mechanism, String... places) {
    return FaultExpansion.expand(
        CHANGE_OVERS, new Suggestion("T-01", mechanism, List.of(places), 1, "why"), PRIORS);
  }

  @Test
  void whatIsWrongWithAChangeOverAsAWholeLeavesNothingToItsContacts() {
    Hypothesis common = onChangeOvers(Mechanism.COMMON_OPEN, "step");
    assertThat(HypothesisPairs.pair(common, onChangeOvers(Mechanism.CONTACT_DEAD, "step-up"), 0.5))
        .isEmpty();
    assertThat(HypothesisPairs.pair(common, onChangeOvers(Mechanism.CONTACT_DEAD, "step"), 0.5))
        .isEmpty();
    assertThat(
            HypothesisPairs.pair(
                onChangeOvers(Mechanism.CONTACT_DEAD, "step"),
                onChangeOvers(Mechanism.PULL_MISSING, "step-up"),
                0.5))
        .isPresent();
  }

  @Test
  void aContactThatBouncesClosesSoAndSoOften() {
    Hypothesis twice = expand(Mechanism.CONTACT_BOUNCES, "write", "2");
    assertThat(twice.id()).isEqualTo("contact-bounces write 2");
    assertThat(twice.edits())
        .containsExactly(
            new ControlEdit.ControlChanged("write", ControlEdit.ControlFault.BOUNCES_TWICE));
    assertThat(twice.words()).isEqualTo("The button write bounces: it closes twice at each press");
    assertThat(twice.repair())
        .isEqualTo(
            OFF
                + "Quiet the button write: 10 kilohm and 1 uF before a Schmitt input, or a"
                + " change-over contact with a latch of two gates.");
    assertThat(expand(Mechanism.CONTACT_BOUNCES, "write", "any").edits())
        .containsExactly(
            new ControlEdit.ControlChanged("write", ControlEdit.ControlFault.BOUNCES_ANYHOW));
    assertWrong(
        "a contact closes any, 2, 3 or 4 times, got 5", Mechanism.CONTACT_BOUNCES, "write", "5");
  }

  @Test
  void aPartBesideTheTrenchHasEachLegInOneRowWithTheOneOpposite() {
    Hypothesis h = expand(Mechanism.NOT_ACROSS_TRENCH, "U3");
    assertThat(h.id()).isEqualTo("not-across-trench U3");
    assertThat(h.edits())
        .hasSize(7)
        .contains(
            new LegEdit.LegsInOneRow(pin("U3.1"), pin("U3.14")),
            new LegEdit.LegsInOneRow(pin("U3.7"), pin("U3.8")));
    assertThat(h.words())
        .isEqualTo(
            "U3 (74x04, LS) does not sit across the trench, so that each leg shares a row with the"
                + " one opposite");
    assertThat(h.repair()).startsWith(HOT + "Set U3 across the trench");
  }

  @Test
  void aPartSuppliedAtItsCornersHasItsSupplyJumpersThere() {
    Module divider =
        straywire.module.ModuleFile.readShipped(
            java.nio.file.Path.of("cases", "ripple-divider", "module.yaml"),
            new straywire.parts.ShippedParts());
    Hypothesis h =
        FaultExpansion.expand(
            divider,
            new Suggestion("T-01", Mechanism.SUPPLY_AT_CORNERS, List.of("U1"), 1, "why"),
            PRIORS);
    assertThat(h.id()).isEqualTo("supply-at-corners U1");
    assertThat(h.edits().stream().map(e -> e.touches(divider)))
        .containsExactlyInAnyOrder(
            List.of(pin("U1.5"), pin("U1.14")), List.of(pin("U1.10"), pin("U1.7")));
    assertThat(h.words())
        .isEqualTo(
            "U1 (74x93, LS) is supplied at its corners, as most parts are, instead of at pins 5 and"
                + " 10");
    assertThat(h.repair())
        .startsWith(HOT)
        .contains("move the end at U1 pin 14")
        .endsWith("tested.");
    assertWrong(
        "part U3 has its supply and ground at the corners", Mechanism.SUPPLY_AT_CORNERS, "U3");
  }

  @Test
  void anUnlistedMisbehaviourIsThePartItself() {
    Hypothesis h = expand(Mechanism.PART_UNLISTED, "U3");
    assertThat(h.id()).isEqualTo("part-unlisted U3");
    assertThat(h.edits()).containsExactly(new ChipEdit.PartUnlisted("U3"));
    assertThat(h.words()).isEqualTo("U3 (74x04, LS) misbehaves in a way not listed");
    assertThat(h.repair()).isEqualTo(OFF + "Exchange U3 for a known good 74x04 of family LS.");
  }

  @Test
  void aMemoryMayBeProgrammedOtherwiseThanTheModuleSays() {
    Module player = ModuleFile.read(Path.of("cases/tune-player/module.yaml"), new ShippedParts());
    Hypothesis blank =
        FaultExpansion.expand(
            player,
            new Suggestion("T-01", Mechanism.CONTENTS_WRONG, List.of("U2", "blank"), 1, "why"),
            PRIORS);
    assertThat(blank.id()).isEqualTo("contents-wrong U2 blank");
    assertThat(blank.words()).isEqualTo("U2 (28C16, HCT) is blank: every bit reads 1");
    assertThat(blank.repair())
        .isEqualTo(
            OFF
                + "Program U2 (28C16, HCT) anew with the words of the module file, and read it back"
                + " before it goes in again.");
    assertThatThrownBy(
            () ->
                FaultExpansion.expand(
                    player,
                    new Suggestion("T-01", Mechanism.CONTENTS_WRONG, List.of("U2", "odd"), 1, "x"),
                    PRIORS))
        .hasMessageContaining("contents are blank, shifted or reversed, got odd");
    assertWrong("the module states no contents of U3", Mechanism.CONTENTS_WRONG, "U3", "blank");
  }

  @Test
  void aPartWithoutItsCapacitorGetsOne() {
    Hypothesis h = expand(Mechanism.SUPPLY_NOT_QUIET, "U3");
    assertThat(h.id()).isEqualTo("supply-not-quiet U3");
    assertThat(h.edits()).containsExactly(new ChipEdit.PartUpset("U3"));
    assertThat(h.words())
        .isEqualTo("U3 (74x04, LS) is upset by its own supply, which no capacitor keeps quiet");
    assertThat(h.repair())
        .isEqualTo(
            OFF
                + "Fit 100 nF across the supply and ground legs of U3 (74x04, LS), right at the"
                + " legs.");
  }

  @Test
  void supplyFaultsPutCautionFirst() {
    Hypothesis reversed = expand(Mechanism.SUPPLY_REVERSED);
    assertThat(reversed.id()).isEqualTo("supply-reversed");
    assertThat(reversed.edits()).containsExactly(new SupplyEdit.SupplyReversed());
    assertThat(reversed.repair())
        .isEqualTo(
            HOT
                + "Exchange the two supply leads. Treat every part as suspect until it has been"
                + " tested.");
    Hypothesis joined = expand(Mechanism.RAILS_JOINED);
    assertThat(joined.id()).isEqualTo("rails-joined");
    assertThat(joined.edits()).containsExactly(new SupplyEdit.RailsJoined());
    assertThat(joined.repair()).startsWith(HOT);
  }

  @Test
  void thePriorOfOneSuggestionIsFrequencyTimesWeight() {
    Suggestion twice = new Suggestion("T-01", Mechanism.TURNED, List.of("U3"), 2, "why");
    assertThat(FaultExpansion.expand(MODULE, twice, PRIORS).prior())
        .isEqualTo(2 * PRIORS.frequency(Mechanism.TURNED));
  }
}
