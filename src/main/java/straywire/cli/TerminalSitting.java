package straywire.cli;

import java.io.IOException;
import org.jline.reader.Candidate;
import org.jline.reader.EndOfFileException;
import org.jline.reader.LineReader;
import org.jline.reader.LineReaderBuilder;
import org.jline.reader.UserInterruptException;
import org.jline.terminal.Terminal;
import org.jline.terminal.TerminalBuilder;
import straywire.sitting.Sitting;

/** A sitting at a terminal: line editing, history, completion. */
final class TerminalSitting {
  private TerminalSitting() {}

  static void run(Sitting sitting) throws IOException {
    try (Terminal terminal = TerminalBuilder.builder().system(true).build()) {
      SittingShell shell =
          new SittingShell(
              sitting,
              terminal.writer(),
              Glyphs.of(terminal.encoding()),
              terminal.getColumns(),
              terminal.getRows());
      LineReader reader =
          LineReaderBuilder.builder()
              .terminal(terminal)
              .completer(
                  (r, line, candidates) ->
                      shell
                          .completions(line.words().subList(0, line.wordIndex() + 1))
                          .forEach(word -> candidates.add(new Candidate(word))))
              .option(LineReader.Option.DISABLE_EVENT_EXPANSION, true)
              .build();
      shell.greet();
      while (!shell.over()) {
        try {
          shell.take(reader.readLine("> "));
        } catch (UserInterruptException e) {
          // Ctrl-C drops the line, as in any shell.
        } catch (EndOfFileException e) {
          return;
        }
      }
    }
  }
}
