package straywire.module;

import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;

/**
 * A switch or button the hand moves. It closes to a rail segment against a pull resistor; a
 * change-over closes another contact in its other position, or passes on one of two lines.
 *
 * @param closesTo rail segment its contact closes to; empty for a change-over between lines
 * @param pullTo rail segment its resistor goes to; empty when it has none
 * @param pullOhms ohms; 0 when it has none
 * @param restLevel level at rest for a button (pressed is the opposite); position at power-up for a
 *     switch. Level true is high.
 * @param changeOver what the other position does; empty for a single contact
 */
public record Control(
    String label,
    Kind kind,
    String title,
    String closesTo,
    String pullTo,
    int pullOhms,
    boolean restLevel,
    Optional<ChangeOver> changeOver) {
  /** How the hand works it. */
  public enum Kind {
    SWITCH,
    BUTTON
  }

  /** A control with a single contact. */
  public Control(
      String label,
      Kind kind,
      String title,
      String closesTo,
      String pullTo,
      int pullOhms,
      boolean restLevel) {
    this(label, kind, title, closesTo, pullTo, pullOhms, restLevel, Optional.empty());
  }

  /**
   * Where its wire ends; that of its first throw for a change-over with two terminals on a rail,
   * that of its common for one between lines.
   */
  public End terminal() {
    return new End(End.Kind.CONTROL, label, 0);
  }

  /** Every place where a wire of it ends. */
  public List<End> terminals() {
    return Stream.concat(
            Stream.of(terminal()), changeOver.stream().flatMap(other -> other.terminals().stream()))
        .toList();
  }

  /** Its contacts between lines: two, or none. */
  public List<Pass> passes() {
    return changeOver.map(other -> other.passes(this)).orElse(List.of());
  }
}
