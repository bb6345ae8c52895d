package straywire.parts;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.concurrent.TimeUnit;

/** The independent simulator that descriptions in Verilog are run under. */
public final class Iverilog {
  private Iverilog() {}

  /** False where it cannot be run; what needs it is then skipped by name. */
  public static boolean isInstalled() {
    try {
      Process process = new ProcessBuilder("iverilog", "-V").redirectErrorStream(true).start();
      process.getInputStream().readAllBytes();
      return process.waitFor() == 0;
    } catch (IOException e) {
      return false;
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
      return false;
    }
  }

  /** Runs a command to its end and returns the lines that it said. */
  public static List<String> run(List<String> command, Path output) {
    try {
      Process process =
          new ProcessBuilder(command)
              .redirectErrorStream(true)
              .redirectOutput(output.toFile())
              .start();
      boolean ended = process.waitFor(10, TimeUnit.MINUTES);
      process.destroyForcibly();
      List<String> said = Files.readAllLines(output);
      assertThat(ended).as("%s ends in time", command.get(0)).isTrue();
      assertThat(process.exitValue()).as("%s", said.stream().limit(5).toList()).isZero();
      return said;
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
      throw new IllegalStateException(command.get(0) + " was interrupted", e);
    }
  }
}
