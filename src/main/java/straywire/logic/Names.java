package straywire.logic;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.regex.Pattern;

/** Rows of names written short: {@code A3..A0}, {@code 1Q..8Q}, {@code QA..QH}. */
public final class Names {
  private static final Pattern SPACES = Pattern.compile("\\s+");

  private Names() {}

  /** What stands between spaces. */
  public static List<String> words(String text) {
    return SPACES.splitAsStream(text.strip()).toList();
  }

  /** Both ends and all names between, or nothing when the ends do not span a row. */
  static Optional<List<String>> between(String first, String last) {
    int head = commonHead(first, last);
    int tail = commonTail(first, last, head);
    String one = first.substring(head, first.length() - tail);
    String two = last.substring(head, last.length() - tail);
    String before = first.substring(0, head);
    String after = first.substring(first.length() - tail);
    if (isNumber(one) && isNumber(two)) {
      return Optional.of(count(before, after, Integer.parseInt(one), Integer.parseInt(two), false));
    }
    if (isLetter(one) && isLetter(two)) {
      return Optional.of(count(before, after, one.charAt(0), two.charAt(0), true));
    }
    return Optional.empty();
  }

  private static List<String> count(String before, String after, int from, int to, boolean letter) {
    List<String> names = new ArrayList<>();
    int step = from <= to ? 1 : -1;
    for (int i = from; i != to + step; i += step) {
      names.add(before + (letter ? String.valueOf((char) i) : String.valueOf(i)) + after);
    }
    return names;
  }

  /** Length of the common start, not cutting a number in two. */
  private static int commonHead(String a, String b) {
    int most = Math.min(a.length(), b.length());
    int n = 0;
    while (n < most && a.charAt(n) == b.charAt(n)) {
      n++;
    }
    while (n > 0 && Character.isDigit(a.charAt(n - 1))) {
      n--;
    }
    return n;
  }

  private static int commonTail(String a, String b, int head) {
    int most = Math.min(a.length(), b.length()) - head;
    int n = 0;
    while (n < most && a.charAt(a.length() - 1 - n) == b.charAt(b.length() - 1 - n)) {
      n++;
    }
    while (n > 0 && Character.isDigit(a.charAt(a.length() - n))) {
      n--;
    }
    return n;
  }

  private static boolean isNumber(String s) {
    return !s.isEmpty() && s.length() < 6 && s.chars().allMatch(Character::isDigit);
  }

  private static boolean isLetter(String s) {
    return s.length() == 1 && Character.isLetter(s.charAt(0));
  }
}
