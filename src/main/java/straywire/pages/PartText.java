package straywire.pages;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import straywire.logic.PinSpec;
import straywire.parts.Family;
import straywire.parts.Part;
import straywire.parts.PartLibrary;
import straywire.parts.PartNotes;

/** Parts and families as lines of text for a terminal. */
public final class PartText {
  private static final int WIDTH = 96;

  private final PartLibrary library;
  private final String notch;

  /**
   * @param notch one letter for the notch of a chip
   */
  public PartText(PartLibrary library, String notch) {
    this.library = library;
    this.notch = notch;
  }

  /** One line a part. */
  public List<String> listed(List<Part> parts) {
    return parts.stream()
        .map(
            part ->
                String.format(
                    Locale.ROOT, "%-8s %2d pins  %s", part.type(), part.pinCount(), part.title()))
        .toList();
  }

  /** One line a part, under the titles of the groups. */
  public List<String> grouped(List<Part> parts) {
    List<String> lines = new ArrayList<>();
    PartOrder.grouped(library, parts)
        .forEach(
            (group, members) -> {
              if (!lines.isEmpty()) {
                lines.add("");
              }
              lines.add(group.title() + " (" + group.word() + ")");
              listed(members).forEach(line -> lines.add("  " + line));
            });
    return lines;
  }

  /** All that is known of a part. */
  public List<String> shown(Part part) {
    PartNotes notes = library.notes(part.type()).orElseThrow();
    List<String> lines = new ArrayList<>();
    lines.add(part.type() + ": " + part.title());
    lines.add("");
    lines.addAll(PinoutText.of(part, notch));
    lines.add("");
    lines.addAll(wrapped(part.function(), ""));
    lines.add(PartPage.supply(part));
    lines.add("");
    lines.add("Pins:");
    int wide = part.pins().stream().mapToInt(p -> p.name().length()).max().orElse(1);
    for (PinSpec pin : part.pins()) {
      lines.add(
          String.format(
              Locale.ROOT,
              "  %2d  %-" + wide + "s  %s",
              pin.number(),
              pin.name(),
              PinWords.of(pin)));
    }
    lines.add("");
    lines.add("Function table (from top to bottom; ^ rising, v falling, Z let go, Q0 as before):");
    notes
        .table()
        .stripTrailing()
        .lines()
        .forEach(line -> lines.add(line.isEmpty() ? "" : "  " + line));
    lines.add("");
    lines.add("An open input:");
    lines.addAll(wrapped(OpenInput.text(part, notes), "  "));
    list(lines, "Classic mistakes:", notes.mistakes());
    list(lines, "Where makers and drawings differ:", notes.disagreements());
    list(lines, "Sources:", notes.sources());
    return lines;
  }

  /** A family's profile with its sources. */
  public List<String> shown(Family family) {
    List<String> lines = new ArrayList<>();
    lines.add("Family " + family.name() + " at 5 V:");
    for (FamilyTable.Habit habit : FamilyTable.of(family).habits()) {
      lines.add(String.format(Locale.ROOT, "  %-26s %s", habit.name(), habit.value()));
    }
    list(lines, "Sources:", library.familySources(family.name()));
    return lines;
  }

  private static void list(List<String> lines, String title, List<String> items) {
    lines.add("");
    lines.add(title);
    if (items.isEmpty()) {
      lines.add("  none known");
    }
    for (String item : items) {
      List<String> text = wrapped(item, "    ");
      lines.add("  - " + text.get(0).strip());
      lines.addAll(text.subList(1, text.size()));
    }
  }

  private static List<String> wrapped(String text, String indent) {
    return Wrapped.lines(indent, indent, text, WIDTH);
  }
}
