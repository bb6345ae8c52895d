package straywire.parts;

import java.util.List;
import java.util.Optional;

/** All part types and families known. */
public interface PartLibrary {
  Optional<Part> part(String type);

  Optional<Family> family(String name);

  /** Every part type's trade number, sorted. */
  List<String> types();

  /** What is worth knowing about a part type, if this library keeps it. */
  default Optional<PartNotes> notes(String type) {
    return Optional.empty();
  }

  /** Where a family's figures were read; empty for an unknown family. */
  default List<String> familySources(String name) {
    return List.of();
  }

  /** Every family's name, sorted; for suggestions only. */
  default List<String> families() {
    return List.of();
  }
}
