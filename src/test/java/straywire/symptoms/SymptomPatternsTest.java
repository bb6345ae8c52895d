package straywire.symptoms;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;

class SymptomPatternsTest {
  @Test
  void patternsOfUsualWidthsTellBitsHalvesAndPlacesApart() {
    for (int width : new int[] {8, 16}) {
      List<Long> words = SymptomPatterns.words(width, 6, 6);
      assertThat(words).hasSizeGreaterThanOrEqualTo(6);
      assertThat(SymptomPatterns.flaws(width, words)).as(width + " bits").isZero();
    }
  }

  @Test
  void narrowWordsStillMoveEveryBit() {
    for (int width = 1; width < 8; width++) {
      long everLit = 0;
      long everDark = 0;
      for (long word : SymptomPatterns.words(width, 6, 6)) {
        everLit |= word;
        everDark |= ~word;
      }
      assertThat(everLit & everDark & SymptomRoles.ones(width)).isEqualTo(SymptomRoles.ones(width));
    }
  }

  @Test
  void flawsAreCounted() {
    assertThat(SymptomPatterns.flaws(2, List.of(3L, 0L))).isPositive();
    assertThat(SymptomPatterns.flaws(4, List.of(0b0110L, 0b0001L))).isPositive();
  }

  @Test
  void turnedRoundTheFirstBitIsTheLast() {
    assertThat(SymptomPatterns.reversed(0b10110000L, 8)).isEqualTo(0b00001101L);
    assertThat(SymptomPatterns.reversed(1, 64)).isEqualTo(Long.MIN_VALUE);
  }

  /** Four bits, three places; what was written at the first place is found at the third. */
  private static SymptomTrial threePlaces(long... shown) {
    long[] meant = {0b0001, 0b0011, 0b0111};
    SymptomLook[] looks = new SymptomLook[3];
    for (int i = 0; i < 3; i++) {
      looks[i] = new SymptomLook(1, 3, i, true, Map.of("A", i == 1), i);
    }
    SymptomTrial trial =
        new SymptomTrial(
            new SymptomLooks(List.of(looks), 4, 2, true, meant, new long[] {15, 15, 15}));
    for (int i = 0; i < 3; i++) {
      trial.lit[i] = shown[i];
    }
    trial.sum();
    return trial;
  }

  @Test
  void aWordThatTurnsUpAtAnotherPlaceLandedElsewhere() {
    assertThat(elsewhere(0b1000, 0b0011, 0b0001)).isEqualTo(1);
    assertThat(elsewhere(0b0001, 0b0011, 0b0111)).isZero();
    assertThat(elsewhere(0b0000, 0b0000, 0b0000)).isZero();
    assertThat(elsewhere(0b0001, 0b0001, 0b0111)).isZero();
  }

  private static double elsewhere(long... shown) {
    return SymptomPredicate.WRITES_ELSEWHERE.held(threePlaces(shown)).degree();
  }
}
