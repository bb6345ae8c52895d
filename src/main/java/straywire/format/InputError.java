package straywire.format;

/**
 * A file a person wrote has a mistake; the message names file, line, what is wrong and the cure.
 */
public final class InputError extends RuntimeException {
  /**
   * A message that repeats what was written does not repeat a whole file; its end is kept, since
   * what would be right stands there.
   */
  private static final int MOST_LETTERS = 400;

  private static final int AT_THE_END = 100;

  /**
   * Puts file and line before the message.
   *
   * @param line from 1; 0 when the mistake has no line of its own
   */
  public InputError(String file, int line, String message) {
    super((line > 0 ? file + ":" + line : file) + ": " + shortened(message));
  }

  private static String shortened(String message) {
    return message.length() <= MOST_LETTERS
        ? message
        : message.substring(0, MOST_LETTERS - AT_THE_END)
            + " ... "
            + message.substring(message.length() - AT_THE_END);
  }
}
