package straywire.faults;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.Random;
import org.junit.jupiter.api.Test;
import straywire.module.Module;

class HypothesisPairsTest {
  private static final Module MODULE = SmallBoard.module();
  private static final Priors PRIORS = PriorsFile.shipped();

  private static Hypothesis single(double prior, Mechanism mechanism, String... places) {
    Hypothesis h =
        FaultExpansion.expand(
            MODULE, new Suggestion("T-01", mechanism, List.of(places), 1, "Why."), PRIORS);
    return new Hypothesis(
        h.id(), mechanism, h.edits(), prior, h.rule(), h.reason(), h.words(), h.repair());
  }

  private static Hypothesis missing(double prior, String jumper) {
    return single(prior, Mechanism.JUMPER_MISSING, jumper);
  }

  private static Optional<Hypothesis> pair(Hypothesis a, Hypothesis b) {
    return HypothesisPairs.pair(a, b, 0.5);
  }

  private static void assertContradict(Hypothesis a, Hypothesis b) {
    assertThat(pair(a, b)).isEmpty();
    assertThat(pair(b, a)).isEmpty();
  }

  @Test
  void aPairIsTheUnionOfBothWhicheverComesFirst() {
    Hypothesis a = missing(0.1, "GND-U1.2");
    Hypothesis b = single(0.02, Mechanism.INVERTER_BYPASSED, "U3", "U3.1", "U3.2");
    Hypothesis both = pair(b, a).orElseThrow();
    assertThat(both).isEqualTo(pair(a, b).orElseThrow());
    assertThat(both.id()).isEqualTo("jumper-missing GND-U1.2 + inverter-bypassed U3.1-U3.2");
    assertThat(both.mechanism()).isEqualTo(Mechanism.JUMPER_MISSING);
    assertThat(both.edits()).containsExactly(a.edits().get(0), b.edits().get(0), b.edits().get(1));
    // 0.1 * 0.02 / 0.5
    assertThat(both.prior()).isCloseTo(0.004, within(1e-15));
    assertThat(both.rule()).isEqualTo("T-01");
    assertThat(both.words()).isEqualTo(a.words() + "; also: " + b.words());
    assertThat(both.repair())
        .isEqualTo(
            a.repair() + " " + b.repair().substring("Switch the power off first. ".length()));
  }

  @Test
  void whatCannotBeInTwoStatesMakesNoPair() {
    Hypothesis missing = missing(0.1, "U1.5-U3.1");
    Hypothesis moved = single(0.1, Mechanism.END_MOVED, "U1.5-U3.1", "U3.1", "U3.2");
    Hypothesis elsewhere = single(0.1, Mechanism.END_MOVED, "U1.5-U3.1", "U3.1", "U3.3");
    Hypothesis bent = single(0.1, Mechanism.LEG_NOT_IN_ROW, "U3.2");
    Hypothesis turned = single(0.1, Mechanism.TURNED, "U3");
    Hypothesis low = single(0.1, Mechanism.OUTPUT_STUCK_LOW, "U3.2");
    Hypothesis unlisted = single(0.1, Mechanism.PART_UNLISTED, "U3");
    assertContradict(missing, missing);
    assertContradict(missing, moved);
    assertContradict(moved, elsewhere);
    assertContradict(bent, turned);
    assertContradict(low, single(0.1, Mechanism.OUTPUT_STUCK_HIGH, "U3.2"));
    assertContradict(low, unlisted);
    assertContradict(
        single(0.1, Mechanism.WRONG_PART, "U1", "74x219", "LS"),
        single(0.1, Mechanism.WRONG_PART, "U1", "74x189", "HC"));
    assertContradict(
        single(0.1, Mechanism.BARE_LED, "R0", "R1"), single(0.1, Mechanism.LED_DEAD, "R1"));
    assertContradict(
        single(0.1, Mechanism.CONTACT_DEAD, "A0"), single(0.1, Mechanism.PULL_MISSING, "A0"));
    assertContradict(single(0.1, Mechanism.SUPPLY_REVERSED), missing);
    assertContradict(single(0.5, Mechanism.NOTHING_WRONG), missing);
  }

  @Test
  void whatOnlySharesAPlaceStillMakesAPair() {
    Hypothesis moved = single(0.1, Mechanism.END_MOVED, "U1.5-U3.1", "U3.1", "U3.2");
    assertThat(pair(moved, single(0.1, Mechanism.END_MOVED, "U1.5-U3.1", "U1.5", "U1.6")))
        .isPresent();
    assertThat(pair(moved, single(0.1, Mechanism.LEG_NOT_IN_ROW, "U3.1"))).isPresent();
    assertThat(
            pair(
                single(0.1, Mechanism.OUTPUT_STUCK_LOW, "U3.2"),
                single(0.1, Mechanism.OUTPUT_STUCK_LOW, "U3.4")))
        .isPresent();
    assertThat(
            pair(single(0.1, Mechanism.TURNED, "U3"), single(0.1, Mechanism.PART_UNLISTED, "U3")))
        .isPresent();
  }

  @Test
  void pairsFallInPriorUpToTheCap() {
    List<Hypothesis> singles =
        List.of(
            single(0.5, Mechanism.NOTHING_WRONG),
            missing(0.1, "U1.7-U3.3"),
            missing(0.2, "U1.5-U3.1"),
            missing(0.05, "GND-U1.2"));
    List<Hypothesis> pairs = HypothesisPairs.pairs(singles, 0.5, 10);
    assertThat(pairs)
        .extracting(Hypothesis::id)
        .containsExactly(
            "jumper-missing U1.5-U3.1 + jumper-missing U1.7-U3.3",
            "jumper-missing GND-U1.2 + jumper-missing U1.5-U3.1",
            "jumper-missing GND-U1.2 + jumper-missing U1.7-U3.3");
    assertThat(HypothesisPairs.pairs(singles, 0.5, 2)).isEqualTo(pairs.subList(0, 2));
    assertThat(HypothesisPairs.pairs(singles, 0.5, 0)).isEmpty();
    assertThatThrownBy(() -> HypothesisPairs.pairs(singles, 0.5, -1))
        .hasMessage("The cap on pairs is 0 or more, got -1");
  }

  @Test
  void aPairThatIsASingleInDisguiseIsLeftOut() {
    Hypothesis one = single(0.1, Mechanism.END_MOVED, "U1.5-U3.1", "U3.1", "U3.3");
    Hypothesis other = single(0.1, Mechanism.END_MOVED, "U1.7-U3.3", "U3.3", "U3.1");
    Hypothesis swap = single(0.1, Mechanism.ENDS_SWAPPED, "U1.5-U3.1", "U3.1", "U1.7-U3.3", "U3.3");
    assertThat(HypothesisPairs.pairs(List.of(one, other), 0.5, 9)).hasSize(1);
    assertThat(HypothesisPairs.pairs(List.of(one, other, swap), 0.5, 9)).isEmpty();
  }

  /** The slow twin: all pairs, sorted. */
  @Test
  void theFirstPairsOfManyAreThoseOfTheFullList() {
    Random random = new Random(11);
    List<Hypothesis> singles = new ArrayList<>();
    for (var jumper : MODULE.jumpers()) {
      singles.add(missing(random.nextInt(1, 1000) / 1000.0, jumper.name()));
      singles.add(
          single(
              random.nextInt(1, 1000) / 1000.0,
              Mechanism.END_MOVED,
              jumper.name(),
              jumper.to().toString(),
              "U4.1"));
    }
    List<Hypothesis> full = new ArrayList<>();
    for (int i = 0; i < singles.size(); i++) {
      for (int j = i + 1; j < singles.size(); j++) {
        pair(singles.get(i), singles.get(j)).ifPresent(full::add);
      }
    }
    full.sort(Comparator.comparingDouble(Hypothesis::prior).reversed());
    assertThat(full).hasSizeGreaterThan(300);
    List<Hypothesis> pairs = HypothesisPairs.pairs(singles, 0.5, 100);
    assertThat(pairs.stream().map(Hypothesis::prior).toList())
        .isEqualTo(full.subList(0, 100).stream().map(Hypothesis::prior).toList());
    assertThat(HypothesisPairs.pairs(singles, 0.5, full.size() + 1))
        .containsExactlyInAnyOrderElementsOf(full);
  }
}
