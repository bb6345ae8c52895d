package straywire.cli;

import com.fasterxml.jackson.databind.node.ObjectNode;
import java.io.PrintWriter;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.List;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;
import straywire.advice.RuleBase;
import straywire.casebook.Workbench;
import straywire.format.InputError;
import straywire.module.BenchLog;
import straywire.module.Entry;
import straywire.module.LogFile;
import straywire.module.Module;
import straywire.sitting.Sitting;
import straywire.sitting.Situation;
import straywire.sitting.SituationJson;

@Command(
    name = "rank",
    description = "Ranks the suspects of a bench log and names the next step.",
    mixinStandardHelpOptions = true)
final class RankCommand implements Callable<Integer> {
  @Spec private CommandSpec spec;

  @Parameters(paramLabel = "LOGFILE", description = "a bench log, journal or case")
  private Path logFile;

  @Option(
      names = "--module",
      paramLabel = "MODULE",
      description =
          "name or file of the module; else the module.yaml beside the log, or the name"
              + " that the log gives")
  private String module = "";

  @Option(names = "--json", description = "one line of JSON")
  private boolean json;

  @Option(
      names = "--instruments",
      paramLabel = "LIST",
      description = "what is at hand: lamps, or some of eyes,meter,logic-probe,spare-parts")
  private String instruments = "";

  @Mixin private TableOptions tables;

  @Override
  public Integer call() {
    RuleBase rules = RuleBase.shipped();
    Module about = Home.usual().moduleOf(logFile, module);
    BenchLog log = LogFile.read(logFile, about);
    if (!instruments.isEmpty()) {
      log = log.with(new Entry.Instruments(atHand()));
    }
    Workbench workbench = tables.workbench(rules, about);
    Situation now = Sitting.over(workbench, log).now();
    PrintWriter out = spec.commandLine().getOut();
    if (json) {
      ObjectNode line = new SituationJson(about).of(now, log);
      out.println(line.toString());
    } else {
      Screen.ofReport(out, about, Glyphs.of(Straywire.charset())).situation(now, log);
    }
    return ExitCode.OK.number();
  }

  private List<String> atHand() {
    List<String> known = List.of("eyes", "meter", "logic-probe", "spare-parts");
    if (instruments.equals("lamps")) {
      return List.of();
    }
    List<String> names = Arrays.asList(instruments.split(",", -1));
    for (String name : names) {
      if (!known.contains(name)) {
        throw new InputError(
            "--instruments",
            0,
            name + " is no instrument; write lamps, or some of " + String.join(",", known));
      }
    }
    return names;
  }
}
