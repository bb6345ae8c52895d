package straywire.cli;

import java.io.IOException;
import java.io.PrintWriter;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Optional;
import java.util.concurrent.Callable;
import java.util.concurrent.CountDownLatch;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.atomic.AtomicBoolean;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;
import straywire.advice.RuleBase;
import straywire.casebook.Workbench;
import straywire.figures.Figures;
import straywire.figures.FiguresPage;
import straywire.figures.FiguresTable;
import straywire.figures.WarmTime;
import straywire.observe.Instruments;
import straywire.sitting.Sitting;

@Command(
    name = "figures",
    description =
        "Measures how well and how fast single faults are found. Takes minutes to hours; Ctrl-C"
            + " stops it with what was measured so far.",
    mixinStandardHelpOptions = true)
final class FiguresCommand implements Callable<Integer> {
  /** Seconds given to print what was measured after Ctrl-C. */
  private static final int GRACE_SECONDS = 60;

  @Spec private CommandSpec spec;

  @Parameters(
      arity = "0..1",
      paramLabel = "MODULE",
      description = "name of a module, or its file; ${DEFAULT-VALUE} if not given",
      defaultValue = "beat-memory")
  private String module;

  @Option(
      names = "--every",
      paramLabel = "N",
      defaultValue = "10",
      description = "looks for every n-th fault; ${DEFAULT-VALUE} if not given")
  private int every;

  @Option(
      names = "--compare-every",
      paramLabel = "N",
      defaultValue = "1",
      description =
          "of these, one in so many in the other ways as well; ${DEFAULT-VALUE} if not given")
  private int compareEvery;

  @Option(
      names = "--seed",
      paramLabel = "S",
      defaultValue = "1",
      description = "of memory contents and random steps; ${DEFAULT-VALUE} if not given")
  private long seed;

  @Option(
      names = "--all-modules",
      description = "every module of the case book, a row each, instead of one module at length")
  private boolean allModules;

  @Option(names = "--write", paramLabel = "FILE", description = "writes the page there as well")
  private Optional<Path> write = Optional.empty();

  private final AtomicBoolean stopped = new AtomicBoolean();
  private final CountDownLatch printed = new CountDownLatch(1);

  @Override
  public Integer call() {
    if (every < 1 || compareEvery < 1) {
      throw new ParameterException(
          spec.commandLine(), "--every and --compare-every are whole numbers of 1 or more");
    }
    Thread onInterrupt = new Thread(this::stopAndWait);
    Runtime.getRuntime().addShutdownHook(onInterrupt);
    try {
      String page = allModules ? table(RuleBase.shipped()) : page(RuleBase.shipped());
      PrintWriter out = spec.commandLine().getOut();
      out.print(page);
      out.flush();
      if (write.isPresent()) {
        save(write.get(), page);
      }
      return ExitCode.OK.number();
    } finally {
      printed.countDown();
      if (!stopped.get()) {
        Runtime.getRuntime().removeShutdownHook(onInterrupt);
      }
    }
  }

  private String page(RuleBase rules) {
    Figures figures = measured(rules, module);
    return FiguresPage.of(figures, command(module), !stopped.get());
  }

  private String table(RuleBase rules) {
    FiguresTable table = new FiguresTable();
    for (String name : Home.usual().modules()) {
      if (!stopped.get()) {
        Figures figures = measured(rules, name);
        if (!stopped.get()) {
          table.add(figures);
        }
      }
    }
    return table.page(command("--all-modules"), !stopped.get());
  }

  private Figures measured(RuleBase rules, String name) {
    Workbench workbench = new Workbench(Home.usual().module(name), rules);
    Figures figures =
        new Figures(workbench, Instruments.USUAL, seed, compareEvery, () -> sitting(workbench));
    long start = System.nanoTime();
    figures.run(every, (done, all) -> goOn(name, done, all, start));
    return figures;
  }

  private static WarmTime.Answering sitting(Workbench workbench) {
    Sitting sitting = Sitting.unrecorded(workbench);
    return entry -> {
      sitting.enter(entry);
      sitting.now();
    };
  }

  private boolean goOn(String name, int done, int all, long start) {
    PrintWriter err = spec.commandLine().getErr();
    long seconds = TimeUnit.NANOSECONDS.toSeconds(System.nanoTime() - start);
    err.print("straywire: " + name + ": " + done + " of " + all + " faults, " + seconds + " s\n");
    err.flush();
    return !stopped.get();
  }

  /** Runs when the program is told to end: the sitting under way ends, then the page is printed. */
  private void stopAndWait() {
    stopped.set(true);
    try {
      boolean inTime = printed.await(GRACE_SECONDS, TimeUnit.SECONDS);
      if (!inTime) {
        spec.commandLine().getErr().println("straywire: stopped before anything could be printed");
      }
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
    }
  }

  private static void save(Path file, String page) {
    try {
      Files.writeString(file, page, StandardCharsets.UTF_8);
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  private String command(String what) {
    return "./straywire figures "
        + what
        + " --every "
        + every
        + " --compare-every "
        + compareEvery
        + " --seed "
        + seed
        + write.map(file -> " --write " + file).orElse("");
  }
}
