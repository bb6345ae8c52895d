package straywire.cli;

import java.nio.charset.Charset;
import java.nio.charset.StandardCharsets;

/** How lamps are drawn: round ones where the terminal can, letters elsewhere. */
enum Glyphs {
  ROUND("●", "○", "◐", "◌", "·", "?", "∪"),
  LETTERS("#", ".", "+", "~", "-", "?", "u");

  final String lit;
  final String dark;
  final String dim;
  final String flickering;
  final String notLooked;
  final String either;

  /** The notch of a chip. */
  final String notch;

  Glyphs(
      String lit,
      String dark,
      String dim,
      String flickering,
      String notLooked,
      String either,
      String notch) {
    this.lit = lit;
    this.dark = dark;
    this.dim = dim;
    this.flickering = flickering;
    this.notLooked = notLooked;
    this.either = either;
    this.notch = notch;
  }

  static Glyphs of(Charset charset) {
    return charset.equals(StandardCharsets.UTF_8) ? ROUND : LETTERS;
  }

  /** The picture of one character of a lamp word. */
  String lamp(char mark) {
    return switch (mark) {
      case '1' -> lit;
      case '0' -> dark;
      case 'd' -> dim;
      case 'f' -> flickering;
      case '-' -> notLooked;
      default -> either;
    };
  }
}
