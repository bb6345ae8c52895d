package straywire.format;

/**
 * An entry, or a name in it, that does not fit the module. The message is one line that says what
 * is wrong and what would be right; whoever knows the file and line puts them in front.
 */
public final class BadEntry extends RuntimeException {
  private static final long serialVersionUID = 1L;

  public BadEntry(String message) {
    super(message);
  }
}
