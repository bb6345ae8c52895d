package straywire.cli;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.Stream;
import straywire.format.InputError;
import straywire.format.Nearest;
import straywire.module.LogFile;
import straywire.module.Module;
import straywire.module.ModuleFile;
import straywire.parts.OwnParts;
import straywire.parts.PartLibrary;
import straywire.parts.ShippedParts;

/** Where the shipped case book is, and what is the user's own. */
final class Home {
  private static final String MODULE_FILE = "module.yaml";

  private final Path shipped;
  private final Path own;
  private final Path sittings;
  private final Path ownParts;

  Home(Path home, Path own, Path sittings, Path ownParts) {
    this.shipped = home.resolve("cases");
    this.own = own;
    this.sittings = sittings;
    this.ownParts = ownParts;
  }

  /** What a person types to run this program, as the launcher was called. */
  static String command() {
    return System.getProperty("straywire.command", "straywire");
  }

  /** As the launcher and the environment say. */
  static Home usual() {
    return new Home(
        Path.of(System.getProperty("straywire.home", ".")),
        users("STRAYWIRE_CASES", "cases"),
        users("STRAYWIRE_SITTINGS", "sittings"),
        users("STRAYWIRE_PARTS", "parts"));
  }

  private static Path users(String variable, String folder) {
    String named = System.getenv().getOrDefault(variable, "");
    return named.isEmpty() ? userHome().resolve(".straywire").resolve(folder) : Path.of(named);
  }

  /** As the shell has it; the virtual machine asks the system's list of users instead. */
  private static Path userHome() {
    String home = System.getenv().getOrDefault("HOME", "");
    return Path.of(home.isEmpty() ? System.getProperty("user.home") : home);
  }

  /** The parts that ship, and beside them the user's own where there are any. */
  PartLibrary parts() {
    PartLibrary shipped = new ShippedParts();
    return Files.exists(ownParts) ? OwnParts.beside(shipped, ownParts) : shipped;
  }

  /** Where journals of sittings go that name none. */
  Path sittings() {
    return sittings;
  }

  Path shippedCases() {
    return shipped;
  }

  Path ownCases() {
    return own;
  }

  /**
   * Reads a module.
   *
   * @param nameOrFile name of a folder in the case book, shipped or own, or a module file
   * @throws InputError when there is none
   */
  Module module(String nameOrFile) {
    return read(moduleFile(nameOrFile));
  }

  /** Reads a module file; a shipped one was held against its schema by the build. */
  Module read(Path file) {
    return file.startsWith(shipped)
        ? ModuleFile.readShipped(file, new ShippedParts())
        : ModuleFile.read(file, parts());
  }

  /**
   * The module that a log is about.
   *
   * @param named name or file of the module; empty for the module file beside the log, or else the
   *     module of the name that the log gives
   */
  Module moduleOf(Path log, String named) {
    return read(moduleFileOf(log, named));
  }

  /** The file of {@link #moduleOf}. */
  Path moduleFileOf(Path log, String named) {
    if (!named.isEmpty()) {
      return moduleFile(named);
    }
    String name = LogFile.header(log).module();
    Path beside = log.resolveSibling(MODULE_FILE);
    if (Files.isRegularFile(beside)) {
      return beside;
    }
    if (!modules().contains(name)) {
      throw new InputError(
          log.toString(),
          1,
          "log: there is no module.yaml beside it, and no module of the case book is called "
              + name
              + Nearest.hint(name, modules()));
    }
    return moduleFile(name);
  }

  Path moduleFile(String nameOrFile) {
    Path given = Path.of(nameOrFile);
    if (Files.isRegularFile(given)) {
      return given;
    }
    Path inside = given.resolve(MODULE_FILE);
    if (Files.isRegularFile(inside) && nameOrFile.contains("/")) {
      return inside;
    }
    for (Path cases : List.of(shipped, own)) {
      Path file = cases.resolve(nameOrFile).resolve(MODULE_FILE);
      if (Files.isRegularFile(file)) {
        return file;
      }
    }
    if (Files.isRegularFile(inside)) {
      return inside;
    }
    throw new InputError(
        nameOrFile,
        0,
        "neither a module file nor a module of the case book"
            + Nearest.hint(nameOrFile, modules()));
  }

  /** Names of all modules in both case books, sorted. */
  List<String> modules() {
    List<String> names = new ArrayList<>();
    for (Path cases : List.of(shipped, own)) {
      if (Files.isDirectory(cases)) {
        try (Stream<Path> folders = Files.list(cases)) {
          folders
              .filter(f -> Files.isRegularFile(f.resolve(MODULE_FILE)))
              .forEach(f -> names.add(f.getFileName().toString()));
        } catch (IOException e) {
          throw new UncheckedIOException(e);
        }
      }
    }
    return names.stream().distinct().sorted().toList();
  }
}
