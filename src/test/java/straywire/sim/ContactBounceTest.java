package straywire.sim;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import straywire.module.Control;

/** A contact that closes several times at one move of the hand, before a counter. */
class ContactBounceTest {
  private static Sketch counter() {
    return new Sketch()
        .control(new Control("beat", Control.Kind.BUTTON, "", "GND", "VCC", 1000, true))
        .control(new Control("clear", Control.Kind.BUTTON, "", "GND", "VCC", 1000, true))
        .control("S", false)
        .part("U1", "74x161", "LS")
        .wire("beat", "U1.CLK")
        .wire("clear", "U1./CLR")
        .wire("VCC", "U1.ENP", "U1.ENT", "U1./LOAD")
        .wire("S", "U1.A");
  }

  private static Variation bouncing(Variation.ControlFault... faults) {
    Variation variation = new Variation();
    for (Variation.ControlFault fault : faults) {
      variation.control("beat", fault);
    }
    return variation;
  }

  private static int count(Sketch.Running on) {
    return on.number("U1.QD", "U1.QC", "U1.QB", "U1.QA");
  }

  @ParameterizedTest
  @CsvSource({"CLOSES_TWICE, 2", "CLOSES_THREE_TIMES, 3", "CLOSES_FOUR_TIMES, 4"})
  void onePressCountsAsOftenAsTheContactCloses(Variation.ControlFault fault, int times) {
    Sketch.Running on = counter().on(bouncing(fault)).pulse("clear");
    assertThat(count(on)).isZero();
    on.pulse("beat");
    assertThat(count(on)).isEqualTo(times);
    on.pulse("beat");
    assertThat(count(on)).isEqualTo(2 * times);
  }

  @Test
  void itBouncesWhenItClosesAndNotWhenItOpensOrStays() {
    Sketch.Running on =
        counter().on(bouncing(Variation.ControlFault.CLOSES_THREE_TIMES)).pulse("clear");
    on.set("beat", false);
    assertThat(count(on)).as("two openings between three closings").isEqualTo(2);
    on.set("beat", false);
    assertThat(count(on)).as("held on").isEqualTo(2);
    on.set("beat", true);
    assertThat(count(on)).as("let go").isEqualTo(3);
    on.pulse("clear").set("S", true);
    assertThat(count(on)).isZero();
  }

  @Test
  void whetherItBouncesMayBeUnknown() {
    Sketch.Running on =
        counter().on(bouncing(Variation.ControlFault.CLOSES_ANYHOW)).pulse("clear").pulse("beat");
    assertThat(on.at("U1.QA")).isEqualTo(Signal.UNKNOWN);
    assertThat(on.at("U1.CLK")).as("at rest again").isEqualTo(Signal.PULLED_HIGH);
    on.pulse("clear");
    assertThat(count(on)).isZero();
    assertThat(on.at("U1.QA")).isEqualTo(Signal.LOW);
  }

  @Test
  void aDeadOrStuckContactDoesNotBounce() {
    for (Variation.ControlFault stronger :
        List.of(Variation.ControlFault.NEVER_CLOSES, Variation.ControlFault.ALWAYS_CLOSED)) {
      Sketch.Running on =
          counter()
              .on(bouncing(Variation.ControlFault.CLOSES_TWICE, stronger))
              .pulse("clear")
              .pulse("beat");
      assertThat(count(on)).as(stronger.toString()).isZero();
    }
  }

  @Test
  void twoContactsThatBounceAtOnceDoSoInEachLaneByItself() {
    Variation both = bouncing(Variation.ControlFault.CLOSES_THREE_TIMES);
    both.control("clear", Variation.ControlFault.CLOSES_TWICE);
    Sketch sketch = counter();
    Boards boards = new Boards(sketch.wiring(), List.of(new Variation(), both));
    BoardState state = boards.powerUp(boards.off());
    state = boards.press(state, "clear");
    state = boards.press(state, "beat");
    long[] units = boards.signals(state, 0, sketch.point("U1.QA"));
    long[] twos = boards.signals(state, 0, sketch.point("U1.QB"));
    assertThat(units[Signal.HIGH.ordinal()]).as("1 as meant, 3 bouncing").isEqualTo(0b11);
    assertThat(twos[Signal.HIGH.ordinal()]).isEqualTo(0b10);
  }
}
