package straywire.cli;

import java.io.IOException;
import java.io.PrintWriter;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import picocli.CommandLine.ArgGroup;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;
import straywire.advice.RuleBase;
import straywire.casebook.Workbench;
import straywire.electrical.Times;
import straywire.format.InputError;
import straywire.module.Module;
import straywire.module.ModuleFile;
import straywire.module.ModuleList;
import straywire.review.Amounts;
import straywire.review.Review;
import straywire.review.WiringReview;

@Command(name = "module", description = "Works on module files.", mixinStandardHelpOptions = true)
final class ModuleCommand implements Runnable {
  @Spec private CommandSpec spec;

  @Override
  public void run() {
    throw new ParameterException(
        spec.commandLine(),
        "say what to do: check MODULE, review MODULE, faults MODULE, or new NAME");
  }

  @Command(description = "Checks a module file.", mixinStandardHelpOptions = true)
  int check(
      @Parameters(paramLabel = "MODULE", description = "name of a module, or its file")
          String named) {
    Module module = Home.usual().module(named);
    PrintWriter out = spec.commandLine().getOut();
    out.printf(
        "%s: fine. %s: %s, %s, %s, %s, %s%n",
        named,
        module.name(),
        Amounts.counted(module.parts().size(), "part"),
        Amounts.counted(module.nets().size(), "net"),
        Amounts.counted(module.jumpers().size(), "jumper"),
        Amounts.counted(module.controls().size(), "control"),
        Amounts.counted(module.lamps().size(), "lamp"));
    ModuleFile.notes(module).forEach(note -> out.println("  note: " + note));
    Times.of(module).forEach(line -> out.println("  " + line));
    return ExitCode.OK.number();
  }

  @Command(
      description = "Looks at a module on paper before it is powered.",
      mixinStandardHelpOptions = true)
  int review(
      @Parameters(paramLabel = "MODULE", description = "name of a module, or its file")
          String module,
      @Option(names = "--json", description = "one line of JSON") boolean json) {
    Review review = WiringReview.shipped().of(Home.usual().module(module));
    ReviewScreen screen = new ReviewScreen(spec.commandLine().getOut());
    if (json) {
      screen.json(review);
    } else {
      screen.text(review);
    }
    return (review.clean() ? ExitCode.OK : ExitCode.FINDINGS).number();
  }

  @Command(
      description = "Lists what can be wrong with a module, with the ids that other commands take.",
      mixinStandardHelpOptions = true)
  int faults(
      @Parameters(paramLabel = "MODULE", description = "name of a module, or its file")
          String named,
      @Parameters(
              arity = "0..*",
              paramLabel = "WORD",
              description = "only faults that speak of it, such as U1.3, write or bridged")
          List<String> words,
      @Option(names = "--json", description = "one line of JSON") boolean json) {
    Module module = Home.usual().module(named);
    List<String> about = Optional.ofNullable(words).orElse(List.of());
    FaultList faults =
        new FaultList(module.name(), new Workbench(module, RuleBase.shipped()).hypotheses())
            .about(about);
    if (faults.isEmpty()) {
      throw new InputError(
          "WORD", 0, "no fault of " + module.name() + " speaks of " + String.join(" and ", about));
    }
    if (json) {
      faults.json(spec.commandLine().getOut());
    } else {
      faults.text(spec.commandLine().getOut());
    }
    return ExitCode.OK.number();
  }

  @Command(
      name = "new",
      description = "Starts a module file, from a shipped module or from a plain list.",
      mixinStandardHelpOptions = true)
  int start(
      @Parameters(paramLabel = "NAME", description = "name of the new module") String name,
      @ArgGroup(multiplicity = "1") Source source,
      @Option(
              names = "--to",
              paramLabel = "FILE",
              description = "the new file; NAME/module.yaml if not given")
          Optional<Path> to) {
    if (!name.matches("[A-Za-z][A-Za-z0-9_+-]*")) {
      throw new InputError(
          "NAME",
          0,
          "a name starts with a letter and goes on with letters, digits, -, _ and +; got " + name);
    }
    Home home = Home.usual();
    String text =
        source
            .list
            .map(list -> ModuleList.moduleFile(list, name, home.parts()))
            .orElseGet(() -> ModuleList.renamed(home.moduleFile(source.from.orElseThrow()), name));
    Path file = to.orElse(Path.of(name, "module.yaml"));
    if (Files.exists(file)) {
      throw new InputError(file.toString(), 0, "is there already; name another file with --to");
    }
    try {
      Files.createDirectories(file.toAbsolutePath().getParent());
      Files.writeString(file, text, StandardCharsets.UTF_8);
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
    Module module = ModuleFile.read(file, home.parts());
    spec.commandLine()
        .getOut()
        .printf(
            "Wrote %s: %s, %s. Put in what it is and how to work it by hand, then" + " check it.%n",
            file,
            Amounts.counted(module.parts().size(), "part"),
            Amounts.counted(module.jumpers().size(), "jumper"));
    return ExitCode.OK.number();
  }

  /** Where a new module starts from. */
  static final class Source {
    @Option(names = "--from", paramLabel = "MODULE", description = "a module to copy, or its file")
    private Optional<String> from = Optional.empty();

    @Option(names = "--list", paramLabel = "FILE", description = "a plain list of parts and nets")
    private Optional<Path> list = Optional.empty();
  }
}
