package straywire.pages;

import java.util.List;

/** Pieces of a Markdown page. */
final class Markdown {
  private static final String SPECIAL = "\\`*_[]<>|";

  private Markdown() {}

  /** Text whose signs mean nothing but themselves. */
  static String plain(String text) {
    StringBuilder out = new StringBuilder();
    for (int i = 0; i < text.length(); i++) {
      char letter = text.charAt(i);
      out.append(SPECIAL.indexOf(letter) >= 0 ? "\\" : "").append(letter);
    }
    return out.toString();
  }

  /** A list, or one sentence where there is nothing to list. */
  static String list(List<String> items, String nothing) {
    if (items.isEmpty()) {
      return nothing + "\n";
    }
    StringBuilder out = new StringBuilder();
    items.forEach(item -> out.append("- ").append(plain(item)).append('\n'));
    return out.toString();
  }

  static String row(String... cells) {
    return "| " + String.join(" | ", cells) + " |\n";
  }
}
