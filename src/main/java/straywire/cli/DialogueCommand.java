package straywire.cli;

import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStreamReader;
import java.io.PrintWriter;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.Optional;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;
import straywire.advice.RuleBase;
import straywire.casebook.Workbench;
import straywire.sitting.Dialogue;
import straywire.sitting.Sitting;

@Command(
    name = "dialogue",
    description = "A sitting driven by a program: JSON Lines in, JSON Lines out.",
    mixinStandardHelpOptions = true)
final class DialogueCommand implements Callable<Integer> {
  @Parameters(paramLabel = "MODULE", description = "name of a module, or its file")
  private String module;

  @Option(
      names = "--journal",
      paramLabel = "FILE",
      description = "where entries are written down; a journal that is there is gone on with")
  private Optional<Path> journal = Optional.empty();

  @Mixin private TableOptions tables;

  @Override
  public Integer call() throws IOException {
    Workbench workbench = tables.workbench(RuleBase.shipped(), Home.usual().module(module));
    // JSON is UTF-8 whatever the terminal speaks.
    PrintWriter out = new PrintWriter(System.out, false, StandardCharsets.UTF_8);
    BufferedReader in =
        new BufferedReader(new InputStreamReader(System.in, StandardCharsets.UTF_8));
    try (Sitting sitting =
        journal
            .map(file -> Journals.sitting(workbench, file))
            .orElseGet(() -> Sitting.unrecorded(workbench))) {
      new Dialogue(sitting).run(in, out);
    }
    return ExitCode.OK.number();
  }
}
