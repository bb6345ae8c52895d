package straywire.module;

/**
 * A resistor from its terminal to a rail. What nothing else drives it pulls to that rail's level.
 *
 * @param to rail segment of its far leg
 * @param ohms from 1
 */
public record Resistor(String label, String to, int ohms) {
  /** Where its leg is that is not at the rail. */
  public End end() {
    return new End(End.Kind.RESISTOR, label, 0);
  }
}
