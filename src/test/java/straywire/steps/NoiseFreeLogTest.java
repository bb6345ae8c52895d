package straywire.steps;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.EnumSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Random;
import java.util.TreeMap;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import straywire.casebook.SimulatedBench;
import straywire.faults.Hypothesis;
import straywire.faults.HypothesisPairs;
import straywire.faults.Mechanism;
import straywire.module.Entry;
import straywire.module.Point;
import straywire.observe.Instruments;
import straywire.observe.Step;
import straywire.ranking.Bank;
import straywire.sim.Wiring;

/** What a bench with a fault in it shows never speaks against that fault. */
class NoiseFreeLogTest {
  private static final List<Hypothesis> PROPOSED = DiagnosisBench.proposed();

  /** Less likely readings count as slips of eye or hand. */
  private static final double SLIP = Math.log(0.03);

  private static final Instruments ALL = new Instruments(true, true, true, true);

  private final Wiring wiring = new Wiring(DiagnosisBench.MODULE);
  private final StepMenu menu = new StepMenu(DiagnosisBench.MODULE, ALL);

  /** The exercise, then steps picked at random; nothing is exchanged. */
  private void followNeverContradicting(Hypothesis truth, long seed, int steps) {
    SimulatedBench bench =
        new SimulatedBench(DiagnosisBench.MODULE, truth, DiagnosisBench.TABLE, seed);
    Bank bank = new Bank(DiagnosisBench.MODULE, wiring, List.of(truth), DiagnosisBench.TABLE);
    for (Entry step : DiagnosisBench.MODULE.exercise()) {
      if (step instanceof Entry.Look look) {
        take(bank, truth, bench.look(look.what()));
      } else {
        bench.act(step);
        take(bank, truth, step);
      }
    }
    Random random = new Random(seed);
    for (int i = 0; i < steps; i++) {
      Step step = pick(bank, truth, random);
      bench.perform(step).forEach(entry -> take(bank, truth, entry));
    }
  }

  /** Lamps one by one, so that no sure one makes up for a wrong one. */
  private static void take(Bank bank, Hypothesis truth, Entry entry) {
    if (entry instanceof Entry.Seen seen) {
      seen.lamps()
          .forEach((lamp, state) -> takeOne(bank, truth, new Entry.Seen(Map.of(lamp, state))));
    } else {
      takeOne(bank, truth, entry);
    }
  }

  private static void takeOne(Bank bank, Hypothesis truth, Entry entry) {
    bank.accept(entry, new double[1]);
    assertThat(bank.logLikelihoodOf(bank.size() - 1, 0))
        .as("%s says %s", truth.id(), entry)
        .isGreaterThan(SLIP);
    assertThat(bank.slips(0)).as("%s slips at %s", truth.id(), entry).isZero();
  }

  private Step pick(Bank bank, Hypothesis truth, Random random) {
    List<Hypothesis> live = List.of(truth);
    int kind = random.nextInt(5);
    List<Point> points = menu.points(live);
    List<String> subjects = menu.subjects(live);
    List<Step.Beep> beeps = menu.beeps(live, bank.state().controls());
    if (kind == 0 && !points.isEmpty()) {
      return new Step.Measure(
          any(points, random), any(List.copyOf(menu.holds(points).keySet()), random));
    }
    if (kind == 1 && !points.isEmpty()) {
      return new Step.Probe(
          any(points, random), any(List.copyOf(menu.holds(points).keySet()), random));
    }
    if (kind == 2 && !subjects.isEmpty()) {
      return new Step.Inspect(any(subjects, random));
    }
    if (kind == 3 && !beeps.isEmpty()) {
      return any(beeps, random);
    }
    return any(menu.work(bank.state(), live), random);
  }

  private static <T> T any(List<T> list, Random random) {
    return list.get(random.nextInt(list.size()));
  }

  private static List<Hypothesis> ofEachMechanism(long seed) {
    Random random = new Random(seed);
    Map<Mechanism, List<Hypothesis>> all = new TreeMap<>();
    PROPOSED.forEach(h -> all.computeIfAbsent(h.mechanism(), m -> new ArrayList<>()).add(h));
    return all.values().stream().map(list -> any(list, random)).toList();
  }

  private static List<Hypothesis> pairs(long seed, int count) {
    Random random = new Random(seed);
    List<Hypothesis> pairs = new ArrayList<>();
    while (pairs.size() < count) {
      Optional<Hypothesis> pair =
          HypothesisPairs.pair(any(PROPOSED, random), any(PROPOSED, random), 0.5);
      pair.ifPresent(pairs::add);
    }
    return pairs;
  }

  @Test
  void nothingSeenSpeaksAgainstTheTruthWithOneFaultOfEachMechanism() {
    List<Hypothesis> sample = ofEachMechanism(1);
    // Its rails are in one piece, its parts are supplied at the corners and have their capacitors,
    // its controls have one contact each, its button clocks nothing and its memories come empty.
    assertThat(sample)
        .extracting(Hypothesis::mechanism)
        .containsExactlyElementsOf(
            EnumSet.complementOf(
                EnumSet.of(
                    Mechanism.RAIL_NOT_LINKED,
                    Mechanism.SUPPLY_AT_CORNERS,
                    Mechanism.THROWS_EXCHANGED,
                    Mechanism.COMMON_OPEN,
                    Mechanism.CONTACT_BOUNCES,
                    Mechanism.CONTENTS_WRONG,
                    Mechanism.SUPPLY_NOT_QUIET)));
    sample.forEach(truth -> followNeverContradicting(truth, 1, 20));
  }

  @Test
  void nothingSeenSpeaksAgainstTheTruthWithTwoFaults() {
    pairs(2, 25).forEach(truth -> followNeverContradicting(truth, 2, 20));
  }

  @Test
  @Tag("slow")
  void nothingSeenSpeaksAgainstAnyFaultProposed() {
    PROPOSED.forEach(truth -> followNeverContradicting(truth, 3, 30));
    pairs(4, 400).forEach(truth -> followNeverContradicting(truth, 4, 30));
  }

  @Test
  void aWrongLampDoesSpeakAgainstTheTruth() {
    Hypothesis sound = PROPOSED.get(0);
    Bank bank = DiagnosisBench.bank(sound);
    bank.accept(new Entry.Power(true), new double[1]);
    bank.accept(new Entry.Press("write"), new double[1]);
    bank.accept(new Entry.Seen(Map.of("R7", straywire.module.LampState.LIT)), new double[1]);
    assertThat(bank.slips(0)).isEqualTo(1);
    assertThat(bank.logLikelihoodOf(2, 0)).isLessThan(SLIP);
  }
}
