package straywire.sim;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;
import straywire.module.Module;
import straywire.module.ModuleFile;
import straywire.parts.ShippedParts;

/**
 * An EEPROM that was programmed before it came to the board. That an erased one reads all ones:
 * Atmel application note 0544B on chip erase.
 */
class ProgrammedContentsTest {
  private static final Module PLAYER =
      ModuleFile.read(Path.of("cases/tune-player/module.yaml"), new ShippedParts());

  private final Wiring wiring = new Wiring(PLAYER);

  private Boards boards(Variation variation) {
    return new Boards(wiring, List.of(variation));
  }

  private static Variation programmed(Variation.ContentsFault fault) {
    Variation variation = new Variation();
    variation.program("U2", fault);
    return variation;
  }

  /** The bells at a beat of the first tune, bell 8 first. */
  private static String bells(Boards boards, BoardState start, int beat) {
    BoardState state =
        boards.move(boards.move(start, Map.of("start", false)), Map.of("start", true));
    for (int i = 0; i < beat; i++) {
      state = boards.move(boards.move(state, Map.of("beat", false)), Map.of("beat", true));
    }
    StringBuilder bells = new StringBuilder();
    for (String lamp : PLAYER.lampWord("bells").orElseThrow().members()) {
      Boards.Glow glow = boards.glow(state, 0, lamp);
      bells.append((glow.lit() & 1) != 0 ? '1' : (glow.dark() & 1) != 0 ? '0' : '?');
    }
    return bells.toString();
  }

  private String bells(Variation variation, int beat) {
    Boards boards = boards(variation);
    return bells(boards, boards.powerUp(boards.off()), beat);
  }

  @Test
  void itsWordsAreThoseOfTheModuleFile() {
    assertThat(bells(new Variation(), 0)).isEqualTo("00000001");
    assertThat(bells(new Variation(), 8)).isEqualTo("01010001");
  }

  @Test
  void theyAreStillThereAfterAPowerCycleAndAfterARepair() {
    Boards boards = boards(new Variation());
    BoardState on = boards.powerUp(boards.off());
    assertThat(bells(boards, boards.powerUp(boards.powerDown(on)), 8)).isEqualTo("01010001");
    assertThat(bells(boards, boards.forget(on), 8)).isEqualTo("01010001");
  }

  @Test
  void aBlankOneReadsAllOnes() {
    Variation blank = programmed(Variation.ContentsFault.BLANK);
    assertThat(bells(blank, 0)).isEqualTo("11111111");
    assertThat(bells(blank, 9)).isEqualTo("11111111");
  }

  @Test
  void countedFromOneEachWordStandsOneAddressTooHigh() {
    Variation shifted = programmed(Variation.ContentsFault.SHIFTED);
    assertThat(bells(shifted, 0)).as("nothing was written there").isEqualTo("11111111");
    assertThat(bells(shifted, 9)).isEqualTo("01010001");
  }

  @Test
  void bitsMayBeInReverseOrder() {
    assertThat(bells(programmed(Variation.ContentsFault.REVERSED), 8)).isEqualTo("10001010");
  }

  @Test
  void anotherTypeInTheSocketBringsContentsThatNobodyKnows() {
    Variation other = new Variation();
    other.replace(
        "U2",
        PLAYER.library().part("6116").orElseThrow(),
        PLAYER.library().family("HCT").orElseThrow());
    assertThat(bells(other, 8)).isEqualTo("????????");
  }
}
