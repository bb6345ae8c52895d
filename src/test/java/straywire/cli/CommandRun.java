package straywire.cli;

import java.io.PrintWriter;
import java.io.StringWriter;

/**
 * One run of the command line.
 *
 * @param out what it printed, with plain line ends
 */
record CommandRun(int code, String out, String err) {
  static CommandRun of(String... args) {
    StringWriter out = new StringWriter();
    StringWriter err = new StringWriter();
    int code = Straywire.run(new PrintWriter(out), new PrintWriter(err), args);
    return new CommandRun(code, plain(out), plain(err));
  }

  private static String plain(StringWriter text) {
    return text.toString().replace(System.lineSeparator(), "\n");
  }
}
