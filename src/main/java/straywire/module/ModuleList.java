package straywire.module;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import straywire.format.InputError;
import straywire.format.TextFile;
import straywire.parts.PartLibrary;

/**
 * A module as a plain list, one line for each rail, part, control, lamp, capacitor, word, net and
 * step of the exercise, and the module file it makes. Each line of the list makes one line of the
 * file, so that a mistake the file is refused for is told with the line of the list.
 */
public final class ModuleList {
  private static final String HOW =
      "is no line of a list; write a rail (VCC supply), a part (U1 74x08 LS), a control (A switch"
          + " GND VCC 1000), a lamp (L lamp GND 2200), a resistor to a rail (R1 resistor 4k7 VCC) or between two nets (R1 resistor 1k), a capacitor to ground (U1 capacitor 100n), a word (in = A B), a net (SUM: U1.3 L) or a"
          + " step (- {look: [L]})";

  /** What a change-over does in its other position. */
  private static final List<String> OTHER = List.of("other-throw", "other-rail");

  private static final String CAPACITORS = "capacitors-to-ground";

  private final String file;
  private final Map<String, List<Row>> sections = new TreeMap<>();
  private final Map<String, String> kinds = new TreeMap<>();

  /** A line of the module file and the line of the list it comes from. */
  private record Row(String text, int line) {}

  private ModuleList(String file) {
    this.file = file;
  }

  /**
   * Makes a module file of a list and checks it.
   *
   * @return the text of the module file
   * @throws InputError naming the line of the list when something is wrong in it
   */
  public static String moduleFile(Path list, String name, PartLibrary library) {
    ModuleList made = new ModuleList(list.toString());
    String[] lines = TextFile.read(list).split("\\R", -1);
    for (int i = 0; i < lines.length; i++) {
      made.take(lines[i].strip(), i + 1);
    }
    if (!made.kinds.containsValue("rail")) {
      throw new InputError(list.toString(), 0, "names no rail; a line such as VCC supply does");
    }
    List<Row> rows = made.rows(name);
    String text = rows.stream().map(row -> row.text() + "\n").collect(Collectors.joining());
    try {
      ModuleFile.parse(list.toString(), text, library);
    } catch (InputError e) {
      throw made.atTheList(e, rows);
    }
    return text;
  }

  private void take(String line, int number) {
    if (line.isEmpty() || line.startsWith("#")) {
      return;
    }
    List<String> words = Arrays.asList(line.split("\\s+"));
    String first = words.get(0);
    String second = words.size() > 1 ? words.get(1) : "";
    if (line.startsWith("- ")) {
      put("exercise", line, number);
    } else if (first.endsWith(":") && words.size() > 1) {
      net(first.substring(0, first.length() - 1), words.subList(1, words.size()), number);
    } else if (second.equals("=") && words.size() > 2) {
      word(first, words.subList(2, words.size()), number);
    } else if ((second.equals("supply") || second.equals("ground")) && isRail(words)) {
      kinds.put(first, "rail");
      String linked = words.size() == 4 ? ", linked-to: " + quoted(words.get(3)) : "";
      put("rails", first + ": {level: " + second + linked + "}", number);
    } else if (second.equals("lamp") && words.size() == 4) {
      kinds.put(first, "lamps");
      put("lamps", fields(first, "to", words.get(2), "ohms", words.get(3)), number);
    } else if (second.equals("resistor") && words.size() == 3) {
      put("resistors", fields(first, "ohms", words.get(2)), number);
    } else if (second.equals("resistor") && words.size() == 4) {
      // Rail and ohms in either order: a lamp has the rail first.
      boolean railFirst = kinds.getOrDefault(words.get(2), "").equals("rail");
      String rail = words.get(railFirst ? 2 : 3);
      String ohms = words.get(railFirst ? 3 : 2);
      put("resistors", fields(first, "ohms", ohms, "to", rail), number);
    } else if (second.equals("capacitor") && words.size() == 3) {
      put(CAPACITORS, quoted(first) + ": " + quoted(words.get(2)), number);
    } else if (second.equals("switch") || second.equals("button")) {
      control(words, number);
    } else if (words.size() > 2) {
      String note = String.join(" ", words.subList(3, words.size()));
      put(
          "parts",
          note.isEmpty()
              ? fields(first, "type", second, "family", words.get(2))
              : fields(first, "type", second, "family", words.get(2), "note", note),
          number);
    } else {
      throw new InputError(file, number, "\"" + line + "\" " + HOW);
    }
  }

  private static boolean isRail(List<String> words) {
    return words.size() == 2 || (words.size() == 4 && words.get(2).equals("from"));
  }

  private void control(List<String> words, int number) {
    if (words.size() > 2 && words.get(2).equals("low-throw")) {
      betweenLines(words, number);
      return;
    }
    String[] keys = {"kind", "closes-to", "pull-to", "pull-ohms", "rest"};
    int last = words.size() - 2;
    boolean changesOver = last > 2 && OTHER.contains(words.get(last));
    int plain = changesOver ? last : words.size();
    if (plain != 3 && plain != 5 && plain != 6) {
      throw new InputError(
          file,
          number,
          "a control is: label, switch or button, the rail its contact closes to, then the rail and"
              + " ohms of its resistor, then low or high at rest; such as A switch GND VCC 1000"
              + " low; a change-over goes on with other-throw and a label, or other-rail and a rail;"
              + " one between lines is P switch low-throw A high-throw B");
    }
    kinds.put(words.get(0), "controls");
    List<String> pairs = new ArrayList<>();
    for (int i = 1; i < plain; i++) {
      pairs.add(keys[i - 1]);
      pairs.add(words.get(i));
    }
    if (changesOver) {
      pairs.addAll(words.subList(last, words.size()));
    }
    put("controls", fields(words.get(0), pairs.toArray(String[]::new)), number);
  }

  private void betweenLines(List<String> words, int number) {
    if (words.size() < 6 || words.size() > 7 || !words.get(4).equals("high-throw")) {
      throw new InputError(
          file,
          number,
          "a change-over between lines is: label, switch or button, low-throw and a label,"
              + " high-throw and a label, then low or high at rest; such as P switch low-throw A"
              + " high-throw B low");
    }
    kinds.put(words.get(0), "controls");
    List<String> pairs = new ArrayList<>(List.of("kind"));
    pairs.addAll(words.subList(1, 6));
    if (words.size() == 7) {
      pairs.addAll(List.of("rest", words.get(6)));
    }
    put("controls", fields(words.get(0), pairs.toArray(String[]::new)), number);
  }

  private void word(String label, List<String> members, int number) {
    String kind = kinds.getOrDefault(members.get(0), "");
    if (!kind.equals("controls") && !kind.equals("lamps")) {
      throw new InputError(
          file,
          number,
          "a word is made of switches or lamps that stand above it; "
              + members.get(0)
              + " is none");
    }
    put("words", label + ": {" + kind + ": " + listed(members) + "}", number);
  }

  /** A net called like a rail starts from it. */
  private void net(String label, List<String> ends, int number) {
    List<String> all = new ArrayList<>(ends);
    if (kinds.getOrDefault(label, "").equals("rail") && !all.contains(label)) {
      all.add(0, label);
    }
    put("nets", label + ": " + listed(all), number);
  }

  private void put(String section, String text, int line) {
    sections.computeIfAbsent(section, s -> new ArrayList<>()).add(new Row(text, line));
  }

  private static String fields(String label, String... pairs) {
    List<String> fields = new ArrayList<>();
    for (int i = 0; i < pairs.length; i += 2) {
      boolean number = pairs[i].endsWith("ohms") && pairs[i + 1].matches("\\d+");
      fields.add(pairs[i] + ": " + (number ? pairs[i + 1] : quoted(pairs[i + 1])));
    }
    return label + ": {" + String.join(", ", fields) + "}";
  }

  private static String listed(List<String> labels) {
    return labels.stream().map(ModuleList::quoted).collect(Collectors.joining(", ", "[", "]"));
  }

  /** Plain where YAML takes it for a text, else in quotes. */
  private static String quoted(String text) {
    return text.matches("[A-Za-z+][A-Za-z0-9_+./-]*")
        ? text
        : "\"" + text.replace("\\", "\\\\").replace("\"", "\\\"") + "\"";
  }

  private List<Row> rows(String name) {
    List<Row> rows = new ArrayList<>();
    for (String head :
        List.of(
            "format: straywire-module/1",
            "name: " + quoted(name),
            "title: " + quoted("Module " + name))) {
      rows.add(new Row(head, 0));
    }
    if (!sections.containsKey("exercise")) {
      put("exercise", "- {power: on}", 0);
      String lamps =
          kinds.entrySet().stream()
              .filter(kind -> kind.getValue().equals("lamps"))
              .map(kind -> quoted(kind.getKey()))
              .collect(Collectors.joining(", "));
      put("exercise", "- {look: [" + lamps + "]}", 0);
    }
    for (String section :
        List.of(
            "rails",
            "parts",
            "controls",
            "lamps",
            "resistors",
            "words",
            "nets",
            CAPACITORS,
            "exercise")) {
      if (sections.containsKey(section)) {
        rows.add(new Row("", 0));
        rows.add(new Row(section + ":", 0));
        sections.get(section).forEach(row -> rows.add(new Row("  " + row.text(), row.line())));
      }
    }
    return rows;
  }

  /** The same complaint with the line of the list in place of that of the module file. */
  private InputError atTheList(InputError e, List<Row> rows) {
    Matcher at = Pattern.compile(Pattern.quote(file) + ":(\\d+): (.*)").matcher(e.getMessage());
    if (!at.matches()) {
      return e;
    }
    int line = Integer.parseInt(at.group(1));
    return new InputError(file, line <= rows.size() ? rows.get(line - 1).line() : 0, at.group(2));
  }

  /**
   * A shipped module's file under another name.
   *
   * @throws InputError when the file has no line that gives its name
   */
  public static String renamed(Path from, String name) {
    String text = TextFile.read(from);
    Matcher named = Pattern.compile("(?m)^name: .*$").matcher(text);
    if (!named.find()) {
      throw new InputError(from.toString(), 0, "has no line that starts with name:");
    }
    return named.replaceFirst(Matcher.quoteReplacement("name: " + quoted(name)));
  }
}
