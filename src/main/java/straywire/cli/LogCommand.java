package straywire.cli;

import java.nio.file.Path;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;
import straywire.advice.SymptomTable;
import straywire.format.BadEntry;
import straywire.format.InputError;
import straywire.module.BenchLog;
import straywire.module.Entry;
import straywire.module.LogFile;

@Command(name = "log", description = "Works on bench logs.", mixinStandardHelpOptions = true)
final class LogCommand implements Runnable {
  @Spec private CommandSpec spec;

  @Override
  public void run() {
    throw new ParameterException(spec.commandLine(), "say what to do: check FILE");
  }

  @Command(description = "Checks a bench log.", mixinStandardHelpOptions = true)
  int check(
      @Parameters(paramLabel = "FILE", description = "a bench log, journal or case") Path file,
      @Option(
              names = "--module",
              paramLabel = "MODULE",
              defaultValue = "",
              description = "name or file of the module")
          String module) {
    BenchLog log = LogFile.read(file, Home.usual().moduleOf(file, module));
    for (BenchLog.Line line : log.lines()) {
      if (line.entry() instanceof Entry.Symptom symptom) {
        known(file, line.number() + 1, symptom.symptom());
      }
    }
    int standing = log.standing().size();
    spec.commandLine()
        .getOut()
        .printf(
            "%s: fine. About %s, %s, %d of them standing%n",
            file, log.module(), entries(log.lines().size()), standing);
    return ExitCode.OK.number();
  }

  private static String entries(int number) {
    return number == 1 ? "1 entry" : number + " entries";
  }

  private static void known(Path file, int at, String symptom) {
    try {
      SymptomTable.shipped().check(symptom);
    } catch (BadEntry e) {
      throw new InputError(file.toString(), at, "symptom: " + e.getMessage());
    }
  }
}
