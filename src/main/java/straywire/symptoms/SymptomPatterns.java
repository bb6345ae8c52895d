package straywire.symptoms;

import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import java.util.SplittableRandom;

/** Words to write, so that what becomes of them tells bits, halves, order and places apart. */
final class SymptomPatterns {
  private static final int TRIES = 400;

  private SymptomPatterns() {}

  /**
   * At least {@code least} words, more when the bits need them to be told apart. Over the list each
   * bit takes a course of its own, not the opposite of another's; words differ from each other also
   * when turned round or complemented, and in each half. As far as the width allows; the same words
   * at every call.
   *
   * @param width bits of a word, 1 to 64
   * @param least words wanted
   * @param lasting the last so many are what stays in the places written
   */
  static List<Long> words(int width, int least, int lasting) {
    int needed = Integer.SIZE - Integer.numberOfLeadingZeros(width) + 1;
    int count = Math.max(Math.max(least, lasting), needed);
    SplittableRandom random = new SplittableRandom(width);
    List<Long> best = List.of();
    int fewest = Integer.MAX_VALUE;
    for (int i = 0; i < TRIES && fewest > 0; i++) {
      List<Long> words = new ArrayList<>();
      for (int w = 0; w < count; w++) {
        words.add(random.nextLong() & SymptomRoles.ones(width));
      }
      int flaws = flaws(width, words);
      if (flaws < fewest) {
        fewest = flaws;
        best = words;
      }
    }
    return best;
  }

  /** How many ways there are to take one bit, word or half for another. */
  static int flaws(int width, List<Long> words) {
    Set<Long> courses = new HashSet<>();
    long all = SymptomRoles.ones(words.size());
    courses.add(0L);
    courses.add(all);
    int flaws = 0;
    for (int bit = 0; bit < width; bit++) {
      long course = 0;
      for (long word : words) {
        course = course << 1 | (word >>> bit & 1);
      }
      if (courses.contains(course)) {
        flaws++;
      }
      courses.add(course);
      courses.add(~course & all);
    }
    int half = width / 2;
    for (int i = 0; i < words.size(); i++) {
      long word = words.get(i);
      if (word == reversed(word, width)) {
        flaws++;
      }
      for (int j = 0; j < i; j++) {
        long other = words.get(j);
        long different = word ^ other;
        if (different == 0
            || different == SymptomRoles.ones(width)
            || word == reversed(other, width)
            || word == (~reversed(other, width) & SymptomRoles.ones(width))
            || (different & SymptomRoles.ones(half)) == 0
            || different >>> half == 0) {
          flaws++;
        }
      }
    }
    return flaws;
  }

  /** The lowest {@code width} bits in reverse order, 1 to 64. */
  static long reversed(long word, int width) {
    return Long.reverse(word) >>> (Long.SIZE - width);
  }
}
