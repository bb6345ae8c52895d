package straywire.casebook;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Function;
import java.util.function.UnaryOperator;
import java.util.stream.Stream;
import straywire.advice.RuleBase;
import straywire.module.BenchLog;
import straywire.module.LogFile;
import straywire.module.Module;
import straywire.review.Amounts;

/** A folder of cases, each beside its module, replayed one after the other. */
public final class CaseBook {
  private static final String CASE_ENDING = ".jsonl";

  private final Path folder;
  private final boolean shipped;
  private final UnaryOperator<Path> moduleFiles;
  private final Function<Path, Module> modules;
  private final RuleBase rules;
  private final Map<Path, Workbench> workbenches = new HashMap<>();

  /**
   * The book of one folder.
   *
   * @param shipped true for the shipped book, whose files the build has held against the schemas
   * @param moduleFiles finds the module file of a case file
   * @param modules reads a module file
   */
  public CaseBook(
      Path folder,
      boolean shipped,
      UnaryOperator<Path> moduleFiles,
      Function<Path, Module> modules,
      RuleBase rules) {
    this.folder = folder;
    this.shipped = shipped;
    this.moduleFiles = moduleFiles;
    this.modules = modules;
    this.rules = rules;
  }

  /** Case files, sorted by path; none when the folder is not there. */
  public List<Path> files() {
    if (!Files.isDirectory(folder)) {
      return List.of();
    }
    try (Stream<Path> all = Files.walk(folder)) {
      return all.filter(f -> f.getFileName().toString().endsWith(CASE_ENDING)).sorted().toList();
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  /**
   * Replays one case.
   *
   * @throws straywire.format.InputError when the file or its module has a mistake
   */
  public CaseScore run(Path file) {
    Workbench workbench =
        workbenches.computeIfAbsent(
            moduleFiles.apply(file), m -> new Workbench(modules.apply(m), rules));
    BenchLog log = LogFile.readCase(file, workbench.module(), shipped);
    return new CaseReplay(workbench, log).score(file);
  }

  /** How often the true cause was first, and in the first three, where one stands. */
  public static Optional<String> summary(List<CaseScore> scores) {
    if (scores.isEmpty()) {
      return Optional.empty();
    }
    long first = scores.stream().filter(s -> s.rank() == 1).count();
    long three = scores.stream().filter(s -> s.rank() >= 1 && s.rank() <= 3).count();
    long passed = scores.stream().filter(CaseScore::passed).count();
    double steps =
        scores.stream()
            .filter(s -> s.steps().isPresent())
            .mapToInt(s -> s.steps().get())
            .average()
            .orElse(0);
    return Optional.of(
        String.format(
            java.util.Locale.ROOT,
            "%s: true cause first in %d, in the first three in %d; "
                + "%.1f steps on average; %d as expected",
            Amounts.counted(scores.size(), "case"),
            first,
            three,
            steps,
            passed));
  }
}
