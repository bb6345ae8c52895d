package straywire.cli;

import java.io.IOException;
import java.io.PrintWriter;
import java.io.UncheckedIOException;
import java.nio.charset.Charset;
import java.nio.file.AccessDeniedException;
import java.nio.file.FileAlreadyExistsException;
import java.nio.file.NoSuchFileException;
import java.util.List;
import java.util.Set;
import java.util.TreeSet;
import picocli.CommandLine;
import picocli.CommandLine.Command;
import picocli.CommandLine.MissingParameterException;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Model.OptionSpec;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.Spec;
import picocli.CommandLine.UnmatchedArgumentException;
import straywire.format.BadEntry;
import straywire.format.InputError;
import straywire.format.Nearest;

/** The command {@code straywire}. */
@Command(
    name = "straywire",
    description = "Finds the stray wire in a misbehaving logic module.",
    mixinStandardHelpOptions = true,
    version = "straywire 0.1.0",
    sortOptions = false,
    subcommands = {
      DemoCommand.class,
      SitCommand.class,
      PageCommand.class,
      RankCommand.class,
      TellCommand.class,
      LevelsCommand.class,
      DialogueCommand.class,
      PartCommand.class,
      ModuleCommand.class,
      LogCommand.class,
      CaseCommand.class,
      FiguresCommand.class
    })
public final class Straywire implements Runnable {
  @Spec private CommandSpec spec;

  @Override
  public void run() {
    throw new ParameterException(spec.commandLine(), "a command is missing");
  }

  /** Runs one command and ends the program with its exit code. */
  public static void main(String[] args) {
    Charset charset = charset();
    PrintWriter out = new PrintWriter(System.out, false, charset);
    PrintWriter err = new PrintWriter(System.err, true, charset);
    int code = withinMemory(out, err, args);
    out.flush();
    System.exit(code);
  }

  private static int withinMemory(PrintWriter out, PrintWriter err, String... args) {
    try {
      return run(out, err, args);
    } catch (OutOfMemoryError e) {
      err.println(
          "straywire: the module is too large for the memory that the launcher gives (-Xmx in the"
              + " file straywire); entries of a sitting are in its journal");
      return ExitCode.NO_ACCESS.number();
    }
  }

  /** The terminal's character set: Java 17 does not take it from the locale for files. */
  static Charset charset() {
    String name = System.getProperty("stdout.encoding", System.getProperty("sun.stdout.encoding"));
    String fallback = System.getProperty("native.encoding", "US-ASCII");
    return Charset.forName(java.util.Objects.requireNonNullElse(name, fallback));
  }

  static int run(PrintWriter out, PrintWriter err, String... args) {
    CommandLine line = new CommandLine(new Straywire());
    line.setOut(out);
    line.setErr(err);
    line.setParameterExceptionHandler(Straywire::badCommand);
    line.setExecutionExceptionHandler((e, command, parsed) -> failed(e, err));
    return line.execute(args);
  }

  private static int badCommand(ParameterException e, String[] args) {
    PrintWriter err = e.getCommandLine().getErr();
    err.println("straywire: " + oneLine(inWords(e)));
    err.println(
        "Try "
            + Home.command()
            + " "
            + e.getCommandLine()
                .getCommandSpec()
                .qualifiedName(" ")
                .replaceFirst("^straywire ?", "")
            + (e.getCommandLine().getParent() == null ? "" : " ")
            + "--help");
    err.flush();
    return ExitCode.BAD_COMMAND.number();
  }

  private static String inWords(ParameterException e) {
    if (e instanceof UnmatchedArgumentException unmatched && !unmatched.getUnmatched().isEmpty()) {
      String word = unmatched.getUnmatched().get(0);
      Set<String> known = new TreeSet<>(e.getCommandLine().getSubcommands().keySet());
      e.getCommandLine().getCommandSpec().options().forEach(o -> known.addAll(List.of(o.names())));
      return "no such command or option: " + word + Nearest.hint(word, known);
    }
    if (e instanceof MissingParameterException missing) {
      return missing(missing);
    }
    if (e.getArgSpec() instanceof OptionSpec option && e.getValue() != null) {
      String expected =
          option.type() == int.class || option.type() == long.class
              ? "a whole number"
              : option.paramLabel();
      return option.longestName() + ": expected " + expected + ", got " + e.getValue();
    }
    return e.getMessage();
  }

  private static String missing(MissingParameterException e) {
    List<String> names =
        e.getMissing().stream()
            .map(arg -> arg.isOption() ? ((OptionSpec) arg).longestName() : arg.paramLabel())
            .sorted()
            .toList();
    if (e.getMessage().contains("for option")) {
      OptionSpec option = (OptionSpec) e.getMissing().get(0);
      return option.longestName() + ": expected " + option.paramLabel() + " after it";
    }
    if (e.getMessage().contains("one of these")) {
      return String.join(" or ", names) + " is missing";
    }
    return String.join(" and ", names) + (names.size() == 1 ? " is missing" : " are missing");
  }

  private static int failed(Exception e, PrintWriter err) {
    ExitCode code = ExitCode.NO_ACCESS;
    String message = oneLine(String.valueOf(e.getMessage()));
    if (e instanceof InputError || e instanceof BadEntry) {
      code = ExitCode.BAD_INPUT;
    } else if (e instanceof UncheckedIOException u) {
      message = oneLine(trouble(u.getCause()));
    } else {
      message = "this should not happen: " + e.getClass().getSimpleName() + ": " + message;
    }
    err.println("straywire: " + message);
    err.flush();
    return code.number();
  }

  private static String trouble(IOException e) {
    if (e instanceof NoSuchFileException file) {
      return file.getFile() + ": there is no such file or folder";
    }
    if (e instanceof AccessDeniedException file) {
      return file.getFile() + ": may not be read or written";
    }
    if (e instanceof FileAlreadyExistsException file) {
      return file.getFile() + ": is there already, and is no folder";
    }
    return String.valueOf(e.getMessage());
  }

  private static String oneLine(String message) {
    return message.replaceAll("\\s*\\R\\s*", " ").strip();
  }
}
