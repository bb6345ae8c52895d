package straywire.prove;

import java.lang.management.ManagementFactory;

/** Processor time of this thread: what work costs, whatever else the machine does. */
final class CpuClock {
  private CpuClock() {}

  /** Seconds, from some start. */
  static double seconds() {
    return ManagementFactory.getThreadMXBean().getCurrentThreadCpuTime() / 1e9;
  }
}
