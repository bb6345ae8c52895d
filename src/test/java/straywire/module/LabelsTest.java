package straywire.module;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import org.junit.jupiter.api.Test;
import straywire.format.BadEntry;

class LabelsTest {
  private final Labels labels = new Labels(SmallModule.module());

  @Test
  void aRailSegmentWithADotIsNotTakenForAPin() {
    assertThat(labels.end("GND.right")).isEqualTo(new End(End.Kind.RAIL, "GND.right", 0));
  }

  @Test
  void aPointOfAPinIsItsLegUnlessTheRowIsNamed() {
    assertThat(labels.point("U1.3")).isEqualTo(new Point(End.pin("U1", 3), true));
    assertThat(labels.point("U1.2A/row")).isEqualTo(new Point(End.pin("U1", 3), false));
    assertThat(labels.point("A")).isEqualTo(new Point(new End(End.Kind.CONTROL, "A", 0), false));
  }

  @Test
  void everyEndIsFoundUnderItsOwnName() {
    assertThat(labels.ends()).hasSize(14 + 16 + 3 + 3 + 2 + 2);
    assertThat(labels.ends())
        .allSatisfy(end -> assertThat(labels.end(end).toString()).isEqualTo(end));
  }

  @Test
  void aNameThatSeveralPinsShareIsNotGuessed() {
    Module module =
        BeatMemory.parse(
            SmallModule.with(
                    "{type: 74x189, family: HC, fitted: false}", "{type: twin, family: HC}")
                .replace("U2.16", "U2.4")
                .replace("U2.8", "U2.2")
                .replace("U2./CS", "U2.A")
                .replace("U2./WE", "U2.3")
                .replace("U2.1]", "L1]"));

    assertThatThrownBy(() -> new Labels(module).end("U2.GND"))
        .isInstanceOf(BadEntry.class)
        .hasMessage("U2 (twin) has several pins GND; write a number: 2, 3");
  }

  @Test
  void aJumperIsFoundByBothItsEndsOnly() {
    assertThat(labels.jumper("U1.2-L1").name()).isEqualTo("U1.2-L1");
    assertThat(labels.jumper("L1-U1.1Y").name()).isEqualTo("U1.2-L1");
    assertThatThrownBy(() -> labels.jumper("U1.2-U1.2")).isInstanceOf(BadEntry.class);
    assertThatThrownBy(() -> labels.jumper("U1.2-BELL1"))
        .isInstanceOf(BadEntry.class)
        .hasMessageStartingWith("no jumper is U1.2-BELL1");
  }
}
