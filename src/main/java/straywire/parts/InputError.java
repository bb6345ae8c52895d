package straywire.parts;

/** Something a person wrote cannot be read; the message is one line that says where and why. */
public final class InputError extends RuntimeException {
  private static final long serialVersionUID = 1L;

  /**
   * @param line counted from 1; 0 when the whole file is meant
   */
  public InputError(String file, int line, String message) {
    super(line > 0 ? file + ":" + line + ": " + message : file + ": " + message);
  }
}
