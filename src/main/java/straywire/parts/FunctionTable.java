package straywire.parts;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import straywire.format.InputError;
import straywire.logic.LogicParser;
import straywire.logic.Names;

/**
 * A function table as on a data sheet: rows worked through from top to bottom, inputs left of the
 * bar, outputs right. A block of rows may be meant for each of several equal units.
 */
record FunctionTable(List<Row> rows) {
  /** What an input does in a row. */
  enum Drive {
    LOW,
    HIGH,
    /** Any level: the row holds for both, and for an unknown one. */
    ANY,
    RISING,
    FALLING
  }

  /** What an output shows after a row. */
  enum Show {
    LOW,
    HIGH,
    /** Has let go of its line. */
    OFF,
    /** Drives, but cannot be told. */
    UNKNOWN,
    /** As before the row. */
    SAME,
    /** The complement of before the row. */
    TURNED
  }

  /**
   * One row, with pin numbers.
   *
   * @param inputs only the pins named; the others keep what they had
   */
  record Row(Map<Integer, Drive> inputs, Map<Integer, Show> outputs, int line) {}

  private record Column(List<String> pins, boolean output) {}

  static FunctionTable read(String file, int firstLine, String text, Part part) {
    Reader reader = new Reader(file, part);
    int number = firstLine;
    List<String> block = new ArrayList<>();
    int blockLine = number;
    for (String line : (text + "\n\n").split("\n", -1)) {
      if (line.isBlank()) {
        if (!block.isEmpty()) {
          reader.block(block, blockLine);
          block.clear();
        }
        blockLine = number + 1;
      } else {
        block.add(line.strip());
      }
      number++;
    }
    if (reader.rows.isEmpty()) {
      throw new InputError(file, firstLine, "table: no rows");
    }
    return new FunctionTable(List.copyOf(reader.rows));
  }

  /** Reads blocks of the form: optional {@code each} line, heading, rows. */
  private static final class Reader {
    private final String file;
    private final Part part;
    private final List<Row> rows = new ArrayList<>();

    Reader(String file, Part part) {
      this.file = file;
      this.part = part;
    }

    void block(List<String> lines, int line) {
      if (!lines.get(0).startsWith("each ")) {
        unit(lines, line);
        return;
      }
      String list = lines.get(0).substring(5).replace(":", "");
      for (String item : LogicParser.items(file, line, list)) {
        unit(
            lines.subList(1, lines.size()).stream().map(l -> l.replace("#", item)).toList(),
            line + 1);
      }
    }

    private void unit(List<String> lines, int line) {
      if (lines.size() < 2) {
        throw new InputError(file, line, "table: expected a heading and at least one row");
      }
      List<Column> columns = heading(lines.get(0), line);
      for (int i = 1; i < lines.size(); i++) {
        row(columns, lines.get(i), line + i);
      }
    }

    private List<Column> heading(String heading, int line) {
      List<Column> columns = new ArrayList<>();
      boolean output = false;
      for (String word : Names.words(heading)) {
        if (word.equals("|")) {
          output = true;
        } else {
          columns.add(new Column(pins(word, line), output));
        }
      }
      if (!output) {
        throw new InputError(file, line, "table: expected \"|\" between inputs and outputs");
      }
      return columns;
    }

    private List<String> pins(String word, int line) {
      if (part.pinNamed(word).isPresent()) {
        return List.of(word);
      }
      List<String> pins = LogicParser.items(file, line, word.replace(",", " "));
      for (String pin : pins) {
        if (part.pinNamed(pin).isEmpty()) {
          throw new InputError(file, line, "table: no pin is named " + pin);
        }
      }
      return pins;
    }

    private void row(List<Column> columns, String text, int line) {
      List<String> values = Names.words(text.replace("|", " "));
      if (values.size() != columns.size()) {
        throw new InputError(
            file, line, "table: " + values.size() + " values under " + columns.size() + " columns");
      }
      Map<Integer, Drive> inputs = new LinkedHashMap<>();
      Map<Integer, Show> outputs = new LinkedHashMap<>();
      for (int i = 0; i < values.size(); i++) {
        Column column = columns.get(i);
        List<String> marks = marks(column, values.get(i), line);
        for (int p = 0; p < marks.size(); p++) {
          int pin = part.pinNamed(column.pins().get(p)).orElseThrow().number();
          if (column.output()) {
            outputs.put(pin, show(marks.get(p), line));
          } else {
            inputs.put(pin, drive(marks.get(p), line));
          }
        }
      }
      rows.add(new Row(inputs, outputs, line));
    }

    /** One mark for all pins of a column, or one letter for each. */
    private List<String> marks(Column column, String value, int line) {
      int pins = column.pins().size();
      if (value.length() == 1 || value.equals("Q0") || value.equals("/Q0")) {
        return java.util.Collections.nCopies(pins, value);
      }
      if (value.length() != pins) {
        throw new InputError(
            file, line, "table: " + value + " does not fit " + String.join(" ", column.pins()));
      }
      return value.chars().mapToObj(c -> String.valueOf((char) c)).toList();
    }

    private Drive drive(String mark, int line) {
      return Optional.ofNullable(
              Map.of(
                      "L", Drive.LOW,
                      "H", Drive.HIGH,
                      "X", Drive.ANY,
                      "^", Drive.RISING,
                      "v", Drive.FALLING)
                  .get(mark))
          .orElseThrow(
              () ->
                  new InputError(
                      file, line, "table: an input is L, H, X, ^ (rising) or v, not " + mark));
    }

    private Show show(String mark, int line) {
      return Optional.ofNullable(
              Map.of(
                      "L", Show.LOW,
                      "H", Show.HIGH,
                      "Z", Show.OFF,
                      "X", Show.UNKNOWN,
                      "Q0", Show.SAME,
                      "/Q0", Show.TURNED)
                  .get(mark))
          .orElseThrow(
              () ->
                  new InputError(
                      file, line, "table: an output is L, H, Z, X, Q0 or /Q0, not " + mark));
    }
  }
}
