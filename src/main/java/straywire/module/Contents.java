package straywire.module;

import java.util.Collections;
import java.util.OptionalLong;
import java.util.SortedMap;
import java.util.TreeMap;

/**
 * What a memory was programmed with before it came to the board.
 *
 * @param words by address; an address that is not there was not said
 */
public record Contents(SortedMap<Integer, Long> words) {
  /** Nothing said: not programmed, or written by the module itself. */
  public static final Contents UNKNOWN = new Contents(new TreeMap<>());

  public Contents {
    words = Collections.unmodifiableSortedMap(new TreeMap<>(words));
  }

  public boolean known() {
    return !words.isEmpty();
  }

  /** The word at an address. */
  public OptionalLong at(int address) {
    Long word = words.get(address);
    return word == null ? OptionalLong.empty() : OptionalLong.of(word);
  }
}
