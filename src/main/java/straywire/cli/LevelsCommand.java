package straywire.cli;

import java.io.PrintWriter;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;
import straywire.module.Entry;
import straywire.module.EntryWords;
import straywire.module.Labels;
import straywire.module.LogFile;
import straywire.module.Module;
import straywire.observe.ReadingTable;
import straywire.sitting.ExpectedLevels;

@Command(
    name = "levels",
    description = "Shows what every pin and lamp should show for a setting of the controls.",
    mixinStandardHelpOptions = true)
final class LevelsCommand implements Callable<Integer> {
  @Spec private CommandSpec spec;

  @Parameters(paramLabel = "MODULE", description = "name of a module, or its file")
  private String module;

  @Option(
      names = "--set",
      paramLabel = "CONTROLS",
      description = "controls to set, such as \"address 0001 drive low\"; may be given again")
  private List<String> settings = new ArrayList<>();

  @Option(names = "--hold", paramLabel = "BUTTON", description = "a button to keep pressed")
  private List<String> holds = new ArrayList<>();

  @Option(
      names = "--after",
      paramLabel = "LOGFILE",
      description = "a bench log that is worked first, for what the memories hold")
  private Optional<Path> after = Optional.empty();

  @Option(names = "--part", paramLabel = "PART", description = "one part only, such as U1")
  private String part = "";

  @Override
  public Integer call() {
    Module about = Home.usual().module(module);
    EntryWords typed = new EntryWords(about);
    ReadingTable table = ReadingTable.shipped();
    ExpectedLevels levels =
        after
            .map(log -> new ExpectedLevels(about, table, LogFile.read(log, about)))
            .orElseGet(() -> new ExpectedLevels(about, table));
    List<Entry> entries = new ArrayList<>();
    settings.forEach(s -> entries.add(typed.parse("set " + s)));
    holds.forEach(h -> entries.add(typed.parse("hold " + h)));
    entries.forEach(levels::act);
    PrintWriter out = spec.commandLine().getOut();
    List<String> parts =
        part.isEmpty()
            ? List.copyOf(about.parts().keySet())
            : List.of(new Labels(about).part(part));
    new LevelsTable(about, Glyphs.of(Straywire.charset()))
        .lines(levels, parts)
        .forEach(out::println);
    return ExitCode.OK.number();
  }
}
