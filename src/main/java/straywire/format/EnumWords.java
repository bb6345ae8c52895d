package straywire.format;

import java.util.Arrays;
import java.util.List;
import java.util.Locale;

/** Names of choices as they are written: in small letters, with hyphens. */
public final class EnumWords {
  private EnumWords() {}

  public static String word(Enum<?> value) {
    return value.name().toLowerCase(Locale.ROOT).replace('_', '-');
  }

  public static List<String> words(Enum<?>[] values) {
    return Arrays.stream(values).map(EnumWords::word).toList();
  }

  /** The choice with this word, which must be one of theirs. */
  public static <E extends Enum<E>> E of(Class<E> type, String word) {
    return Enum.valueOf(type, word.toUpperCase(Locale.ROOT).replace('-', '_'));
  }
}
