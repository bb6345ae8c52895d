package straywire.pages;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.SortedMap;
import java.util.TreeMap;
import straywire.parts.Part;
import straywire.parts.PartLibrary;

/** All pages about the parts and families of a library. The same library gives the same bytes. */
public final class PartPages {
  private PartPages() {}

  /** The text of each page and drawing, by its file name. */
  public static SortedMap<String, String> of(PartLibrary library) {
    List<Part> parts = new PartSearch(library).all();
    SortedMap<String, String> pages = new TreeMap<>();
    pages.put("README.md", IndexPage.of(library, parts));
    pages.put("families.md", FamilyPage.of(library));
    for (Part part : parts) {
      pages.put(part.type() + ".md", PartPage.of(part, library.notes(part.type()).orElseThrow()));
      pages.put(part.type() + ".svg", PinoutSvg.of(part));
    }
    return pages;
  }

  /**
   * Writes all pages into a folder, which is made where it is missing.
   *
   * @throws UncheckedIOException when a file cannot be written
   */
  public static void write(Map<String, String> pages, Path folder) {
    try {
      Files.createDirectories(folder);
      for (Map.Entry<String, String> page : pages.entrySet()) {
        Files.writeString(folder.resolve(page.getKey()), page.getValue(), StandardCharsets.UTF_8);
      }
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }
}
