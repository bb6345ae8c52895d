package straywire.sim;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.Map;
import java.util.Set;
import org.junit.jupiter.api.Test;
import straywire.module.Control;

/**
 * What stays in a memory that keeps its contents without power. Contents, write protection while
 * the supply comes up, and what a write is: Atmel AT28C16 data sheet 0540B.
 */
class KeptContentsTest {
  /** An EEPROM with two words in use; a buffer puts two switches on its lowest lines. */
  private static Sketch store() {
    return new Sketch()
        .control("A0", false)
        .control("D0", false)
        .control("D1", false)
        .control("READ", false)
        .control("WE", true)
        .part("U1", "28C16", "HCT")
        .part("U2", "74x541", "HCT")
        .part("U3", "74x04", "HCT")
        .wire("GND", "U1./CE", "U1.A1", "U1.A2", "U1.A3", "U1.A4", "U1.A5", "U1.A6", "U1.A7")
        .wire("GND", "U1.A8", "U1.A9", "U1.A10", "U2.19")
        .wire("A0", "U1.A0")
        .wire("D0", "U2.2")
        .wire("D1", "U2.3")
        .wire("READ", "U2.1", "U3.1")
        .wire("U3.2", "U1./OE")
        .wire("U1.IO0", "U2.18")
        .wire("U1.IO1", "U2.17");
  }

  private static Sketch byHand() {
    return store().wire("WE", "U1./WE");
  }

  private static void write(Sketch.Running on, boolean a0, boolean d1, boolean d0) {
    on.set(Map.of("READ", false, "A0", a0, "D1", d1, "D0", d0)).pulse("WE");
  }

  private static List<Signal> read(Sketch.Running on, boolean a0) {
    on.set(Map.of("READ", true, "A0", a0));
    return List.of(on.at("U1.IO1"), on.at("U1.IO0"));
  }

  private static List<Signal> levels(boolean d1, boolean d0) {
    return List.of(
        d1 ? Signal.HIGH_CMOS : Signal.LOW_CMOS, d0 ? Signal.HIGH_CMOS : Signal.LOW_CMOS);
  }

  @Test
  void aWordStaysInAnEepromWithoutPower() {
    Sketch.Running on = byHand().on();
    write(on, false, true, false);
    write(on, true, false, true);
    on.powerCycle();
    assertThat(read(on, false)).isEqualTo(levels(true, false));
    assertThat(read(on, true)).isEqualTo(levels(false, true));
    on.powerCycle().powerCycle();
    assertThat(read(on, false)).isEqualTo(levels(true, false));
  }

  @Test
  void aWordWrittenAfterAPowerCycleTakesTheOldOnesPlace() {
    Sketch.Running on = byHand().on();
    write(on, false, true, false);
    on.powerCycle();
    write(on, false, false, true);
    on.powerCycle();
    assertThat(read(on, false)).isEqualTo(levels(false, true));
  }

  @Test
  void aWordNeverWrittenIsStillUnknownAndTracedToItsCellAfterAPowerCycle() {
    Sketch.Running on = byHand().on();
    write(on, false, true, false);
    on.powerCycle();
    assertThat(read(on, true)).containsOnly(Signal.UNKNOWN);
    // Eight cells to an address.
    assertThat(on.shownAt("U1.IO1")).containsExactly("U1 cell 9");
  }

  @Test
  void onlyCellsOfAMemoryThatKeepsItsContentsAreSaidToBeKept() {
    Sketch.Running on = byHand().on();
    assertThat(on.boards.keeps()).isTrue();
    assertThat(on.boards.keeps(0, "U1", 9)).isTrue();
    assertThat(on.boards.keeps(0, "U2", 0)).isFalse();
    assertThat(new Sketch().part("U1", "6116", "HCT").on().boards.keeps()).isFalse();
  }

  @Test
  void aWriteLineThatIsNotYetSettledAsPowerComesWritesNothing() {
    // The line comes from an inverter, whose output nobody knows at the very first.
    Sketch.Running on = store().wire("WE", "U3.3").wire("U3.4", "U3.5").wire("U3.6", "U1./WE").on();
    write(on, false, true, false);
    on.powerCycle();
    assertThat(read(on, false)).isEqualTo(levels(true, false));
  }

  @Test
  void aWriteThatIsStillAskedForOnceThePowerIsGoodHappens() {
    Sketch.Running on = byHand().on();
    write(on, false, true, false);
    on.powerCycle(Map.of("WE", false, "D1", false));
    on.set("WE", true);
    assertThat(read(on, false)).isEqualTo(levels(false, false));
  }

  @Test
  void aWriteLineThatHangsOpenMayHaveWrittenOneWordAsPowerCame() {
    Sketch sketch = byHand();
    Wiring wiring = sketch.wiring();
    Variation open = new Variation();
    open.remove(wiring.contact(sketch.end("U1./WE")));
    Boards boards = new Boards(wiring, List.of(new Variation(), open));
    BoardState state = boards.powerUp(boards.off());
    state = boards.move(state, Map.of("A0", true, "D0", true, "WE", false));
    state = boards.move(state, Map.of("WE", true));
    state = boards.powerUp(boards.powerDown(state));
    state = boards.move(state, Map.of("READ", true));
    long[] shown = boards.signals(state, 0, sketch.point("U1.IO0"));
    assertThat(shown[Signal.HIGH_CMOS.ordinal()]).as("the sound board only").isEqualTo(0b01);
  }

  @Test
  void contentsSurviveAShortOfTheSupply() {
    Sketch.Running on =
        byHand()
            .control(new Control("SHORT", Control.Kind.SWITCH, "", "VCC", "GND", 1000, false))
            .wire("SHORT", "GND")
            .on();
    write(on, false, true, false);
    on.set("SHORT", true);
    on.set("A0", true).pulse("WE");
    on.set(Map.of("SHORT", false));
    assertThat(read(on, false)).isEqualTo(levels(true, false));
    assertThat(read(on, true)).as("nothing is written over a short").containsOnly(Signal.UNKNOWN);
  }

  @Test
  void whatIsUnknownAfterUnloggedWorkOrARepairIsNotKeptEither() {
    Sketch.Running on = byHand().on();
    write(on, false, true, false);
    BoardState off = on.boards.forget(on.boards.powerDown(on.state()));
    Boards boards = on.boards;
    BoardState state = boards.move(boards.powerUp(off), Map.of("READ", true));
    long[] shown = boards.signals(state, 0, byHand().point("U1.IO0"));
    assertThat(shown[Signal.UNKNOWN.ordinal()]).isEqualTo(1);
  }

  @Test
  void lanesTakenOverWithThePowerOffBringTheirWordsAlong() {
    Sketch sketch = byHand();
    Sketch.Running on = sketch.on();
    Boards boards = new Boards(sketch.wiring(), List.of(new Variation(), new Variation()));
    BoardState state = boards.powerUp(boards.off());
    state = boards.move(state, Map.of("D1", true, "WE", false));
    state = boards.powerDown(boards.move(state, Map.of("WE", true)));
    Boards one = boards.select(new int[] {1});
    BoardState carried = one.powerUp(boards.carry(state, new int[] {1}, one));
    BoardState reads = one.move(carried, Map.of("READ", true));
    assertThat(one.signals(reads, 0, sketch.point("U1.IO1"))[Signal.HIGH_CMOS.ordinal()])
        .isEqualTo(1);
    BoardState other = on.boards.powerUp(on.boards.keptOf(one, one.powerDown(reads), Set.of()));
    assertThat(on.boards.signals(other, 0, sketch.point("U1.IO1"))[Signal.HIGH_CMOS.ordinal()])
        .isEqualTo(1);
    BoardState fresh = on.boards.powerUp(on.boards.keptOf(one, one.powerDown(reads), Set.of("U1")));
    assertThat(on.boards.signals(fresh, 0, sketch.point("U1.IO1"))[Signal.UNKNOWN.ordinal()])
        .isEqualTo(1);
  }
}
