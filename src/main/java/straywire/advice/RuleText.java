package straywire.advice;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import straywire.format.InputError;

/**
 * A rule as written in its file.
 *
 * @param theme name of the file without its ending
 * @param name the sentence
 * @param source where the knowledge comes from
 * @param when the conditions, one a line
 * @param then what follows
 */
record RuleText(String theme, String id, String name, String source, String when, String then) {
  private static final Pattern RULE =
      Pattern.compile(
          "rule \"([^\"]*)\"\\s+@id\\(([^)]*)\\)\\s+@source\\(\"([^\"]*)\"\\)"
              + "\\s+when\\s+(.*?)\\s+then\\s+(.*?)\\s+end(?=\\s|\\z)",
          Pattern.DOTALL);

  /**
   * All rules of a folder of {@code .drl} files, by file and then in the order of the file.
   *
   * @throws InputError when a rule is not written as name, id, source, when, then, end
   * @throws IOException when a file cannot be read
   */
  static List<RuleText> all(Path folder) throws IOException {
    List<RuleText> rules = new ArrayList<>();
    try (Stream<Path> files = Files.list(folder)) {
      for (Path file : files.filter(f -> f.toString().endsWith(".drl")).sorted().toList()) {
        rules.addAll(ofFile(file));
      }
    }
    return rules;
  }

  private static List<RuleText> ofFile(Path file) throws IOException {
    String text = Files.readString(file);
    String theme = file.getFileName().toString().replace(".drl", "");
    List<RuleText> rules = new ArrayList<>();
    Matcher rule = RULE.matcher(text);
    while (rule.find()) {
      rules.add(
          new RuleText(
              theme, rule.group(2), rule.group(1), rule.group(3), rule.group(4), rule.group(5)));
    }
    long meant = text.lines().filter(l -> l.startsWith("rule ")).count();
    if (rules.size() != meant) {
      throw new InputError(
          file.toString(),
          0,
          meant + " rules start here but " + rules.size() + " have name, @id, @source, when, then");
    }
    return rules;
  }

  /** The comment at the head of the file that says what its rules have in common. */
  static String about(Path folder, String theme) throws IOException {
    StringBuilder about = new StringBuilder();
    for (String line : Files.readAllLines(folder.resolve(theme + ".drl"))) {
      if (line.startsWith("// ")) {
        about.append(about.isEmpty() ? "" : " ").append(line.substring(3));
      } else if (!about.isEmpty()) {
        break;
      }
    }
    return about.toString();
  }
}
