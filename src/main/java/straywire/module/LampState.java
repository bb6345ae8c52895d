package straywire.module;

/** What an eye says of a lamp; written as one character of a lamp word. */
public enum LampState {
  LIT('1'),
  DARK('0'),
  DIM('d'),
  FLICKERING('f'),
  NOT_LOOKED('-');

  private final char mark;

  LampState(char mark) {
    this.mark = mark;
  }

  public char mark() {
    return mark;
  }
}
