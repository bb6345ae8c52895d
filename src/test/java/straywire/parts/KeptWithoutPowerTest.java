package straywire.parts;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import java.util.List;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import straywire.logic.PartLogic;

/** What of a part's memory stays without power, and that nothing goes into it meanwhile. */
class KeptWithoutPowerTest {
  private static final ShippedParts SHIPPED = new ShippedParts();

  /** Cells: seen, then four words of two bits that are kept, then two words of one that are not. */
  private static Bench keeper() {
    return new Bench(
        OwnParts.beside(SHIPPED, Path.of("src/test/resources/parts/keeper.yaml"))
            .part("keeper")
            .orElseThrow());
  }

  private static void write(Bench bench, boolean one) {
    bench.word(0, "A0", "A1", "/CE", "CLK");
    bench.high("/OE");
    bench.word(one ? 3 : 0, "IO1", "IO0");
    bench.low("/WE");
    bench.settle();
    bench.high("/WE");
    bench.settle();
    bench.high("CLK");
    bench.settle();
  }

  private static List<Integer> unknown(Bench bench) {
    return IntStream.range(0, bench.part.logic().cellCount())
        .filter(cell -> (bench.part.logic().unknownCell(bench.state, 3, cell) & 1) != 0)
        .boxed()
        .toList();
  }

  @Test
  void onlyWhatIsKeptOutlivesThePower() {
    Bench bench = keeper();
    write(bench, true);
    assertThat(unknown(bench)).containsExactly(3, 4, 5, 6, 7, 8, 10);
    bench.part.logic().losePower(bench.state, 3, 1);
    assertThat(unknown(bench)).containsExactly(0, 3, 4, 5, 6, 7, 8, 9, 10);
    bench.part.logic().forget(bench.state, 3, 1);
    assertThat(unknown(bench)).hasSize(11);
  }

  @Test
  void powerThatGoesInOneLaneIsFeltInThatLaneOnly() {
    Bench bench = keeper();
    write(bench, true);
    bench.part.logic().losePower(bench.state, 3, 0b10);
    assertThat(unknown(bench)).containsExactly(3, 4, 5, 6, 7, 8, 10);
  }

  @Test
  void aPartSaysWhichOfItsCellsAreKept() {
    PartLogic logic = keeper().part.logic();
    assertThat(IntStream.range(0, 11).filter(logic::keeps)).containsExactly(1, 2, 3, 4, 5, 6, 7, 8);
    assertThat(logic.keeps()).isTrue();
  }

  @Test
  void whileTheSupplyIsTooLowOnlyWhatIsNotKeptIsWritten() {
    Bench bench = keeper();
    write(bench, true);
    bench.word(0, "IO1", "IO0", "/WE");
    bench.part.logic().stepStoringNothing(bench.pins, bench.state, 3, -1L);
    assertThat(bench.state[3 + 2 * 1] & 1).as("word 0 may be 1").isEqualTo(1);
    assertThat(bench.state[3 + 2 * 1 + 1] & 1).as("word 0 may be 0").isEqualTo(0);
    assertThat(bench.state[3 + 2 * 9 + 1] & 1).as("scratch word may be 0").isEqualTo(1);
    assertThat(bench.state[3 + 2 * 9] & 1).as("scratch word may be 1").isEqualTo(0);
  }

  @Test
  void ofTheShippedPartsTheEepromsKeepTheirContents() {
    // Atmel AT28C16, AT28C64 and AT28C256 data sheets: nonvolatile; no other part here is.
    assertThat(SHIPPED.types().stream().filter(t -> SHIPPED.part(t).orElseThrow().logic().keeps()))
        .containsExactlyInAnyOrder("28C16", "28C64", "28C256");
  }
}
