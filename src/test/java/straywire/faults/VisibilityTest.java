package straywire.faults;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.util.List;
import org.junit.jupiter.api.Test;
import straywire.module.Module;

class VisibilityTest {
  private static final Module MODULE = SmallBoard.module();
  private static final Visibility LOOK = new Visibility(MODULE);
  private static final List<String> SUBJECTS =
      List.of(
          "jumper U1.5-U3.1",
          "jumper U1.7-U3.3",
          "jumper U3.2-R1",
          "jumper GND-U1.2",
          "part U1",
          "part U3",
          "leg U3.1",
          "leg U3.2",
          "lamp R1",
          "control A0",
          "rail GND.right",
          "supply");

  private static Hypothesis single(Mechanism mechanism, String... places) {
    return FaultExpansion.expand(
        MODULE, new Suggestion("T-01", mechanism, List.of(places), 1, "why"), PriorsFile.shipped());
  }

  private static List<String> shownBy(Hypothesis hypothesis) {
    return SUBJECTS.stream().filter(s -> LOOK.shows(hypothesis, s)).toList();
  }

  private static void assertShownBy(Hypothesis hypothesis, String... subjects) {
    assertThat(shownBy(hypothesis)).containsExactly(subjects);
  }

  @Test
  void aWireThatIsNotWhereItIsMeantShowsAtThatJumper() {
    assertShownBy(single(Mechanism.JUMPER_MISSING, "U1.5-U3.1"), "jumper U1.5-U3.1");
    assertShownBy(single(Mechanism.END_MOVED, "U1.5-U3.1", "U3.1", "U3.2"), "jumper U1.5-U3.1");
    assertShownBy(
        single(Mechanism.ENDS_SWAPPED, "U1.5-U3.1", "U3.1", "U1.7-U3.3", "U3.3"),
        "jumper U1.5-U3.1",
        "jumper U1.7-U3.3");
    assertShownBy(single(Mechanism.WRONG_RAIL, "GND-U1.2", "VCC"), "jumper GND-U1.2");
  }

  @Test
  void aBypassShowsAtTheJumpersOnBothSidesOfTheInverterNotAtItsLegs() {
    assertShownBy(
        single(Mechanism.INVERTER_BYPASSED, "U3", "U3.1", "U3.2"),
        "jumper U1.5-U3.1",
        "jumper U3.2-R1");
  }

  @Test
  void aPartTurnedWrongOrCountedWronglyShowsAtThePart() {
    assertShownBy(single(Mechanism.TURNED, "U3"), "part U3");
    assertShownBy(single(Mechanism.WRONG_PART, "U1", "74x219", "LS"), "part U1");
    assertShownBy(single(Mechanism.COUNTED_AS_16, "U3"), "part U3");
    assertShownBy(single(Mechanism.SUPPLY_AS_16, "U3"), "part U3");
    assertShownBy(single(Mechanism.COUNTED_MIRRORED, "U1"), "part U1");
  }

  @Test
  void legsLampsControlsAndRailsShowThemselves() {
    assertShownBy(single(Mechanism.LEG_NOT_IN_ROW, "U3.2"), "leg U3.2");
    assertShownBy(single(Mechanism.BRIDGED, "U3.1", "U3.2"), "leg U3.1", "leg U3.2");
    assertShownBy(single(Mechanism.BARE_LED, "R1"), "lamp R1");
    assertShownBy(single(Mechanism.LED_BACKWARDS, "R1"), "lamp R1");
    assertShownBy(single(Mechanism.PULL_MISSING, "A0"), "control A0");
    assertShownBy(single(Mechanism.RAIL_NOT_LINKED, "GND.right"), "rail GND.right");
    assertShownBy(single(Mechanism.SUPPLY_REVERSED), "supply");
  }

  @Test
  void whatIsInsideLooksSound() {
    assertShownBy(single(Mechanism.NOTHING_WRONG));
    assertShownBy(single(Mechanism.OUTPUT_STUCK_LOW, "U3.2"));
    assertShownBy(single(Mechanism.OUTPUT_DEAD, "U3.2"));
    assertShownBy(single(Mechanism.INPUT_STUCK_HIGH, "U3.1"));
    assertShownBy(single(Mechanism.SHORTED_LOW, "U3.2"));
    assertShownBy(single(Mechanism.PART_UNLISTED, "U3"));
    assertShownBy(single(Mechanism.LED_DEAD, "R1"));
    assertShownBy(single(Mechanism.CONTACT_DEAD, "A0"));
    assertShownBy(single(Mechanism.CONTACT_STUCK, "A0"));
  }

  @Test
  void aPairShowsWhereverOneOfItsFaultsDoes() {
    Hypothesis pair =
        HypothesisPairs.pair(
                single(Mechanism.INVERTER_BYPASSED, "U3", "U3.1", "U3.2"),
                single(Mechanism.BARE_LED, "R1"),
                0.5)
            .orElseThrow();
    assertShownBy(pair, "jumper U1.5-U3.1", "jumper U3.2-R1", "lamp R1");
  }

  @Test
  void onlyWhatIsOnTheBoardCanBeLookedAt() {
    for (String subject :
        List.of("jumper U1.5-U3.3", "leg A0", "lamp U1", "wire U1.5-U3.1", "U3", "")) {
      assertThatThrownBy(() -> LOOK.shows(single(Mechanism.TURNED, "U3"), subject))
          .isInstanceOf(IllegalArgumentException.class)
          .hasMessageContaining("called " + subject + " in module small");
    }
  }
}
