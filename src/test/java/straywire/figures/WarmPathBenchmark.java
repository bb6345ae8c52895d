package straywire.figures;

import java.util.List;
import java.util.Map;
import java.util.concurrent.TimeUnit;
import org.openjdk.jmh.annotations.Benchmark;
import org.openjdk.jmh.annotations.BenchmarkMode;
import org.openjdk.jmh.annotations.Fork;
import org.openjdk.jmh.annotations.Measurement;
import org.openjdk.jmh.annotations.Mode;
import org.openjdk.jmh.annotations.OutputTimeUnit;
import org.openjdk.jmh.annotations.Warmup;
import straywire.faults.Suggestion;
import straywire.observe.Instruments;
import straywire.sim.BoardState;
import straywire.steps.Outlook;

/** The three pieces of work that an answer is made of. Run as docs/figures.md says. */
@BenchmarkMode(Mode.AverageTime)
@OutputTimeUnit(TimeUnit.MILLISECONDS)
@Warmup(iterations = 3, time = 2)
@Measurement(iterations = 5, time = 2)
@Fork(1)
public class WarmPathBenchmark {

  /** One control moved, every lane of every hypothesis settled. */
  @Benchmark
  public BoardState settleAllLanes(BeatMemoryState on) {
    on.state = on.boards.move(on.state, Map.of(on.control, !on.state.controls().get(on.control)));
    return on.state;
  }

  /** Ranking, groups and next step where something has just been seen to differ. */
  @Benchmark
  public Outlook outlook(BeatMemoryState on) {
    return on.workbench.outlooks().of(on.opened, Instruments.USUAL);
  }

  /** All that the rules propose for the module. */
  @Benchmark
  public List<Suggestion> propose(BeatMemoryState on) {
    return on.rules.propose(on.module);
  }
}
