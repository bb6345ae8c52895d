package straywire.faults;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import org.junit.jupiter.api.Test;
import straywire.module.End;
import straywire.module.Module;
import straywire.module.Point;
import straywire.sim.Boards;
import straywire.sim.Wiring;

/** What a continuity check with power off finds on a board built with a fault. */
class VariationOfTest {
  private static final Module MODULE = SmallBoard.module();
  private static final Wiring WIRING = new Wiring(MODULE);

  private static Hypothesis single(Mechanism mechanism, String... places) {
    return FaultExpansion.expand(
        MODULE, new Suggestion("T-01", mechanism, List.of(places), 1, "why"), PriorsFile.shipped());
  }

  private static Hypothesis pair(Hypothesis a, Hypothesis b) {
    return HypothesisPairs.pair(a, b, 0.5).orElseThrow();
  }

  private static Point leg(String pin) {
    return new Point(SmallBoard.pin(pin), true);
  }

  private static Point row(String pin) {
    return new Point(SmallBoard.pin(pin), false);
  }

  private static Point at(End end) {
    return new Point(end, false);
  }

  private static boolean joined(Hypothesis hypothesis, Point from, Point to) {
    Boards boards = new Boards(WIRING, List.of(new VariationOf(WIRING).compile(hypothesis)));
    return (boards.wired(boards.off(), 0, from, to) & 1) == 1;
  }

  @Test
  void asMeantLegsMeetTheirWires() {
    Hypothesis healthy = single(Mechanism.NOTHING_WRONG);
    assertThat(joined(healthy, leg("U1.5"), leg("U3.1"))).isTrue();
    assertThat(joined(healthy, leg("U1.5"), leg("U3.3"))).isFalse();
    assertThat(joined(healthy, leg("U3.4"), at(SmallBoard.lamp("R0")))).isTrue();
  }

  @Test
  void aMissingJumperPartsItsEnds() {
    Hypothesis missing = single(Mechanism.JUMPER_MISSING, "U1.5-U3.1");
    assertThat(joined(missing, leg("U1.5"), leg("U3.1"))).isFalse();
    assertThat(joined(missing, leg("U1.7"), leg("U3.3"))).isTrue();
  }

  @Test
  void swappedEndsLeadToEachOthersPlace() {
    Hypothesis swapped = single(Mechanism.ENDS_SWAPPED, "U1.5-U3.1", "U3.1", "U1.7-U3.3", "U3.3");
    assertThat(joined(swapped, leg("U1.5"), leg("U3.3"))).isTrue();
    assertThat(joined(swapped, leg("U1.7"), leg("U3.1"))).isTrue();
    assertThat(joined(swapped, leg("U1.5"), leg("U3.1"))).isFalse();
  }

  @Test
  void aJumperWithBothEndsMovedJoinsNeitherPlaceItIsMeantFor() {
    Hypothesis both =
        pair(
            single(Mechanism.END_MOVED, "U1.5-U3.1", "U3.1", "U3.6"),
            single(Mechanism.END_MOVED, "U1.5-U3.1", "U1.5", "U1.6"));
    assertThat(joined(both, row("U1.6"), row("U3.6"))).isTrue();
    assertThat(joined(both, row("U1.5"), row("U3.6"))).isFalse();
    assertThat(joined(both, row("U1.6"), row("U3.1"))).isFalse();
    assertThat(joined(both, row("U1.5"), row("U3.1"))).isFalse();
  }

  @Test
  void aBypassJoinsTheLinesAndLeavesTheOutputLegAlone() {
    Hypothesis bypassed = single(Mechanism.INVERTER_BYPASSED, "U3", "U3.1", "U3.2");
    assertThat(joined(bypassed, leg("U1.5"), at(SmallBoard.lamp("R1")))).isTrue();
    assertThat(joined(bypassed, leg("U3.2"), row("U3.2"))).isFalse();
    assertThat(joined(bypassed, leg("U3.1"), leg("U1.5"))).isTrue();
  }

  @Test
  void countedAsSixteenGroundAndTheRightRowMiss() {
    Hypothesis counted = single(Mechanism.COUNTED_AS_16, "U3");
    assertThat(joined(counted, leg("U3.14"), at(SmallBoard.rail("VCC")))).isTrue();
    assertThat(joined(counted, leg("U3.7"), at(SmallBoard.rail("GND")))).isFalse();
    assertThat(joined(counted, leg("U1.5"), leg("U3.1"))).isTrue();
    // The wire for pin 13 meets leg 11.
    assertThat(joined(counted, leg("U3.11"), at(SmallBoard.rail("GND.right")))).isTrue();
    assertThat(joined(counted, leg("U3.13"), at(SmallBoard.rail("GND.right")))).isFalse();
  }

  @Test
  void turnedRoundSupplyMeetsGroundPin() {
    Hypothesis turned = single(Mechanism.TURNED, "U3");
    assertThat(joined(turned, leg("U3.7"), at(SmallBoard.rail("VCC")))).isTrue();
    assertThat(joined(turned, leg("U3.14"), at(SmallBoard.rail("GND")))).isTrue();
    assertThat(joined(turned, leg("U3.8"), leg("U1.5"))).isTrue();
  }

  @Test
  void anUnlinkedRailIsApart() {
    Point right = at(SmallBoard.rail("GND.right"));
    Point ground = at(SmallBoard.rail("GND"));
    assertThat(joined(single(Mechanism.NOTHING_WRONG), right, ground)).isTrue();
    assertThat(joined(single(Mechanism.RAIL_NOT_LINKED, "GND.right"), right, ground)).isFalse();
  }
}
