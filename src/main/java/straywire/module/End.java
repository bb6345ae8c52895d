package straywire.module;

/**
 * Where a jumper can end: a pin of a part, the terminal of a control or of a change-over's other
 * throw, a lamp, a resistor, a rail segment or a port line. Written {@code U1.3} for a pin (or
 * {@code U1./WE} in a file, resolved on load), {@code R1.2} for an end of a resistor between two
 * lines, else by its label alone.
 *
 * @param label part, control, throw, lamp, resistor, rail segment or port line
 * @param pin pin number for a pin, 1 or 2 for a resistor between two lines, 0 otherwise
 */
public record End(Kind kind, String label, int pin) implements Comparable<End> {
  /** What an end belongs to. */
  public enum Kind {
    PIN,
    CONTROL,
    THROW,
    LAMP,
    RESISTOR,
    RAIL,
    PORT
  }

  public static End pin(String part, int number) {
    return new End(Kind.PIN, part, number);
  }

  @Override
  public int compareTo(End other) {
    int byKind = kind.compareTo(other.kind);
    if (byKind != 0) {
      return byKind;
    }
    int byLabel = label.compareTo(other.label);
    return byLabel != 0 ? byLabel : Integer.compare(pin, other.pin);
  }

  @Override
  public String toString() {
    return pin > 0 ? label + "." + pin : label;
  }
}
