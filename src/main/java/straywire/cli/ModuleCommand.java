package straywire.cli;

import java.io.PrintWriter;
import java.nio.file.Path;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;
import straywire.advice.Review;
import straywire.advice.WiringReview;
import straywire.electrical.Times;
import straywire.module.Module;
import straywire.module.ModuleFile;

@Command(name = "module", description = "Works on module files.", mixinStandardHelpOptions = true)
final class ModuleCommand implements Runnable {
  @Spec private CommandSpec spec;

  @Override
  public void run() {
    throw new ParameterException(spec.commandLine(), "say what to do: check FILE or review MODULE");
  }

  @Command(description = "Checks a module file.", mixinStandardHelpOptions = true)
  int check(@Parameters(paramLabel = "FILE", description = "a module file") Path file) {
    Module module = ModuleFile.read(file, Home.usual().parts());
    PrintWriter out = spec.commandLine().getOut();
    out.printf(
        "%s: fine. %s: %d parts, %d nets, %d jumpers, %d controls, %d lamps%n",
        file,
        module.name(),
        module.parts().size(),
        module.nets().size(),
        module.jumpers().size(),
        module.controls().size(),
        module.lamps().size());
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
}
