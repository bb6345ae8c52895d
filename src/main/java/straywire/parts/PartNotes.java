package straywire.parts;

import java.util.List;

/**
 * What a person wants to know about a part beyond its pins.
 *
 * @param group the kind of function; {@link PartGroup#OTHER} where the file names none
 * @param openInput what a missing wire at an input does
 * @param mistakes the classic ways of going wrong with this part, one sentence each
 * @param sources where pins and function were read; {@code from memory} where they were not
 * @param disagreements where makers or drawings differ
 * @param logic the function in the part notation, as written
 * @param table the function table, as written
 */
public record PartNotes(
    PartGroup group,
    String openInput,
    List<String> mistakes,
    List<String> sources,
    List<String> disagreements,
    String logic,
    String table) {
  public PartNotes {
    mistakes = List.copyOf(mistakes);
    sources = List.copyOf(sources);
    disagreements = List.copyOf(disagreements);
  }
}
