package straywire.parts;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;
import straywire.logic.PartLogic;

/** What a part makes of levels that nobody can tell, and where its own unknowns come from. */
class UnknownLevelsTest {
  private static final ShippedParts PARTS = new ShippedParts();

  private static Bench bench(String type) {
    return new Bench(PARTS.part(type).orElseThrow());
  }

  private static void levels(Bench bench, String levels) {
    for (String level : levels.split(" ", -1)) {
      String pin = level.substring(0, level.length() - 2);
      switch (level.charAt(level.length() - 1)) {
        case '0' -> bench.low(pin);
        case '1' -> bench.high(pin);
        default -> bench.unknown(pin);
      }
    }
    bench.settle();
  }

  private static List<String> traced(Bench bench, String pin, long lanes) {
    List<String> found = new ArrayList<>();
    PartLogic.UnknownSink sink =
        new PartLogic.UnknownSink() {
          @Override
          public void input(int input, boolean inverted, long where) {
            found.add((inverted ? "!" : "") + bench.part.pin(input).name() + " " + where);
          }

          @Override
          public void cell(int cell, boolean inverted, long where) {
            found.add((inverted ? "!" : "") + "cell " + cell + " " + where);
          }
        };
    bench.part.logic().trace(bench.pins, bench.state, 3, bench.number(pin), lanes, sink);
    return found;
  }

  @Test
  void anUnknownClockLeavesOldOrNew() {
    Bench bench = bench("74x74");
    levels(bench, "/1PRE=1 /1CLR=0 1CLK=0 1D=0");
    levels(bench, "/1CLR=1");
    levels(bench, "1CLK=?");
    assertThat(bench.shows("1Q")).as("old and new are both low").isEqualTo('0');
    levels(bench, "1CLK=0");
    levels(bench, "1D=1");
    levels(bench, "1CLK=?");
    assertThat(bench.shows("1Q")).isEqualTo('X');
  }

  @Test
  void aClockThatWasUnknownMayHaveRisen() {
    Bench bench = bench("74x74");
    levels(bench, "/1PRE=1 /1CLR=0 1CLK=? 1D=1");
    levels(bench, "/1CLR=1");
    levels(bench, "1CLK=1");
    assertThat(bench.shows("1Q")).isEqualTo('X');
  }

  @Test
  void dataChangingWithTheClockIsTakenAsItWas() {
    Bench bench = bench("74x74");
    levels(bench, "/1PRE=1 /1CLR=1 1CLK=0 1D=0");
    bench.high("1CLK");
    bench.high("1D");
    bench.settle();
    assertThat(bench.shows("1Q")).isEqualTo('0');
  }

  @Test
  void anUnknownEnableMayDriveOrLetGo() {
    Bench bench = bench("74x125");
    levels(bench, "/1OE=? 1A=1");
    int pin = bench.number("1Y");
    assertThat(bench.pins.drive1[pin]).isEqualTo(-1L);
    assertThat(bench.pins.drive0[pin]).isZero();
    assertThat(bench.pins.off[pin]).isEqualTo(-1L);
  }

  @Test
  void aWriteThatMayHaveHappenedLeavesOldOrNew() {
    Bench bench = bench("74x219");
    levels(bench, "/CS=0 /WE=1 A3=0 A2=0 A1=0 A0=0 D4=0 D3=0 D2=0 D1=0");
    levels(bench, "/WE=0");
    levels(bench, "/WE=1");
    levels(bench, "D1=1");
    levels(bench, "/WE=?");
    levels(bench, "/WE=1");
    assertThat(bench.shows("Q4", "Q3", "Q2", "Q1")).isEqualTo("000X");
  }

  @Test
  void aWriteToAnUnknownAddressMayHitTwoCells() {
    Bench bench = bench("74x219");
    levels(bench, "/CS=0 /WE=1 A3=0 A2=0 A1=0 A0=0 D4=0 D3=0 D2=0 D1=0");
    for (String address : List.of("A0=0 A1=0", "A0=1 A1=0", "A0=0 A1=1")) {
      levels(bench, address);
      levels(bench, "/WE=0");
      levels(bench, "/WE=1");
    }
    levels(bench, "A1=0 A0=? D4=1");
    levels(bench, "/WE=0");
    levels(bench, "/WE=1");
    levels(bench, "A0=0");
    assertThat(bench.shows("Q4", "Q3")).isEqualTo("X0");
    levels(bench, "A0=1");
    assertThat(bench.shows("Q4", "Q3")).isEqualTo("X0");
    levels(bench, "A0=0 A1=1");
    assertThat(bench.shows("Q4", "Q3")).as("never addressed").isEqualTo("00");
  }

  @Test
  void onlyTheLanesAskedForMove() {
    Bench bench = bench("74x74");
    levels(bench, "/1PRE=1 /1CLR=0 1CLK=0 1D=0");
    levels(bench, "/1CLR=1 1D=1");
    bench.high("1CLK");
    boolean changed = bench.part.logic().step(bench.pins, bench.state, 3, 0b10);
    assertThat(changed).isTrue();
    assertThat(bench.shows(bench.number("1Q"), 0)).isEqualTo('0');
    assertThat(bench.shows(bench.number("1Q"), 1)).isEqualTo('1');
    assertThat(bench.part.logic().step(bench.pins, bench.state, 3, 0b10)).isFalse();
  }

  @Test
  void anUnwrittenCellIsTracedThroughTheComplementOutput() {
    Bench bench = bench("74x189");
    levels(bench, "/CS=0 /WE=1 A3=0 A2=1 A1=0 A0=1 D4=0 D3=0 D2=0 D1=0");
    assertThat(bench.shows("/Q3")).isEqualTo('X');
    assertThat(traced(bench, "/Q3", 0b110)).containsExactly("!cell " + (5 * 4 + 2) + " 6");
    PartLogic logic = bench.part.logic();
    assertThat(logic.cellCount()).isEqualTo(64);
    assertThat(logic.wordStart(22)).isEqualTo(20);
    assertThat(logic.wordLength(22)).isEqualTo(4);
    assertThat(logic.unknownCell(bench.state, 3, 22)).isEqualTo(-1L);
    levels(bench, "/WE=0");
    assertThat(logic.unknownCell(bench.state, 3, 22)).isZero();
  }

  @Test
  void anUnknownAddressIsNotTracedToACell() {
    Bench bench = bench("74x189");
    levels(bench, "/CS=0 /WE=1 A3=0 A2=1 A1=0 A0=?");
    assertThat(traced(bench, "/Q3", -1L)).isEmpty();
  }

  @Test
  void anUnknownIsTracedThroughGatesThatPassIt() {
    Bench inverter = bench("74x04");
    levels(inverter, "1A=?");
    assertThat(traced(inverter, "1Y", 1)).containsExactly("!1A 1");
    Bench nand = bench("74x00");
    levels(nand, "1A=? 1B=1");
    assertThat(traced(nand, "1Y", 1)).containsExactly("!1A 1");
    levels(nand, "1B=?");
    assertThat(traced(nand, "1Y", 1)).isEmpty();
    levels(nand, "1B=0");
    assertThat(traced(nand, "1Y", 1)).as("known").isEmpty();
    Bench xor = bench("74x86");
    levels(xor, "1A=? 1B=1");
    assertThat(traced(xor, "1Y", 1)).containsExactly("!1A 1");
    levels(xor, "1B=0");
    assertThat(traced(xor, "1Y", 1)).containsExactly("1A 1");
  }

  @Test
  void anUnknownIsTracedThroughSelectorsAndBusDrivers() {
    Bench selector = bench("74x157");
    levels(selector, "/G=0 S=0 1A=? 1B=1");
    assertThat(traced(selector, "1Y", 1)).containsExactly("1A 1");
    levels(selector, "S=? 1A=0");
    assertThat(traced(selector, "1Y", 1)).containsExactly("S 1");
    levels(selector, "1A=1 1B=0");
    assertThat(traced(selector, "1Y", 1)).containsExactly("!S 1");
    Bench driver = bench("74x245");
    levels(driver, "/OE=0 DIR=1 A3=?");
    assertThat(traced(driver, "B3", 1)).containsExactly("A3 1");
    levels(driver, "/OE=1");
    assertThat(traced(driver, "B3", 1)).isEmpty();
  }

  @Test
  void aRegisterIsARememberedBit() {
    Bench register = bench("74x273");
    levels(register, "/CLR=1 CLK=0");
    assertThat(traced(register, "8Q", 1)).containsExactly("cell 0 1");
    assertThat(register.part.logic().wordLength(0)).isEqualTo(1);
  }
}
