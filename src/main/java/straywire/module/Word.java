package straywire.module;

import java.util.List;

/**
 * Controls, or lamps, read as one word.
 *
 * @param members labels, high bit first
 */
public record Word(String label, List<String> members) {
  public Word {
    members = List.copyOf(members);
  }
}
