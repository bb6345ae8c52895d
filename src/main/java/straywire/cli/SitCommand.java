package straywire.cli;

import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStreamReader;
import java.io.PrintWriter;
import java.nio.file.Path;
import java.time.Instant;
import java.util.Optional;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;
import straywire.advice.RuleBase;
import straywire.casebook.Workbench;
import straywire.sitting.Sitting;
import straywire.sitting.Situation;

@Command(
    name = "sit",
    description = "An interactive sitting: say what you did and saw, be told what to do next.",
    mixinStandardHelpOptions = true)
final class SitCommand implements Callable<Integer> {
  @Spec private CommandSpec spec;

  @Parameters(paramLabel = "MODULE", description = "name of a module, or its file")
  private String module;

  @Option(
      names = "--journal",
      paramLabel = "FILE",
      description =
          "where entries are written down; a journal that is there is gone on with."
              + " Without it a new one in ~/.straywire/sittings, or STRAYWIRE_SITTINGS")
  private Optional<Path> journal = Optional.empty();

  @Mixin private TableOptions tables;

  @Override
  public Integer call() throws IOException {
    Workbench workbench = tables.workbench(RuleBase.shipped(), Home.usual().module(module));
    Path file =
        journal.orElseGet(
            () ->
                Journals.fresh(Home.usual().sittings(), workbench.module().name(), Instant.now()));
    boolean closed;
    try (Sitting sitting = Journals.sitting(workbench, file)) {
      spec.commandLine().getOut().println("Written down in " + file);
      sitting.torn().ifPresent(cut -> spec.commandLine().getOut().println(told(cut)));
      spec.commandLine().getOut().flush();
      if (Boolean.getBoolean("straywire.terminal")) {
        TerminalSitting.run(sitting);
      } else {
        PrintWriter out = spec.commandLine().getOut();
        run(
            sitting,
            new BufferedReader(new InputStreamReader(System.in, Straywire.charset())),
            out);
      }
      closed = sitting.now().stage() == Situation.Stage.CLOSED;
    }
    spec.commandLine()
        .getOut()
        .println(
            closed
                ? "To keep it as a case: " + Home.command() + " case add " + file
                : "To go on with it: " + Home.command() + " sit " + module + " --journal " + file);
    return ExitCode.OK.number();
  }

  static String told(String torn) {
    return "Its last line was cut off and is left out: " + torn;
  }

  /** Without a terminal: lines are echoed, so that the output reads as a protocol. */
  static void run(Sitting sitting, BufferedReader in, PrintWriter out) throws IOException {
    SittingShell shell = new SittingShell(sitting, out, Glyphs.of(Straywire.charset()));
    shell.greet();
    String line = in.readLine();
    while (line != null) {
      out.println("> " + line);
      shell.take(line);
      line = shell.over() ? null : in.readLine();
    }
  }
}
