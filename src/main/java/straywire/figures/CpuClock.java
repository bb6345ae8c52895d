package straywire.figures;

import com.sun.management.OperatingSystemMXBean;
import java.lang.management.ManagementFactory;

/**
 * Processor time of the whole program: what work costs, whatever else the machine does. Lane groups
 * settle on several threads, so that the time of one thread would tell too little; the compiler and
 * the garbage collector count in.
 */
final class CpuClock {
  private static final OperatingSystemMXBean MACHINE =
      ManagementFactory.getPlatformMXBean(OperatingSystemMXBean.class);

  private CpuClock() {}

  /** Seconds, from some start. */
  static double seconds() {
    return MACHINE.getProcessCpuTime() / 1e9;
  }
}
