package straywire.pages;

import java.util.List;
import java.util.Locale;
import straywire.logic.PinKind;
import straywire.logic.PinSpec;
import straywire.parts.Part;
import straywire.parts.PartNotes;

/** The page of one part type, in Markdown; its drawing is a file of its own beside it. */
final class PartPage {
  private static final String NO_DISAGREEMENT =
      "None known among the sources below; hold the drawing against your maker's data sheet.";

  private PartPage() {}

  static String of(Part part, PartNotes notes) {
    String type = part.type();
    StringBuilder page = new StringBuilder();
    page.append("# ").append(type).append(": ").append(Markdown.plain(part.title()));
    page.append("\n\n[All parts](README.md), ");
    page.append(notes.group().title().toLowerCase(Locale.ROOT)).append(". ");
    page.append("In the terminal: `straywire part show ").append(type).append("`\n\n");
    page.append("![Pins of the ").append(type).append("](").append(type).append(".svg)\n\n");
    page.append(Markdown.plain(part.function())).append("\n\n");
    page.append(supply(part)).append("\n\n");
    page.append("| pin | name | what it is |\n|---|---|---|\n");
    for (PinSpec pin : part.pins()) {
      page.append(
          Markdown.row(String.valueOf(pin.number()), Markdown.plain(pin.name()), PinWords.of(pin)));
    }
    page.append("\n## Function table\n\n```text\n");
    page.append(notes.table().stripTrailing()).append("\n```\n\n");
    page.append("[How to read it](README.md#how-to-read-a-page)\n");
    section(page, "An open input", Markdown.plain(OpenInput.text(part, notes)) + "\n");
    section(page, "Classic mistakes", Markdown.list(notes.mistakes(), "None noted."));
    section(
        page,
        "Where makers and drawings differ",
        Markdown.list(notes.disagreements(), NO_DISAGREEMENT));
    section(page, "Sources", Markdown.list(notes.sources(), "None."));
    return page.toString();
  }

  private static void section(StringBuilder page, String title, String text) {
    page.append("\n## ").append(title).append("\n\n").append(text);
  }

  /** Which pins are fed, and whether they are where one expects them. */
  static String supply(Part part) {
    List<PinSpec> supply = pins(part, PinKind.SUPPLY);
    List<PinSpec> ground = pins(part, PinKind.GROUND);
    boolean usual =
        supply.size() == 1
            && supply.get(0).number() == part.pinCount()
            && ground.size() == 1
            && ground.get(0).number() == part.pinCount() / 2;
    return "Supply at "
        + listed(supply)
        + ", ground at "
        + listed(ground)
        + (usual ? "." : ": not at the usual corners.");
  }

  private static List<PinSpec> pins(Part part, PinKind kind) {
    return part.pins().stream().filter(pin -> pin.kind() == kind).toList();
  }

  private static String listed(List<PinSpec> pins) {
    return (pins.size() == 1 ? "pin " : "pins ")
        + String.join(" and ", pins.stream().map(p -> p.number() + " (" + p.name() + ")").toList());
  }
}
