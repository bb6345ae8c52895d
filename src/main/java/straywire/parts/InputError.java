package straywire.parts;

/**
 * A file a person wrote has a mistake; the message names file, line, what is wrong and the cure.
 */
public final class InputError extends RuntimeException {
  /**
   * Puts file and line before the message.
   *
   * @param line from 1; 0 when the mistake has no line of its own
   */
  public InputError(String file, int line, String message) {
    super(line > 0 ? file + ":" + line + ": " + message : file + ": " + message);
  }
}
