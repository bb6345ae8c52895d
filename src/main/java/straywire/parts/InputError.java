package straywire.parts;

/** Something wrong in a file that a person wrote: one line that says where and what. */
public final class InputError extends RuntimeException {
  private static final long serialVersionUID = 1L;

  /**
   * @param line from 1; 0 when no single line is to blame
   */
  public InputError(String file, int line, String message) {
    super(line > 0 ? file + ":" + line + ": " + message : file + ": " + message);
  }
}
