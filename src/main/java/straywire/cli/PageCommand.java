package straywire.cli;

import java.awt.Desktop;
import java.awt.GraphicsEnvironment;
import java.io.IOException;
import java.io.PrintWriter;
import java.net.URI;
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
import straywire.web.PageServer;

@Command(
    name = "page",
    description = "A sitting as a web page on this machine, for a screen beside the breadboard.",
    mixinStandardHelpOptions = true)
final class PageCommand implements Callable<Integer> {
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

  @Option(
      names = "--port",
      paramLabel = "NUMBER",
      description = "port to serve at; without it any that is free")
  private int port;

  @Option(names = "--no-browser", description = "only print the address")
  private boolean noBrowser;

  @Mixin private TableOptions tables;

  @Override
  public Integer call() throws IOException, InterruptedException {
    Workbench workbench = tables.workbench(RuleBase.shipped(), Home.usual().module(module));
    Path file =
        journal.orElseGet(
            () ->
                Journals.fresh(Home.usual().sittings(), workbench.module().name(), Instant.now()));
    PrintWriter out = spec.commandLine().getOut();
    try (Sitting sitting = Journals.sitting(workbench, file);
        PageServer page = PageServer.serve(sitting, port)) {
      out.println("Written down in " + file);
      sitting.torn().ifPresent(cut -> out.println(SitCommand.told(cut)));
      out.println("The page: " + page.address());
      out.println("It is served to this machine only, until Ctrl-C.");
      out.flush();
      if (!noBrowser) {
        open(page.address());
      }
      page.await();
    }
    return ExitCode.OK.number();
  }

  /** Where there is no browser the printed address must do. */
  private static void open(URI address) {
    try {
      if (!GraphicsEnvironment.isHeadless()
          && Desktop.isDesktopSupported()
          && Desktop.getDesktop().isSupported(Desktop.Action.BROWSE)) {
        Desktop.getDesktop().browse(address);
      }
    } catch (IOException | UnsupportedOperationException e) {
      // The address is on the screen.
    }
  }
}
