package straywire.casebook;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import straywire.figures.Trial;
import straywire.module.Entry;
import straywire.module.LampState;
import straywire.observe.Instruments;
import straywire.observe.Step;
import straywire.ranking.Diagnosis;
import straywire.steps.Outlook;

/** Faults that look the same at the lamps, and what tells them apart. */
class ToldApartTest {
  /** What a rival may keep once it was told apart, as a share of all. */
  private static final double LITTLE = 0.02;

  /** Two faults; readings that tell them apart match {@code by} when typed. */
  private record Pair(String truth, String rival, String by) {}

  private static final List<Pair> PAIRS =
      List.of(
          new Pair(
              "jumper-missing write-U1.3", "contact-dead write", "measure U[12]\\.3( row)? .*"),
          new Pair(
              "contact-dead write", "jumper-missing write-U1.3", "measure U[12]\\.3( row)? .*"),
          new Pair(
              "jumper-missing GND-U1.2",
              "supply-jumper-missing VCC-U1.16",
              "measure U1\\.(2|16)( row)? .*"),
          new Pair("jumper-missing GND-U1.2", Faults.FOUR_OPEN, "measure U1\\.2( row)? .*"),
          new Pair(
              Faults.FOUR_OPEN,
              "jumper-missing GND-U1.2",
              "measure U(1\\.(2|5|7|9|11)|3\\.[1359])( row)? .*|inspect jumper U1\\..* .*"),
          new Pair(
              "supply-jumper-missing VCC-U1.16",
              "jumper-missing GND-U1.2",
              "measure U1\\.(2|16)( row)? .*"),
          new Pair(
              Faults.FOUR_BYPASSED,
              "wrong-part U1 74x219 LS",
              "measure U3\\..*|inspect (part U[13]|jumper .*U3\\..*) .*"),
          new Pair(
              "wrong-part U1 74x219 LS",
              Faults.FOUR_BYPASSED,
              "measure U3\\..*|inspect (part U[13]|jumper .*U3\\..*) .*"),
          new Pair(Faults.REVERSED_IN, Faults.REVERSED_OUT, "measure .*"),
          new Pair(Faults.REVERSED_OUT, Faults.REVERSED_IN, "measure .*"),
          new Pair(
              "supply-as-16 U3",
              "supply-jumper-missing GND-U3.7",
              "measure U3\\..*|inspect part U3 .*"),
          new Pair(
              "supply-jumper-missing GND-U3.7",
              "supply-as-16 U3",
              "measure U3\\..*|inspect part U3 .*"),
          new Pair(
              "counted-as-16 U3",
              "supply-jumper-missing GND-U3.7",
              "measure U3\\..*|inspect part U3 .*"));

  static List<Pair> pairs() {
    return PAIRS;
  }

  @ParameterizedTest
  @MethodSource("pairs")
  void aProposedStepTellsARivalApart(Pair pair) {
    assertToldApart(pair, 2);
  }

  @Tag("slow")
  @ParameterizedTest
  @MethodSource("pairs")
  void aProposedStepTellsARivalApartForTwentyFillingsOfTheMemory(Pair pair) {
    assertToldApart(pair, 20);
  }

  private static void assertToldApart(Pair pair, int seeds) {
    for (long seed : BeatMemory.seeds(seeds)) {
      Trial.Result result = BeatMemory.trial(pair.truth(), seed);
      assertThat(differently(result, pair.rival(), seed))
          .as("steps on which %s reads otherwise, seed %d", pair.rival(), seed)
          .anyMatch(line -> line.matches(pair.by()));
      int place = BeatMemory.place(result.last(), BeatMemory.fault(pair.rival()).id());
      assertThat(place).as("place of %s, seed %d", pair.rival(), seed).isNotEqualTo(1);
      if (place > 0) {
        assertThat(result.last().suspects().get(place - 1).probability()).isLessThan(LITTLE);
      }
    }
  }

  /** Typed readings of a trial's steps that a bench with the rival would give otherwise. */
  private static List<String> differently(Trial.Result result, String rival, long seed) {
    SimulatedBench bench = BeatMemory.bench(rival, seed);
    BeatMemory.opening(result).forEach(bench::follow);
    List<Entry> different = new ArrayList<>();
    for (Entry entry : BeatMemory.steps(result)) {
      bench.follow(entry);
      if (entry instanceof Entry.Measured m && Math.abs(bench.measure(m.point()) - m.volts()) > 0.5
          || entry instanceof Entry.Inspected i
              && !bench.perform(new Step.Inspect(i.subject())).contains(entry)) {
        different.add(entry);
      }
    }
    return BeatMemory.typed(different);
  }

  @Test
  void theLevelAtTheWritePinWhilePressedTellsAMissingJumperFromADeadContact() {
    Step pressed =
        new Step.Measure(
            ((Entry.Measured) BeatMemory.log("measure U1.3 row 0").lines().get(0).entry()).point(),
            java.util.Optional.of("write"));

    assertThat(levels(BeatMemory.bench(Faults.NONE, 0), pressed)).containsExactly(0.0);
    List<Double> missing = levels(BeatMemory.bench("jumper-missing write-U1.3", 0), pressed);
    List<Double> dead = levels(BeatMemory.bench("contact-dead write", 0), pressed);
    assertThat(missing.get(0)).as("open: leans high").isBetween(1.0, 2.0);
    assertThat(dead.get(0)).as("pulled up").isGreaterThan(4.0);
  }

  private static List<Double> levels(SimulatedBench bench, Step step) {
    bench.act(new Entry.Power(true));
    return bench.perform(step).stream()
        .filter(Entry.Measured.class::isInstance)
        .map(e -> ((Entry.Measured) e).volts())
        .toList();
  }

  @Test
  void anOpenChipSelectDarkensOneNibble() {
    for (long seed : BeatMemory.seeds(3)) {
      List<Entry> opening = BeatMemory.opening(BeatMemory.trial("jumper-missing GND-U1.2", seed));
      Map<String, LampState> seen = ((Entry.Seen) opening.get(opening.size() - 1)).lamps();
      assertThat(List.of("R7", "R6", "R5", "R4")).allMatch(r -> seen.get(r) == LampState.DARK);
    }
  }

  @Test
  void fourBypassedInvertersComeFirstTogetherWithAMemoryOfTrueOutputs() {
    for (long seed : BeatMemory.seeds(3)) {
      Trial.Result result = BeatMemory.trial(Faults.FOUR_BYPASSED, seed);
      Outlook outlook =
          BeatMemory.outlook(BeatMemory.after(BeatMemory.opening(result)), Instruments.USUAL);

      assertThat(BeatMemory.place(outlook, Faults.FOUR_BYPASSED)).isEqualTo(1);
      assertThat(BeatMemory.place(outlook, "wrong-part U1 74x219 LS")).isLessThanOrEqualTo(2);
    }
  }

  @Test
  void aReversedNibbleIsOneGroupAtTheLampsWhicheverSideItIsOn() {
    for (long seed : BeatMemory.seeds(3)) {
      Trial.Result result = BeatMemory.trialAtTheLamps(Faults.REVERSED_IN, seed);
      Diagnosis diagnosis = BeatMemory.after(BeatMemory.entries(result.log()));

      Outlook lamps = BeatMemory.outlook(diagnosis, Instruments.LAMPS_ONLY);
      assertThat(lamps.verdict()).isNotEqualTo(Outlook.Verdict.OPEN);
      assertThat(BeatMemory.ids(lamps.suspects().get(0)))
          .contains(Faults.REVERSED_IN, Faults.REVERSED_OUT);

      Outlook meter = BeatMemory.outlook(diagnosis, new Instruments(false, true, false, false));
      assertThat(BeatMemory.place(meter, Faults.REVERSED_IN))
          .isNotEqualTo(BeatMemory.place(meter, Faults.REVERSED_OUT));
      assertThat(meter.next().orElseThrow().step()).isInstanceOf(Step.Measure.class);
    }
  }

  @Test
  void anInverterChipWithoutGroundIsDecidedByTheMeterAtItsLegs() {
    for (long seed : BeatMemory.seeds(3)) {
      Trial.Result result = BeatMemory.trial("supply-jumper-missing GND-U3.7", seed);
      assertThat(result.deviated()).as("works, grounded through its inputs").isFalse();
      assertThat(BeatMemory.typed(BeatMemory.steps(result))).contains("measure U3.7 0.9");
    }
  }
}
