package straywire.cli;

import java.io.IOException;
import java.io.PrintWriter;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;
import straywire.advice.RuleBase;
import straywire.casebook.CaseBook;
import straywire.casebook.CaseFile;
import straywire.casebook.CaseScore;
import straywire.casebook.Workbench;
import straywire.faults.Hypothesis;
import straywire.format.BadEntry;
import straywire.format.InputError;
import straywire.format.Nearest;
import straywire.module.BenchLog;
import straywire.module.LogFile;
import straywire.module.Module;
import straywire.review.Amounts;
import straywire.sitting.SimulatedHand;
import straywire.sitting.Sitting;

@Command(name = "case", description = "Works on the case book.", mixinStandardHelpOptions = true)
final class CaseCommand implements Runnable {
  /** Searching steps after which a recording is given up. */
  private static final int MOST_STEPS = 60;

  private static final int MOST_HINTS = 6;

  @Spec private CommandSpec spec;

  @Override
  public void run() {
    throw new ParameterException(
        spec.commandLine(), "say what to do: add JOURNAL, run [DIR], or record MODULE FAULT");
  }

  @Command(
      description = "Makes a case of a finished sitting, in your own case book.",
      mixinStandardHelpOptions = true)
  int add(
      @Parameters(paramLabel = "JOURNAL", description = "journal of a finished sitting")
          Path journal,
      @Option(names = "--to", paramLabel = "DIR", description = "another case book")
          Optional<Path> to,
      @Option(names = "--title", defaultValue = "", description = "one line on the case")
          String title,
      @Option(
              names = "--within",
              defaultValue = "10",
              paramLabel = "STEPS",
              description = "steps in which a replay must find it; ${DEFAULT-VALUE} if not given")
          int within,
      @Option(
              names = "--module",
              paramLabel = "MODULE",
              defaultValue = "",
              description = "name or file of the module")
          String named) {
    if (within < 1) {
      throw new InputError("--within", 0, "a case is found within 1 step or more, got " + within);
    }
    Home home = Home.usual();
    Module module = home.moduleOf(journal, named);
    BenchLog log = LogFile.read(journal, module);
    Path folder = to.orElse(home.ownCases()).resolve(module.name());
    Path file = folder.resolve(caseName(journal));
    CaseFile.write(file, module, journal.toString(), log, title, within);
    Path moduleFile = folder.resolve("module.yaml");
    try {
      if (!Files.exists(moduleFile)) {
        Files.copy(home.moduleFileOf(journal, named), moduleFile);
      }
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
    spec.commandLine().getOut().println("Added " + file);
    return ExitCode.OK.number();
  }

  private static String caseName(Path journal) {
    return journal.getFileName().toString().replaceFirst("\\.[^.]*$", "") + ".jsonl";
  }

  @Command(
      name = "run",
      description = "Replays all cases: how often the true cause was first, and how soon.",
      mixinStandardHelpOptions = true)
  int runAll(
      @Parameters(
              arity = "0..1",
              paramLabel = "DIR",
              description = "a case book; else the shipped one and your own")
          Optional<Path> folder) {
    Home home = Home.usual();
    RuleBase rules = RuleBase.shipped();
    List<CaseBook> books = new ArrayList<>();
    if (folder.filter(f -> !Files.isDirectory(f)).isPresent()) {
      throw new InputError(folder.get().toString(), 0, "there is no such folder of cases");
    }
    for (Path each : folder.map(List::of).orElse(List.of(home.shippedCases(), home.ownCases()))) {
      books.add(
          new CaseBook(
              each,
              each.equals(home.shippedCases()),
              file -> home.moduleFileOf(file, ""),
              home::read,
              rules));
    }
    PrintWriter out = spec.commandLine().getOut();
    List<CaseScore> scores = new ArrayList<>();
    out.println("rank steps allowed  case");
    for (CaseBook book : books) {
      for (Path file : book.files()) {
        CaseScore score = book.run(file);
        scores.add(score);
        out.printf(
            "%4s %5s %7d  %s %s%s%n",
            score.rank() == 0 ? "-" : score.rank(),
            score.steps().map(String::valueOf).orElse("-"),
            score.withinSteps(),
            file.getParent().getFileName() + "/" + file.getFileName() + ":",
            score.title(),
            score.passed() ? "" : "  MISSED");
        out.flush();
      }
    }
    if (folder.isPresent() && scores.isEmpty()) {
      throw new InputError(folder.get().toString(), 0, "there is no case in it");
    }
    out.println(CaseBook.summary(scores).orElse("No cases."));
    return scores.stream().allMatch(CaseScore::passed)
        ? ExitCode.OK.number()
        : ExitCode.CASE_MISSED.number();
  }

  /** Faults whose ids begin as the one typed, or else the nearest. */
  private static String hint(String fault, List<String> ids) {
    List<String> begun = ids.stream().filter(id -> id.startsWith(fault)).limit(MOST_HINTS).toList();
    return begun.isEmpty()
        ? Nearest.hint(fault, ids)
        : "; there are " + String.join(", ", begun) + (begun.size() == MOST_HINTS ? ", ..." : "");
  }

  @Command(
      description = "Records a whole sitting at a simulated bench with a fault, as a case.",
      mixinStandardHelpOptions = true)
  int record(
      @Parameters(paramLabel = "MODULE", description = "name of a module, or its file") String name,
      @Parameters(
              paramLabel = "FAULT",
              description =
                  "id of a fault, such as \"jumper-missing U1.3-U2.3\"; of two, joined by"
                      + " \" + \"; nothing-wrong for none")
          String fault,
      @Option(names = "--to", required = true, paramLabel = "FILE", description = "the new case")
          Path file,
      @Option(names = "--title", defaultValue = "", description = "one line on the case")
          String title,
      @Option(
              names = "--seed",
              defaultValue = "1",
              paramLabel = "N",
              description = "of what memories hold at power-up; ${DEFAULT-VALUE} if not given")
          long seed) {
    Workbench workbench = new Workbench(Home.usual().module(name), RuleBase.shipped());
    List<String> ids = workbench.hypotheses().stream().map(Hypothesis::id).toList();
    Hypothesis truth =
        workbench
            .hypothesis(fault)
            .orElseThrow(
                () -> new InputError("FAULT", 0, "no fault is called " + fault + hint(fault, ids)));
    Sitting sitting = Sitting.unrecorded(workbench);
    int steps =
        new SimulatedHand(workbench, truth, seed)
            .finish(sitting, MOST_STEPS)
            .orElseThrow(
                () ->
                    new BadEntry(
                        "no case was written: at the simulated bench "
                            + fault
                            + " was not found and repaired within "
                            + MOST_STEPS
                            + " steps; sit down at it to see where it ends"));
    CaseFile.write(
        file, workbench.module(), file.toString(), sitting.log(), title, Math.max(1, steps));
    spec.commandLine()
        .getOut()
        .println("Recorded " + file + ", found in " + Amounts.counted(steps, "step"));
    return ExitCode.OK.number();
  }
}
