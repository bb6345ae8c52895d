package straywire.steps;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.Random;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import straywire.casebook.SimulatedBench;
import straywire.faults.Hypothesis;
import straywire.module.Entry;
import straywire.module.Module;
import straywire.module.Point;
import straywire.observe.Instruments;
import straywire.observe.Step;
import straywire.ranking.Bank;
import straywire.ranking.Diagnosis;
import straywire.ranking.LiveSet;
import straywire.ranking.Posterior;
import straywire.sim.Wiring;

/** The ranking and its slow twin agree on drawn faults and logs. */
class SlowRankingTest {
  private static final Module MODULE = DiagnosisBench.MODULE;
  private static final List<Hypothesis> PROPOSED = DiagnosisBench.proposed();

  /** What was read of bits that nobody wrote is kept in single precision. */
  private static final double CLOSE = 1e-4;

  /** A handful of faults, never the same one twice, and nothing wrong. */
  private static List<Hypothesis> handful(Random random) {
    List<Hypothesis> some = new ArrayList<>(List.of(PROPOSED.get(0)));
    while (some.size() < 7) {
      Hypothesis one = PROPOSED.get(random.nextInt(PROPOSED.size()));
      if (!some.contains(one)) {
        some.add(one);
      }
    }
    return some;
  }

  private static void agree(long seed) {
    Random random = new Random(seed);
    List<Hypothesis> some = handful(random);
    SimulatedBench bench =
        new SimulatedBench(MODULE, some.get(random.nextInt(7)), DiagnosisBench.TABLE, seed);
    Bank fast = new Bank(MODULE, new Wiring(MODULE), some, DiagnosisBench.TABLE);
    SlowRanking slow = new SlowRanking(MODULE, some);
    StepMenu menu = new StepMenu(MODULE, Instruments.USUAL);
    take(new Entry.Power(true), fast, slow, bench);
    for (int i = 0; i < 12; i++) {
      Step step = drawn(menu, fast, some, random);
      for (Entry entry : bench.perform(step)) {
        fast.accept(entry, new double[7]);
        slow.accept(entry);
      }
      double[] posterior = posterior(fast, some);
      assertThat(slow.posterior()).as("seed %d", seed).containsExactly(posterior, within(CLOSE));
    }
    agreeOnWorth(seed, fast, slow, some);
  }

  private static void take(Entry entry, Bank fast, SlowRanking slow, SimulatedBench bench) {
    bench.act(entry);
    fast.accept(entry, new double[7]);
    slow.accept(entry);
  }

  private static double[] posterior(Bank fast, List<Hypothesis> some) {
    double[] logs = new double[some.size()];
    Arrays.setAll(logs, fast::logLikelihood);
    return Posterior.of(some.stream().mapToDouble(Hypothesis::prior).toArray(), logs);
  }

  private static Step drawn(StepMenu menu, Bank fast, List<Hypothesis> some, Random random) {
    List<Point> points = menu.points(some);
    List<String> subjects = menu.subjects(some);
    return switch (random.nextInt(5)) {
      case 0 -> new Step.Measure(points.get(random.nextInt(points.size())), Optional.empty());
      case 1 -> new Step.Probe(points.get(random.nextInt(points.size())), Optional.empty());
      case 2 -> new Step.Inspect(subjects.get(random.nextInt(subjects.size())));
      default -> {
        List<Step.Work> work = menu.work(fast.state(), some);
        yield work.get(random.nextInt(work.size()));
      }
    };
  }

  private static void agreeOnWorth(long seed, Bank fast, SlowRanking slow, List<Hypothesis> some) {
    double[] posterior = posterior(fast, some);
    List<Diagnosis.Candidate> candidates = new ArrayList<>();
    for (int h = 0; h < posterior.length; h++) {
      candidates.add(
          new Diagnosis.Candidate(some.get(h), posterior[h], new Diagnosis.Lane(fast, h)));
    }
    NextStep steps =
        new NextStep(
            MODULE,
            LiveSet.whole(candidates),
            Instruments.USUAL,
            DiagnosisBench.TABLE,
            DiagnosisBench.SECONDS,
            List.of());
    for (StepChoice.Worth<Step> worth : steps.ranked()) {
      boolean touched =
          (worth.step() instanceof Step.Measure m && m.holding().isEmpty())
              || (worth.step() instanceof Step.Probe p && p.holding().isEmpty());
      if (touched || worth.step() instanceof Step.Inspect) {
        assertThat(worth.bits())
            .as("seed %d, %s", seed, worth.step())
            .isCloseTo(slow.information(posterior, worth.step()), within(1e-6));
      }
    }
  }

  @Test
  void posteriorAndWorthOfStepsAgreeOnAFewLogs() {
    for (long seed = 1; seed <= 12; seed++) {
      agree(seed);
    }
  }

  @Test
  @Tag("slow")
  void posteriorAndWorthOfStepsAgreeOnManyLogs() {
    for (long seed = 100; seed < 500; seed++) {
      agree(seed);
    }
  }
}
