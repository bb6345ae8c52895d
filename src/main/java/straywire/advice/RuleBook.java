package straywire.advice;

import java.io.IOException;
import java.nio.file.Path;
import java.util.List;

/** The rules as a page for people: what each says, on what grounds, and what follows. */
public final class RuleBook {
  private RuleBook() {}

  /**
   * The page, in Markdown, of the rule files in {@code folder}.
   *
   * @throws straywire.format.InputError when a rule is not written in the agreed shape
   * @throws IOException when a file cannot be read
   */
  public static String page(Path folder) throws IOException {
    List<RuleText> rules = RuleText.all(folder);
    List<String> themes = rules.stream().map(RuleText::theme).distinct().toList();
    StringBuilder page = new StringBuilder();
    page.append("# Rule book\n\n")
        .append("Generated from `rules/*.drl`; do not edit. ")
        .append(rules.size())
        .append(" rules in ")
        .append(themes.size())
        .append(" files. A report quotes the id and the sentence.\n\n")
        .append("| theme | rules | about |\n|---|---|---|\n");
    for (String theme : themes) {
      long count = rules.stream().filter(r -> r.theme().equals(theme)).count();
      page.append("| [").append(theme).append("](#").append(theme).append(") | ");
      page.append(count).append(" | ").append(RuleText.about(folder, theme)).append(" |\n");
    }
    for (String theme : themes) {
      page.append("\n## ").append(theme).append("\n");
      rules.stream().filter(r -> r.theme().equals(theme)).forEach(r -> append(page, r));
    }
    return page.toString();
  }

  private static void append(StringBuilder page, RuleText rule) {
    page.append("\n### ").append(rule.id()).append("\n\n");
    page.append(rule.name()).append(".\n\n");
    page.append("Source: ").append(rule.source()).append(".\n\n```\n");
    page.append("when\n  ").append(rule.when()).append("\nthen\n  ").append(rule.then());
    page.append("\n```\n");
  }
}
