package straywire.logic;

/**
 * One pin of a part type.
 *
 * @param name as on the data sheet; a leading slash marks an active-low pin
 */
public record PinSpec(int number, String name, PinKind kind) {
  public boolean activeLow() {
    return name.startsWith("/");
  }
}
