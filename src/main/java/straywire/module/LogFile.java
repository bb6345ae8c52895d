package straywire.module;

import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import straywire.format.BadEntry;
import straywire.format.InputError;
import straywire.format.Schema;
import straywire.format.TextFile;

/**
 * Reads bench logs: journals of sittings, logs to replay, and cases are one format, described in
 * {@code docs/formats/bench-log.md} and {@code docs/formats/case.md}.
 *
 * <p>All methods throw {@link InputError} with file and line for the first line that does not fit.
 */
public final class LogFile {
  private LogFile() {}

  /** What the first line says: which module the log is about. */
  public record Header(String module, String title) {}

  /**
   * A journal to go on with.
   *
   * @param goodBytes length of the file without a torn last line
   * @param torn what was cut off at the end; empty when the file was whole
   */
  public record Resumed(BenchLog log, long goodBytes, Optional<String> torn) {}

  /**
   * A line of the file.
   *
   * @param text empty when it is not UTF-8
   * @param length in bytes, with its line end
   */
  private record RawLine(Optional<String> text, int length) {}

  public static Header header(Path file) {
    String name = file.toString();
    List<RawLine> raw = lines(TextFile.bytes(file));
    return header(name, raw);
  }

  /** Reads a log that a person or program wrote: strictly, then each line against its schema. */
  public static BenchLog read(Path file, Module module) {
    String name = file.toString();
    byte[] bytes = TextFile.bytes(file);
    BenchLog log = parse(name, bytes, module);
    int at = 0;
    for (RawLine raw : lines(bytes)) {
      at++;
      Optional<String> problem = Schema.BENCH_LOG.firstProblem(json(raw));
      if (problem.isPresent()) {
        throw new InputError(name, at, problem.get());
      }
    }
    return log;
  }

  /** Reads a log of the shipped case book; the build has held it against its schema already. */
  public static BenchLog readShipped(Path file, Module module) {
    return parse(file.toString(), TextFile.bytes(file), module);
  }

  /**
   * Reads a case: a log with a title that ends in the finding and what a replay must find.
   *
   * @param shipped true for the shipped case book; others are held against the case schema as well
   */
  public static BenchLog readCase(Path file, Module module, boolean shipped) {
    String name = file.toString();
    byte[] bytes = TextFile.bytes(file);
    BenchLog log = parse(name, bytes, module);
    checkCase(name, log);
    if (!shipped) {
      ArrayNode all = JsonNodeFactory.instance.arrayNode();
      lines(bytes).forEach(raw -> all.add(json(raw)));
      Schema.CASE
          .firstProblem(all)
          .ifPresent(
              problem -> {
                throw new InputError(name, 0, problem);
              });
    }
    return log;
  }

  private static void checkCase(String name, BenchLog log) {
    if (log.title().isEmpty()) {
      throw new InputError(name, 1, "a case has a title in its first line");
    }
    List<BenchLog.Line> lines = log.lines();
    int last = lines.size();
    boolean closed =
        last >= 2
            && lines.get(last - 2).entry() instanceof Entry.Finding
            && lines.get(last - 1).entry() instanceof Entry.Expected;
    if (!closed) {
      throw new InputError(name, last + 1, "a case ends with a finding and an expected line");
    }
    for (BenchLog.Line line : lines.subList(0, last - 1)) {
      if (line.entry() instanceof Entry.Expected) {
        throw new InputError(name, line.number() + 1, "expected stands once, in the last line");
      }
    }
  }

  /**
   * Reads a journal to go on with. A last line that was cut off by a crash is left out and
   * returned; anything else that does not fit is an error as always.
   */
  public static Resumed resume(Path file, Module module) {
    byte[] bytes = TextFile.bytes(file);
    List<RawLine> raw = lines(bytes);
    int good = bytes.length;
    Optional<String> torn = Optional.empty();
    if (raw.size() > 1 && isTorn(raw.get(raw.size() - 1))) {
      RawLine last = raw.get(raw.size() - 1);
      good -= last.length();
      torn = Optional.of(last.text().orElse("(not text)").replace("\0", ""));
    }
    BenchLog log = parse(file.toString(), Arrays.copyOf(bytes, good), module);
    return new Resumed(log, good, torn);
  }

  /** A write that was cut short leaves no whole object. */
  private static boolean isTorn(RawLine line) {
    return line.text().flatMap(LogLine::json).isEmpty();
  }

  static BenchLog parse(String name, byte[] bytes, Module module) {
    List<RawLine> raw = lines(bytes);
    Header header = header(name, raw);
    if (!header.module().equals(module.name())) {
      throw new InputError(
          name, 1, "the log is about " + header.module() + ", not about " + module.name());
    }
    EntryFormat format = new EntryFormat(module);
    List<BenchLog.Line> lines = new ArrayList<>();
    for (int at = 2; at <= raw.size(); at++) {
      LogLine line = line(name, at, raw.get(at - 1));
      if (line.number() != at - 1) {
        throw new InputError(
            name,
            at,
            "n: expected " + (at - 1) + ", got " + line.number() + "; numbers go up by 1");
      }
      try {
        Entry entry = format.read(line.fields());
        LogRules.check(line.number(), entry);
        lines.add(new BenchLog.Line(line.number(), entry));
      } catch (BadEntry e) {
        throw new InputError(name, at, e.getMessage());
      }
    }
    return new BenchLog(header.module(), header.title(), lines);
  }

  private static Header header(String name, List<RawLine> raw) {
    if (raw.isEmpty()) {
      throw new InputError(name, 0, "the file is empty");
    }
    LogLine line = line(name, 1, raw.get(0));
    try {
      if (line.number() != 0 || !line.fields().has("log")) {
        throw new BadEntry(
            "a log starts with its header, such as {\"v\":1,\"n\":0,\"log\":\"beat-memory\"}");
      }
      JsonFields fields = new JsonFields(line.fields());
      fields.allowOnly(List.of("log", "title"));
      return new Header(fields.line("log"), fields.has("title") ? fields.line("title") : "");
    } catch (BadEntry e) {
      throw new InputError(name, 1, e.getMessage());
    }
  }

  private static LogLine line(String name, int at, RawLine raw) {
    try {
      return LogLine.parse(
          raw.text().orElseThrow(() -> new BadEntry("the line is not text in UTF-8")));
    } catch (BadEntry e) {
      throw new InputError(name, at, e.getMessage());
    }
  }

  private static ObjectNode json(RawLine raw) {
    return raw.text().flatMap(LogLine::json).orElseThrow();
  }

  private static List<RawLine> lines(byte[] bytes) {
    List<RawLine> lines = new ArrayList<>();
    int from = 0;
    for (int i = 0; i < bytes.length; i++) {
      if (bytes[i] == '\n') {
        lines.add(new RawLine(TextFile.text(Arrays.copyOfRange(bytes, from, i)), i + 1 - from));
        from = i + 1;
      }
    }
    if (from < bytes.length) {
      byte[] rest = Arrays.copyOfRange(bytes, from, bytes.length);
      lines.add(new RawLine(TextFile.text(rest), rest.length));
    }
    return lines;
  }
}
