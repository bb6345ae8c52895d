package straywire.cli;

import java.io.PrintWriter;
import java.nio.file.Path;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;
import straywire.module.Module;
import straywire.module.ModuleFile;

@Command(name = "module", description = "Works on module files.", mixinStandardHelpOptions = true)
final class ModuleCommand implements Runnable {
  @Spec private CommandSpec spec;

  @Override
  public void run() {
    throw new ParameterException(spec.commandLine(), "say what to do: check FILE");
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
    return ExitCode.OK.number();
  }
}
