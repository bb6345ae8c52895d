package straywire.parts;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import java.util.stream.Stream;
import straywire.format.InputError;
import straywire.format.PartSchema;
import straywire.format.TextFile;

/**
 * Part files of a user's own, beside those of another library. Each file is held against the schema
 * and worked through its function table before it is taken.
 */
public final class OwnParts implements PartLibrary {
  private final PartLibrary others;
  private final Map<String, PartFile> own = new TreeMap<>();

  private OwnParts(PartLibrary others) {
    this.others = others;
  }

  /**
   * Adds one part file, or all {@code .yaml} files of a directory, to {@code others}.
   *
   * @throws InputError when a file cannot be read, does not do what its table says, or describes a
   *     type that is there already
   */
  public static OwnParts beside(PartLibrary others, Path place) {
    OwnParts parts = new OwnParts(others);
    for (Path file : files(place)) {
      parts.add(file);
    }
    return parts;
  }

  private static List<Path> files(Path place) {
    if (!Files.isDirectory(place)) {
      return List.of(place);
    }
    try (Stream<Path> files = Files.list(place)) {
      return files.filter(f -> f.toString().endsWith(".yaml")).sorted().toList();
    } catch (IOException e) {
      throw new InputError(place.toString(), 0, "the directory cannot be read");
    }
  }

  private void add(Path path) {
    String file = path.toString();
    String text = TextFile.read(path);
    // First the reader, whose messages say more; the schema finds what is left.
    PartFile part = PartFile.read(file, text);
    PartSchema.check(file, text);
    String type = part.part().type();
    if (others.types().contains(type) || own.containsKey(type)) {
      throw new InputError(file, 0, type + " is there already; give this part another type name");
    }
    TableCheck.failures(part, false).stream()
        .findFirst()
        .ifPresent(
            failure -> {
              throw new InputError(file, failure.line(), failure.message());
            });
    own.put(type, part);
  }

  @Override
  public Optional<Part> part(String type) {
    PartFile file = own.get(type);
    return file == null ? others.part(type) : Optional.of(file.part());
  }

  @Override
  public Optional<PartNotes> notes(String type) {
    PartFile file = own.get(type);
    return file == null ? others.notes(type) : Optional.of(file.notes());
  }

  @Override
  public Optional<Family> family(String name) {
    return others.family(name);
  }

  @Override
  public List<String> familySources(String name) {
    return others.familySources(name);
  }

  @Override
  public List<String> types() {
    return Stream.concat(others.types().stream(), own.keySet().stream()).sorted().toList();
  }

  @Override
  public List<String> families() {
    return others.families();
  }
}
