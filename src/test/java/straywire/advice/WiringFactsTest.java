package straywire.advice;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.tuple;

import java.util.List;
import org.junit.jupiter.api.Test;
import straywire.advice.WiringFact.BusFact;
import straywire.advice.WiringFact.Inverter;
import straywire.advice.WiringFact.JumperFact;
import straywire.advice.WiringFact.LookAlike;
import straywire.advice.WiringFact.PartFact;
import straywire.advice.WiringFact.PinFact;
import straywire.advice.WiringFact.UsedInverters;
import straywire.advice.WiringFact.WithoutCapacitor;
import straywire.faults.Mechanism;
import straywire.module.Module;
import straywire.module.ModuleFile;
import straywire.parts.ShippedParts;

class WiringFactsTest {
  /** One exclusive-or inverts since its other input is tied high; U2 is not fitted yet. */
  private static final String SMALL =
      """
      format: straywire-module/1
      name: small
      title: Small board
      rails:
        VCC: {level: supply}
        GND: {level: ground}
        VCC.right: {level: supply, linked-to: VCC}
      parts:
        U1: {type: 74x86, family: LS}
        U2: {type: 74x04, family: LS, fitted: false}
      controls:
        S1: {kind: switch, closes-to: GND, pull-to: VCC, pull-ohms: 1000, rest: low}
        S2: {kind: switch, closes-to: GND, pull-to: VCC, pull-ohms: 1000, rest: low}
        S3: {kind: switch, closes-to: GND, pull-to: VCC, pull-ohms: 1000, rest: low}
      lamps:
        L1: {to: GND, ohms: 2200}
        L2: {to: GND, ohms: 2200}
      neighbours: [[S1, S3]]
      nets:
        VCC: [VCC, U1.14, U1.2, U2.14]
        GND: [GND, U1.7, U2.7]
        A: [S1, U1.1]
        B: [S2, U1.4]
        C: [S3, U1.5]
        Y: [U1.3, L1, U2.1]
        Z: [U1.6, L2]
      """;

  private final List<WiringFact> demo = WiringFacts.of(BeatMemory.MODULE).all();
  private final Module small = ModuleFile.parse("small.yaml", SMALL, new ShippedParts());
  private final List<WiringFact> facts = WiringFacts.of(small).all();

  @Test
  void invertersAreFoundByWhatPartsDo() {
    assertThat(all(Inverter.class, demo))
        .hasSize(8)
        .contains(new Inverter("U3", "U3.9", "U3.8", true));
    assertThat(all(UsedInverters.class, demo))
        .extracting(UsedInverters::part, UsedInverters::count)
        .containsExactly(tuple("U3", 4), tuple("U4", 4));
  }

  @Test
  void anExclusiveOrWithOneInputTiedHighIsAnInverter() {
    assertThat(all(Inverter.class, facts))
        .containsExactly(new Inverter("U1", "U1.1", "U1.3", true));
  }

  @Test
  void aPartThatIsNotFittedYetSaysNothing() {
    assertThat(all(PartFact.class, facts)).extracting(PartFact::part).containsExactly("U1");
    assertThat(all(PinFact.class, facts)).extracting(PinFact::part).containsOnly("U1");
    assertThat(all(JumperFact.class, facts))
        .extracting(JumperFact::jumper)
        .contains("VCC-U1.14", "U1.3-L1")
        .noneMatch(j -> j.contains("U2."));
  }

  @Test
  void legsKnowTheirCornersAndNeighbours() {
    List<PinFact> pins = all(PinFact.class, facts);
    assertThat(pins)
        .filteredOn(PinFact::corner)
        .extracting(PinFact::number)
        .containsExactly(1, 7, 8, 14);
    assertThat(pins)
        .filteredOn(p -> p.beside() == 0)
        .extracting(PinFact::number)
        .containsExactly(7, 14);
  }

  @Test
  void busesFollowWordsAndTheLinesBeforeTheInverters() {
    assertThat(all(BusFact.class, demo))
        .extracting(BusFact::bus, BusFact::slice, BusFact::width)
        .contains(
            tuple("data/1", "all", 8),
            tuple("data/1", "high", 4),
            tuple("memory/1", "low", 4),
            tuple("memory before the inverters/1", "all", 8),
            tuple("address/2", "all", 4));
  }

  @Test
  void aSetOfParallelJumpersIsOneBus() {
    assertThat(all(BusFact.class, demo)).extracting(BusFact::places).doesNotHaveDuplicates();
  }

  @Test
  void onlyLookAlikesOfOwnPartsMatter() {
    assertThat(all(LookAlike.class, demo))
        .extracting(LookAlike::type, LookAlike::other)
        .contains(tuple("74x189", "74x219"))
        .doesNotContain(tuple("74x219", "74x189"), tuple("74x00", "74x08"));
  }

  @Test
  void aPartWithoutTheCapacitorThatOthersHaveIsARisk() {
    String both = SMALL.replace(", fitted: false", "");
    assertThat(all(WithoutCapacitor.class, factsOf(both + "capacitors-to-ground: {U1: 100n}\n")))
        .containsExactly(new WithoutCapacitor("U2"));
    assertThat(
            all(
                WithoutCapacitor.class,
                factsOf(both + "capacitors-to-ground: {U1: 100n, U2: 100n}\n")))
        .isEmpty();
  }

  @Test
  void aFileThatNamesNoPartsCapacitorSaysNothingOfThem() {
    assertThat(all(WithoutCapacitor.class, factsOf(SMALL + "capacitors-to-ground: {VCC: 47u}\n")))
        .isEmpty();
  }

  private static List<WiringFact> factsOf(String yaml) {
    return WiringFacts.of(ModuleFile.parse("small.yaml", yaml, new ShippedParts())).all();
  }

  @Test
  void aLinkedRailAndStatedNeighboursLeadToProposals() {
    assertThat(RuleBase.shipped().propose(small))
        .anyMatch(
            s ->
                s.mechanism() == Mechanism.RAIL_NOT_LINKED
                    && s.places().equals(List.of("VCC.right")))
        .anyMatch(
            s ->
                s.mechanism() == Mechanism.END_MOVED
                    && s.places().equals(List.of("S1-U1.1", "S1", "S3")))
        .noneMatch(s -> s.places().toString().contains("U2"));
  }

  private static <T> List<T> all(Class<T> kind, List<WiringFact> facts) {
    return facts.stream().filter(kind::isInstance).map(kind::cast).toList();
  }
}
