package straywire.parts;

import java.util.List;
import java.util.Optional;

/** All part types and families known. */
public interface PartLibrary {
  Optional<Part> part(String type);

  Optional<Family> family(String name);

  /** Every part type's trade number, sorted. */
  List<String> types();

  /** Every family's name, sorted; for suggestions only. */
  default List<String> families() {
    return List.of();
  }
}
