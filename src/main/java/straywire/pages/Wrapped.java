package straywire.pages;

import java.util.ArrayList;
import java.util.List;

/** Breaks a text into lines at its spaces. */
public final class Wrapped {
  private Wrapped() {}

  /**
   * Lines of at most {@code columns} letters, unless one word is longer.
   *
   * @param start of the first line
   * @param indent of those below it
   */
  public static List<String> lines(String start, String indent, String text, int columns) {
    List<String> lines = new ArrayList<>();
    StringBuilder line = new StringBuilder(start);
    boolean bare = true;
    for (String word : text.split(" ", -1)) {
      if (line.length() + word.length() > columns && !bare) {
        lines.add(line.toString().stripTrailing());
        line = new StringBuilder(indent);
      }
      line.append(word).append(' ');
      bare = false;
    }
    lines.add(line.toString().stripTrailing());
    return lines;
  }
}
