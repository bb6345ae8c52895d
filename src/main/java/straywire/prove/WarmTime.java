package straywire.prove;

import java.lang.management.ManagementFactory;
import java.lang.management.MemoryMXBean;
import java.lang.ref.Reference;
import java.util.ArrayList;
import java.util.List;
import java.util.function.Supplier;
import straywire.diagnosis.Diagnosis;
import straywire.diagnosis.Instruments;
import straywire.diagnosis.Outlooks;
import straywire.module.BenchLog;

/** How long an answer takes in a program that has been running for a while, and what it holds. */
public final class WarmTime {
  private final Supplier<Diagnosis> fresh;
  private final Outlooks outlooks;
  private final Instruments instruments;
  private final List<Double> cpu = new ArrayList<>();
  private final List<Double> wall = new ArrayList<>();
  private long mostHeld;

  /**
   * For one module.
   *
   * @param fresh a diagnosis of which nothing was seen yet
   */
  public WarmTime(Supplier<Diagnosis> fresh, Outlooks outlooks, Instruments instruments) {
    this.fresh = fresh;
    this.outlooks = outlooks;
    this.instruments = instruments;
  }

  /** Plays a log entry by entry, with a ranking and a next step after each; counts nothing. */
  public void warmUp(BenchLog log) {
    play(log, new ArrayList<>(), new ArrayList<>());
  }

  /** The same, measured; takes stock of the memory held at the end. */
  public void measure(BenchLog log) {
    Diagnosis diagnosis = play(log, cpu, wall);
    try {
      MemoryMXBean memory = ManagementFactory.getMemoryMXBean();
      memory.gc();
      mostHeld = Math.max(mostHeld, memory.getHeapMemoryUsage().getUsed());
    } finally {
      // Must still be held when the stock is taken.
      Reference.reachabilityFence(diagnosis);
    }
  }

  private Diagnosis play(BenchLog log, List<Double> cpuOf, List<Double> wallOf) {
    Diagnosis diagnosis = fresh.get();
    for (BenchLog.Line line : log.standing()) {
      double start = CpuClock.seconds();
      long wallStart = System.nanoTime();
      diagnosis.accept(line.entry(), h -> 0);
      outlooks.of(diagnosis, instruments);
      cpuOf.add(CpuClock.seconds() - start);
      wallOf.add((System.nanoTime() - wallStart) / 1e9);
    }
    return diagnosis;
  }

  /** From an entry to ranking and next step, seconds of processor time. */
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
