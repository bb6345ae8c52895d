package straywire.cli;

import java.nio.file.Path;
import java.util.Optional;
import picocli.CommandLine.Option;
import straywire.advice.RuleBase;
import straywire.casebook.Workbench;
import straywire.diagnosis.StepSeconds;
import straywire.faults.Priors;
import straywire.faults.PriorsFile;
import straywire.module.Module;

/** The tables that a user may copy and change. */
final class TableOptions {
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

  /**
   * Everything prepared for a module, with these tables.
   *
   * @param rules made before the module is read: they load meanwhile
   */
  Workbench workbench(RuleBase rules, Module module) {
    Priors frequencies = priors.map(PriorsFile::over).orElseGet(PriorsFile::shipped);
    StepSeconds times = seconds.map(StepSeconds::over).orElseGet(StepSeconds::shipped);
    return new Workbench(module, rules, frequencies, times);
  }
}
