package straywire.module;

import java.util.Arrays;
import java.util.Optional;
import straywire.format.EnumWords;

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

  /** The word a person writes, such as {@code not-looked}. */
  public String word() {
    return EnumWords.word(this);
  }

  static Optional<LampState> ofMark(char mark) {
    return Arrays.stream(values()).filter(s -> s.mark == mark).findFirst();
  }

  static Optional<LampState> ofWord(String word) {
    return Arrays.stream(values()).filter(s -> s.word().equals(word)).findFirst();
  }
}
