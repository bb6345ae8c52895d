package straywire.pages;

import java.util.List;
import straywire.parts.PartLibrary;

/** The page of the logic families, in Markdown. */
final class FamilyPage {
  private FamilyPage() {}

  static String of(PartLibrary library) {
    StringBuilder page = new StringBuilder();
    page.append("# Families\n\n[All parts](README.md). ");
    page.append("In the terminal: `straywire part family LS`\n\n");
    page.append("The electrical habits at 5 V that the simulation and the reading of a meter go ");
    page.append("by. A family is named beside a part in a module: `part: 74x00, family: LS`.\n");
    for (String name : library.families()) {
      page.append("\n## ").append(name).append("\n\n");
      page.append(Markdown.row("habit", "value")).append("|---|---|\n");
      FamilyTable table = FamilyTable.of(library.family(name).orElseThrow());
      for (FamilyTable.Habit habit : table.habits()) {
        page.append(Markdown.row(habit.name(), habit.value()));
      }
      List<String> sources = library.familySources(name);
      page.append("\nSources:\n\n").append(Markdown.list(sources, "None."));
    }
    return page.toString();
  }
}
