package straywire.logic;

import java.util.ArrayList;
import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import straywire.format.InputError;

/** A word or sign of the logic notation. */
record Token(Kind kind, String text, int line) {
  enum Kind {
    NAME,
    NUMBER,
    SIGN,
    END
  }

  private static final Pattern PIECE =
      Pattern.compile(
          "\\s*(?:\"(?<quoted>[^\"]+)\"|(?<word>/?[A-Za-z0-9_][A-Za-z0-9_/']*)"
              + "|(?<sign><-|==|\\.\\.|[!&^|()\\[\\]?:+\\-<>=]))");

  boolean is(String sign) {
    return kind != Kind.END && text.equals(sign);
  }

  /** Splits one line; {@code --} starts a remark. */
  static List<Token> split(String file, int line, String text) {
    int remark = text.indexOf("--");
    String rest = (remark < 0 ? text : text.substring(0, remark)).stripTrailing();
    List<Token> tokens = new ArrayList<>();
    Matcher piece = PIECE.matcher(rest);
    int at = 0;
    while (at < rest.length()) {
      if (!piece.find(at) || piece.start() != at) {
        throw new InputError(
            file, line, "cannot read \"" + rest.substring(at).strip() + "\" in the logic");
      }
      tokens.add(token(piece, line));
      at = piece.end();
    }
    return tokens;
  }

  private static Token token(Matcher piece, int line) {
    if (piece.group("quoted") != null) {
      return new Token(Kind.NAME, piece.group("quoted"), line);
    }
    String word = piece.group("word");
    if (word == null) {
      return new Token(Kind.SIGN, piece.group("sign"), line);
    }
    boolean number = word.chars().allMatch(Character::isDigit);
    return new Token(number ? Kind.NUMBER : Kind.NAME, word, line);
  }
}
