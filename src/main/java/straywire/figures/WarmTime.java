package straywire.figures;

import java.lang.management.ManagementFactory;
import java.lang.management.MemoryMXBean;
import java.lang.ref.Reference;
import java.util.ArrayList;
import java.util.List;
import java.util.function.Supplier;
import straywire.module.BenchLog;
import straywire.module.Entry;

/** How long an answer takes in a program that has been running for a while, and what it holds. */
public final class WarmTime {
  /** Takes one entry and works out all that is shown after it. */
  public interface Answering {
    void answer(Entry entry);
  }

  private final Supplier<Answering> fresh;
  private final List<Double> cpu = new ArrayList<>();
  private final List<Double> wall = new ArrayList<>();
  private long mostHeld;

  /**
   * For one module.
   *
   * @param fresh a sitting in which nothing was entered yet
   */
  public WarmTime(Supplier<Answering> fresh) {
    this.fresh = fresh;
  }

  /** Plays a log entry by entry, with an answer after each; counts nothing. */
  public void warmUp(BenchLog log) {
    play(log, new ArrayList<>(), new ArrayList<>());
  }

  /** The same, measured; takes stock of the memory held at the end. */
  public void measure(BenchLog log) {
    Answering sitting = play(log, cpu, wall);
    try {
      MemoryMXBean memory = ManagementFactory.getMemoryMXBean();
      memory.gc();
      mostHeld = Math.max(mostHeld, memory.getHeapMemoryUsage().getUsed());
    } finally {
      // Must still be held when the stock is taken.
      Reference.reachabilityFence(sitting);
    }
  }

  private Answering play(BenchLog log, List<Double> cpuOf, List<Double> wallOf) {
    Answering sitting = fresh.get();
    for (BenchLog.Line line : log.standing()) {
      double start = CpuClock.seconds();
      long wallStart = System.nanoTime();
      sitting.answer(line.entry());
      cpuOf.add(CpuClock.seconds() - start);
      wallOf.add((System.nanoTime() - wallStart) / 1e9);
    }
    return sitting;
  }

  /** From an entry to the whole answer, seconds of processor time. */
  public Quantiles processorSeconds() {
    return Quantiles.of(cpu);
  }

  /** The same by the clock on the wall, seconds; other programs count in. */
  public Quantiles wallSeconds() {
    return Quantiles.of(wall);
  }

  /** Most heap held after a sitting, garbage taken out, bytes. */
  public long heldBytes() {
    return mostHeld;
  }
}
