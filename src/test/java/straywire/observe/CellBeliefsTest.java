package straywire.observe;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;
import straywire.steps.DiagnosisBench;

/**
 * Numbers by hand. Before anything is read, a word of n bits is with 0.85 n independent fair bits
 * and with 0.15 all alike, ones and zeros equally often.
 */
class CellBeliefsTest {
  private static final double RIGHT = Math.log(0.9);
  private static final double WRONG = Math.log(0.1);

  /** So unlikely that it does not count. */
  private static final double NEVER = -100;

  private final CellBeliefs nothingRead =
      new CellBeliefs(DiagnosisBench.MODULE, 2, RankingNumbers.shipped());

  /** Reads one bit of the first word of U1 in lane 0 and gives the probability of the reading. */
  private static double read(CellBeliefs beliefs, int bit, boolean one, double right, double not) {
    double[] ifOne = new double[4];
    double[] ifZero = new double[4];
    ifOne[bit] = one ? right : not;
    ifZero[bit] = one ? not : right;
    return Math.exp(beliefs.read(0, "U1", 0, ifOne, ifZero));
  }

  @Test
  void aBitNobodyWroteIsReadEitherWayEquallyOften() {
    assertThat(read(nothingRead.next(), 2, true, RIGHT, WRONG)).isCloseTo(0.5, within(1e-6));
    assertThat(read(nothingRead.next(), 2, false, RIGHT, WRONG)).isCloseTo(0.5, within(1e-6));
    assertThat(nothingRead.probabilityOfOne(0, "U1", 2)).isEqualTo(0.5);
  }

  @Test
  void theSecondBitOfAWordIsMoreOftenLikeTheFirstThanNot() {
    CellBeliefs beliefs = nothingRead.next();
    read(beliefs, 0, true, 0, NEVER);
    // (0.85 * 1/4 + 0.15 * 1/2) / (1/2)
    assertThat(read(beliefs, 1, true, 0, NEVER)).isCloseTo(0.575, within(1e-6));
  }

  @Test
  void aWordOfAllOnesIsTwiceAsLikelyAsByChance() {
    double ones =
        Math.exp(
            nothingRead
                .next()
                .read(0, "U1", 0, new double[4], new double[] {NEVER, NEVER, NEVER, NEVER}));
    // 0.85 / 16 + 0.15 / 2
    assertThat(ones).isCloseTo(0.128125, within(1e-6));
    double mixed =
        Math.exp(
            nothingRead
                .next()
                .read(
                    0,
                    "U1",
                    0,
                    new double[] {0, NEVER, 0, NEVER},
                    new double[] {NEVER, 0, NEVER, 0}));
    // 0.85 / 16
    assertThat(mixed).isCloseTo(0.053125, within(1e-6));
  }

  @Test
  void aReadingTwiceTheSameIsLikelierTheSecondTime() {
    CellBeliefs beliefs = nothingRead.next();
    read(beliefs, 0, true, RIGHT, WRONG);
    // 0.9 * 0.9 + 0.1 * 0.1
    assertThat(read(beliefs, 0, true, RIGHT, WRONG)).isCloseTo(0.82, within(1e-6));
    // 0.81 / (0.81 + 0.01)
    assertThat(beliefs.probabilityOfOne(0, "U1", 0)).isCloseTo(81.0 / 82, within(1e-6));
  }

  @Test
  void aMisreadBitStaysPossibleBothWays() {
    CellBeliefs beliefs = nothingRead.next();
    read(beliefs, 0, true, RIGHT, WRONG);
    // 0.9 * 0.1 + 0.1 * 0.9
    assertThat(read(beliefs, 0, false, RIGHT, WRONG)).isCloseTo(0.18, within(1e-6));
    assertThat(beliefs.probabilityOfOne(0, "U1", 0)).isCloseTo(0.5, within(1e-6));
  }

  @Test
  void whatIsReadInOneLaneOrOneWordSaysNothingOfAnother() {
    CellBeliefs beliefs = nothingRead.next();
    read(beliefs, 0, true, RIGHT, WRONG);
    assertThat(beliefs.probabilityOfOne(1, "U1", 0)).isEqualTo(0.5);
    assertThat(beliefs.probabilityOfOne(0, "U1", 4)).isEqualTo(0.5);
    assertThat(beliefs.probabilityOfOne(0, "U2", 0)).isEqualTo(0.5);
    assertThat(beliefs.probabilityOfOne(0, "no such part", 0)).isEqualTo(0.5);
  }

  @Test
  void aCopyThatReadsMoreLeavesTheOriginalAlone() {
    CellBeliefs first = nothingRead.next();
    read(first, 0, true, RIGHT, WRONG);
    CellBeliefs second = first.next();
    read(second, 0, true, RIGHT, WRONG);
    read(second, 1, true, RIGHT, WRONG);
    assertThat(first.probabilityOfOne(0, "U1", 0)).isCloseTo(0.9, within(1e-6));
    assertThat(first.probabilityOfOne(0, "U1", 1)).isEqualTo(0.5);
    assertThat(nothingRead.probabilityOfOne(0, "U1", 0)).isEqualTo(0.5);
  }

  @Test
  void aPowerCycleLeavesSixTenthsOfWhatIsKnownOfABit() {
    CellBeliefs beliefs = nothingRead.next();
    read(beliefs, 0, true, RIGHT, WRONG);
    CellBeliefs again = beliefs.afterPowerCycle((lane, part, cell) -> false);
    // 0.5 + (0.9 - 0.5) * 0.6
    assertThat(again.probabilityOfOne(0, "U1", 0)).isCloseTo(0.74, within(1e-6));
    assertThat(again.probabilityOfOne(0, "U1", 1)).isCloseTo(0.5, within(1e-6));
    // 0.74 * 0.9 + 0.26 * 0.1
    assertThat(read(again.next(), 0, true, RIGHT, WRONG)).isCloseTo(0.692, within(1e-6));
  }

  @Test
  void aPowerCycleLeavesAllThatIsKnownOfABitThatIsKept() {
    CellBeliefs beliefs = nothingRead.next();
    read(beliefs, 0, true, RIGHT, WRONG);
    beliefs.read(1, "U1", 0, new double[] {RIGHT, 0, 0, 0}, new double[] {WRONG, 0, 0, 0});
    beliefs.read(0, "U2", 0, new double[] {RIGHT}, new double[] {WRONG});
    CellBeliefs again =
        beliefs.afterPowerCycle((lane, part, cell) -> lane == 0 && part.equals("U1") && cell == 0);
    assertThat(again.probabilityOfOne(0, "U1", 0)).isCloseTo(0.9, within(1e-6));
    assertThat(again.probabilityOfOne(1, "U1", 0)).as("another lane").isCloseTo(0.74, within(1e-6));
    assertThat(again.probabilityOfOne(0, "U2", 0)).as("another part").isCloseTo(0.74, within(1e-6));
    // As likely as when nothing went off in between: 0.9 * 0.9 + 0.1 * 0.1
    assertThat(read(again.next(), 0, true, RIGHT, WRONG)).isCloseTo(0.82, within(1e-6));
  }

  @Test
  void onlyPartsOfTheModuleAreKnown() {
    assertThat(nothingRead.knows("U2")).isTrue();
    assertThat(nothingRead.knows("U9")).isFalse();
  }

  @Test
  void bitsOfAWrongPartWithMoreOfThemAreNotThoseOfTheNextPart() {
    CellBeliefs beliefs = nothingRead.next();
    int beyond = DiagnosisBench.MODULE.parts().get("U1").part().logic().cellCount();
    double[] sure = {0, 0, 0, 0};
    beliefs.read(0, "U1", beyond, sure, new double[] {NEVER, NEVER, NEVER, NEVER});
    assertThat(beliefs.probabilityOfOne(0, "U1", beyond + 1)).isCloseTo(1, within(1e-6));
    assertThat(beliefs.probabilityOfOne(0, "U2", 1)).isEqualTo(0.5);
  }
}
