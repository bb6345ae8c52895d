package straywire.cli;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import picocli.CommandLine.Option;
import straywire.advice.RuleBase;
import straywire.casebook.Workbench;
import straywire.faults.Priors;
import straywire.faults.PriorsFile;
import straywire.format.InputError;
import straywire.module.Module;
import straywire.observe.RankingNumbers;
import straywire.observe.StepSeconds;

/** The tables that a user may copy and change. */
final class TableOptions {
  private static final List<String> NAMES =
      List.of("priors.yaml", "seconds.yaml", "ranking.yaml", "words.yaml");

  @Option(
      names = "--priors",
      paramLabel = "FILE",
      description = "your copy of priors.yaml: how often each kind of fault is the cause")
  private Optional<Path> priors = Optional.empty();

  @Option(
      names = "--seconds",
      paramLabel = "FILE",
      description = "your copy of seconds.yaml: how long each kind of step takes")
  private Optional<Path> seconds = Optional.empty();

  @Option(
      names = "--tables",
      paramLabel = "FOLDER",
      description =
          "a folder with your copies of priors.yaml, seconds.yaml, ranking.yaml and words.yaml, any"
              + " of them")
  private Optional<Path> tables = Optional.empty();

  /** The file given by itself, or else the one of that name in the folder of tables, if it is. */
  private Optional<Path> copy(Optional<Path> alone, String name) {
    return alone.or(() -> tables.map(t -> t.resolve(name)).filter(Files::exists));
  }

  /**
   * Everything prepared for a module, with these tables.
   *
   * @param rules made before the module is read: they load meanwhile
   */
  Workbench workbench(RuleBase rules, Module module) {
    tables.ifPresent(TableOptions::check);
    Priors frequencies =
        copy(priors, "priors.yaml").map(PriorsFile::over).orElseGet(PriorsFile::shipped);
    StepSeconds times =
        copy(seconds, "seconds.yaml").map(StepSeconds::over).orElseGet(StepSeconds::shipped);
    RankingNumbers numbers =
        copy(Optional.empty(), "ranking.yaml")
            .map(RankingNumbers::over)
            .orElseGet(RankingNumbers::shipped);
    return new Workbench(
        module, rules, frequencies, times, numbers, copy(Optional.empty(), "words.yaml"));
  }

  /** A misspelt file would go unnoticed: every YAML file of the folder must be a table. */
  private static void check(Path folder) {
    if (!Files.isDirectory(folder)) {
      throw new InputError(folder.toString(), 0, "there is no such folder");
    }
    try (Stream<Path> files = Files.list(folder)) {
      files
          .map(file -> file.getFileName().toString())
          .filter(name -> name.endsWith(".yaml") && !NAMES.contains(name))
          .sorted()
          .findFirst()
          .ifPresent(
              name -> {
                throw new InputError(
                    folder.resolve(name).toString(),
                    0,
                    "no table is called so; there are " + String.join(", ", NAMES));
              });
    } catch (IOException e) {
      throw new InputError(folder.toString(), 0, "the folder cannot be read");
    }
  }
}
