package straywire.module;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import straywire.format.BadEntry;

/** A typed line, taken word by word. */
final class Typed {
  private final String line;
  private int at;

  Typed(String line) {
    this.line = line.strip();
  }

  boolean more() {
    return at < line.length();
  }

  /** The next word, which stays; empty at the end. */
  String peek() {
    int end = at;
    while (end < line.length() && !Character.isWhitespace(line.charAt(end))) {
      end++;
    }
    return line.substring(at, end);
  }

  String next(String expected) {
    if (!more()) {
      throw new BadEntry("missing: " + expected);
    }
    String word = peek();
    at += word.length();
    while (more() && Character.isWhitespace(line.charAt(at))) {
      at++;
    }
    return word;
  }

  /** Takes the next word when it is this one. */
  boolean take(String word) {
    if (more() && peek().equals(word)) {
      next(word);
      return true;
    }
    return false;
  }

  String oneOf(List<String> choices) {
    String expected = "one of " + String.join(", ", choices);
    String word = next(expected).toLowerCase(Locale.ROOT);
    if (!choices.contains(word)) {
      throw new BadEntry("expected " + expected + ", got " + word);
    }
    return word;
  }

  int number() {
    String word = next("the number of an entry");
    if (!word.matches("[1-9][0-9]{0,8}")) {
      throw new BadEntry("expected the number of an entry, got " + word);
    }
    return Integer.parseInt(word);
  }

  /** All words left, at least one. */
  List<String> all(String expected) {
    List<String> words = new ArrayList<>();
    do {
      words.add(next(expected));
    } while (more());
    return words;
  }

  /** All that is left, as typed. */
  String rest() {
    String rest = line.substring(at);
    at = line.length();
    return rest;
  }

  void end() {
    if (more()) {
      throw new BadEntry("nothing goes after that, got " + rest());
    }
  }
}
