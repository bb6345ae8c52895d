package straywire.module;

import java.util.List;

/** What a control closes in one of its two positions: to a rail, or from line to line. */
public sealed interface ControlContact permits Contact, Pass {
  /** What a fault of it is named by. */
  String label();

  /** Label of the control. */
  String control();

  /** The position in which it is closed. */
  boolean closedWhenHigh();

  /** The terminals at which it has its say. */
  List<End> ends();
}
