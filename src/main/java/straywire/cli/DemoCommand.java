package straywire.cli;

import java.io.PrintWriter;
import java.nio.file.Path;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Spec;
import straywire.advice.RuleBase;
import straywire.casebook.Workbench;
import straywire.module.BenchLog;
import straywire.module.LogFile;
import straywire.module.Module;
import straywire.sitting.Sitting;

@Command(
    name = "demo",
    description = "Replays a recorded sitting at the demo module, from power-up to the found wire.",
    mixinStandardHelpOptions = true)
final class DemoCommand implements Callable<Integer> {
  private static final String MODULE = "beat-memory";
  private static final String CASE = "write-wire-missing.jsonl";

  @Spec private CommandSpec spec;

  @Override
  public Integer call() {
    RuleBase rules = RuleBase.shipped();
    Home home = Home.usual();
    Path file = home.moduleFile(MODULE).resolveSibling(CASE);
    Module module = home.module(MODULE);
    BenchLog log = LogFile.readCase(file, module, true);
    PrintWriter out = spec.commandLine().getOut();
    Workbench workbench = new Workbench(module, rules);
    Sitting sitting = Sitting.unrecorded(workbench);
    new ReplayShow(sitting, out, Glyphs.of(Straywire.charset())).play(log);
    out.println("Sit down at it yourself: " + Home.command() + " sit " + MODULE);
    return ExitCode.OK.number();
  }
}
