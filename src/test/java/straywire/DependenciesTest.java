package straywire;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.io.StringReader;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.SortedMap;
import java.util.TreeMap;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import javax.xml.parsers.DocumentBuilderFactory;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.w3c.dom.Element;
import org.w3c.dom.Node;
import org.w3c.dom.NodeList;
import org.xml.sax.InputSource;

/** Holds docs/dependencies.md against the build file, and what ships against both. */
class DependenciesTest {
  private static final Path PAGE = Path.of("docs", "dependencies.md");

  /** A library as the page or the build file names it. */
  private record Library(String version, boolean ships) {}

  @Test
  void thePageNamesEachLibraryOfTheBuildInItsVersion() throws Exception {
    SortedMap<String, Library> named = new TreeMap<>();
    rows().forEach((name, row) -> named.put(name, row.library()));
    assertThat(named).isEqualTo(inBuildFile());
  }

  @Test
  void eachLibraryHasAReasonAndALicence() throws IOException {
    rows()
        .forEach(
            (name, row) -> {
              assertThat(row.why()).as(name).hasSizeGreaterThan(4);
              assertThat(row.licence()).as(name).matches("[A-Z][A-Za-z0-9. -]+");
            });
  }

  @Test
  @Tag("slow")
  void theBillOfMaterialsNamesWhatShipsUnderTheLicencesOfThePage() throws IOException {
    JsonNode bill = new ObjectMapper().readTree(Path.of("target", "bom.json").toFile());
    SortedMap<String, JsonNode> components = new TreeMap<>();
    List<String> files = new ArrayList<>();
    for (JsonNode component : bill.path("components")) {
      String name = component.path("group").asText() + ":" + component.path("name").asText();
      components.put(name, component);
      files.add(
          component.path("name").asText() + "-" + component.path("version").asText() + ".jar");
    }
    try (var shipped = Files.list(Path.of("target", "lib"))) {
      assertThat(files)
          .containsExactlyInAnyOrderElementsOf(
              shipped.map(f -> f.getFileName().toString()).sorted().toList());
    }
    rows()
        .forEach(
            (name, row) -> {
              if (row.library().ships()) {
                assertThat(components).containsKey(name);
                List<String> licences = new ArrayList<>();
                for (JsonNode each : components.get(name).path("licenses")) {
                  licences.add(
                      each.has("expression")
                          ? each.path("expression").asText()
                          : each.path("license").path("id").asText());
                }
                // "BSD" alone, as one build file says, is taken for the old form of four clauses.
                assertThat(String.join(" OR ", licences).replace("BSD-4", "BSD-3"))
                    .as(name)
                    .isEqualTo(row.licence());
              }
            });
  }

  private record Row(Library library, String why, String licence) {}

  private static SortedMap<String, Row> rows() throws IOException {
    SortedMap<String, Row> rows = new TreeMap<>();
    Pattern form = Pattern.compile("\\| `([^`]+)` \\| ([^|]+) \\| ([^|]+) \\| ([^|]+) \\|");
    boolean ships = true;
    for (String line : Files.readAllLines(PAGE)) {
      if (line.startsWith("## ")) {
        ships = line.equals("## In the program");
      }
      Matcher row = form.matcher(line);
      if (row.matches()) {
        assertThat(rows).as("named once").doesNotContainKey(row.group(1));
        rows.put(
            row.group(1), new Row(new Library(row.group(2), ships), row.group(3), row.group(4)));
      }
    }
    return rows;
  }

  private static SortedMap<String, Library> inBuildFile() throws Exception {
    Element project =
        DocumentBuilderFactory.newInstance()
            .newDocumentBuilder()
            .parse(new InputSource(new StringReader(Files.readString(Path.of("pom.xml")))))
            .getDocumentElement();
    SortedMap<String, String> properties = new TreeMap<>();
    child(project, "properties").forEach(p -> properties.put(p.getTagName(), p.getTextContent()));
    // Versions of a family come from its list where the library itself names none.
    SortedMap<String, String> families = new TreeMap<>();
    for (Element managed : child(project, "dependencyManagement")) {
      for (Element family : elements(managed)) {
        families.put(text(family, "groupId"), resolved(text(family, "version"), properties));
      }
    }
    SortedMap<String, Library> libraries = new TreeMap<>();
    for (Element dependency : child(project, "dependencies")) {
      String group = text(dependency, "groupId");
      String version = text(dependency, "version");
      libraries.put(
          group + ":" + text(dependency, "artifactId"),
          new Library(
              version.isEmpty()
                  ? families.entrySet().stream()
                      .filter(f -> group.startsWith(f.getKey()))
                      .findFirst()
                      .orElseThrow()
                      .getValue()
                  : resolved(version, properties),
              !text(dependency, "scope").equals("test")));
    }
    return libraries;
  }

  private static String resolved(String version, SortedMap<String, String> properties) {
    return version.startsWith("${")
        ? properties.get(version.substring(2, version.length() - 1))
        : version;
  }

  private static List<Element> child(Element parent, String name) {
    return elements(parent).stream()
        .filter(e -> e.getTagName().equals(name))
        .findFirst()
        .map(DependenciesTest::elements)
        .orElseThrow();
  }

  private static String text(Element parent, String name) {
    return elements(parent).stream()
        .filter(e -> e.getTagName().equals(name))
        .findFirst()
        .map(Node::getTextContent)
        .map(String::trim)
        .orElse("");
  }

  private static List<Element> elements(Element parent) {
    List<Element> elements = new ArrayList<>();
    NodeList children = parent.getChildNodes();
    for (int i = 0; i < children.getLength(); i++) {
      if (children.item(i) instanceof Element element) {
        elements.add(element);
      }
    }
    return elements;
  }
}
