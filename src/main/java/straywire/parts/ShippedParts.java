package straywire.parts;

import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.ConcurrentHashMap;
import straywire.format.TextFile;

/**
 * The parts and families that come with the program. A part's file is read when the part is first
 * asked for, since a module needs a handful of the many.
 */
public final class ShippedParts implements PartLibrary {
  private final List<String> types = resource("index.txt").lines().sorted().toList();
  private final Map<String, PartFile> read = new ConcurrentHashMap<>();
  private final Map<String, Family> families = new ConcurrentHashMap<>();

  @Override
  public Optional<Part> part(String type) {
    return file(type).map(PartFile::part);
  }

  @Override
  public Optional<PartNotes> notes(String type) {
    return file(type).map(PartFile::notes);
  }

  @Override
  public Optional<Family> family(String name) {
    return Optional.ofNullable(allFamilies().get(name));
  }

  @Override
  public List<String> families() {
    return allFamilies().keySet().stream().sorted().toList();
  }

  @Override
  public List<String> familySources(String name) {
    return Families.sources("families.yaml", resource("families.yaml"))
        .getOrDefault(name, List.of());
  }

  private Map<String, Family> allFamilies() {
    if (families.isEmpty()) {
      families.putAll(Families.read("families.yaml", resource("families.yaml")));
    }
    return families;
  }

  @Override
  public List<String> types() {
    return types;
  }

  Optional<PartFile> file(String type) {
    if (!types.contains(type)) {
      return Optional.empty();
    }
    return Optional.of(
        read.computeIfAbsent(
            type, t -> PartFile.read("parts/" + t + ".yaml", resource(t + ".yaml"))));
  }

  static String resource(String name) {
    return TextFile.shipped("/parts/" + name);
  }
}
