package straywire.pages;

import java.util.List;
import straywire.parts.Part;
import straywire.parts.PartLibrary;

/** The page that leads to the pages of all parts, by function group. */
final class IndexPage {
  private static final String HEAD =
      """
      # Parts

      A page for each of the %d part types that ship: pins, function, what an open input does, the
      classic mistakes, and where makers differ. The [families](families.md) have a page as well. A
      part of your own is [a data file](../formats/part.md).

      All pages here are written by `straywire part pages --write docs/parts` from the part files;
      change those, not these. In the terminal, `straywire part list`, `part search WORDS` and
      `part show 74x189` say the same.
      """;

  private static final String READING =
      """

      ## How to read a page

      The drawing shows the chip from above with its notch up. The sign beside a pin tells what the
      pin does:

      - a full triangle towards the chip is an input, away from it an output;
      - a hollow triangle is an output that can let go of its line (three-state), a triangle of
        which only the lower half is full one that can only pull low (open collector);
      - a diamond is input and output in turn;
      - plus and ground signs are the supply pins, a cross is a pin that leads nowhere.

      A bar over a name, written with a slash in text (`/CS`), means that the pin acts when it is
      low, or that it shows a complement. `SH//LD` shifts when high and loads when low. 74x189 is
      the 189 of any family: 74189, 74LS189, 74F189.

      A function table is worked through from top to bottom, inputs left of the bar, outputs right
      of it. `D3..D0` and `C,B,A` are groups of pins with a letter for each, or one letter for all.
      `each 1..4` means that the block holds for each of these units.

      | input | | output | |
      |---|---|---|---|
      | `L` `H` | low, high | `L` `H` | drives low, high; `H` of an open collector is let go |
      | `X` | any level | `Z` | has let go |
      | `^` `v` | rising, falling edge | `Q0` `/Q0` | as before the row; its complement |
      | | | `X` | drives, but cannot be told |

      Each table is worked through by a test. So is, for each part but the 2114, a second one taken
      from a maker's table or description, which the sources of the part name. Each function is
      compared with a description in Verilog under an independent simulator. On the page of families
      a source that reads "from memory" is data-book knowledge that was not looked up again.
      """;

  private IndexPage() {}

  static String of(PartLibrary library, List<Part> parts) {
    StringBuilder page = new StringBuilder(HEAD.formatted(parts.size()));
    PartOrder.grouped(library, parts)
        .forEach(
            (group, members) -> {
              page.append("\n## ").append(group.title()).append("\n\n");
              page.append(Markdown.row("part", "what it is", "pins")).append("|---|---|---|\n");
              for (Part part : members) {
                page.append(
                    Markdown.row(
                        "[" + part.type() + "](" + part.type() + ".md)",
                        Markdown.plain(part.title()),
                        String.valueOf(part.pinCount())));
              }
            });
    return page.append(READING).toString();
  }
}
