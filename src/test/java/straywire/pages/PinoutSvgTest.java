package straywire.pages;

import static org.assertj.core.api.Assertions.assertThat;

import java.awt.geom.Rectangle2D;
import java.io.ByteArrayInputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.Stream;
import javax.xml.parsers.DocumentBuilderFactory;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import org.w3c.dom.Element;
import org.w3c.dom.NodeList;
import straywire.logic.PinSpec;
import straywire.parts.OwnParts;
import straywire.parts.Part;
import straywire.parts.ShippedParts;

class PinoutSvgTest {
  private static final ShippedParts PARTS = new ShippedParts();
  private static final double LETTER = 0.6;

  @TempDir private Path folder;

  static Stream<String> types() {
    return PARTS.types().stream();
  }

  private static Element svg(Part part) throws Exception {
    byte[] bytes = PinoutSvg.of(part).getBytes(StandardCharsets.UTF_8);
    return DocumentBuilderFactory.newInstance()
        .newDocumentBuilder()
        .parse(new ByteArrayInputStream(bytes))
        .getDocumentElement();
  }

  private static List<Element> texts(Element svg) {
    NodeList nodes = svg.getElementsByTagName("text");
    List<Element> texts = new ArrayList<>();
    for (int i = 0; i < nodes.getLength(); i++) {
      texts.add((Element) nodes.item(i));
    }
    return texts;
  }

  /** The room that letters take, as their length is stated in the drawing. */
  private static Rectangle2D room(Element text) {
    double size = Double.parseDouble(text.getAttribute("font-size"));
    double x = Double.parseDouble(text.getAttribute("x"));
    double wide = LETTER * size * text.getTextContent().length();
    String anchor = text.getAttribute("text-anchor");
    double left = anchor.equals("end") ? x - wide : anchor.equals("middle") ? x - wide / 2 : x;
    // A third of a unit is rounding.
    double y = Double.parseDouble(text.getAttribute("y"));
    return new Rectangle2D.Double(left + 0.3, y - size * 0.75, wide - 0.6, size * 0.9);
  }

  private static void checkRoom(Part part) throws Exception {
    Element svg = svg(part);
    Rectangle2D whole =
        new Rectangle2D.Double(2, 2, 396, Double.parseDouble(svg.getAttribute("height")) - 4);
    List<Element> texts = texts(svg);
    for (int i = 0; i < texts.size(); i++) {
      String text = texts.get(i).getTextContent();
      assertThat(whole.contains(room(texts.get(i))))
          .as("%s: %s inside", part.type(), text)
          .isTrue();
      for (int j = 0; j < i; j++) {
        assertThat(room(texts.get(i)).intersects(room(texts.get(j))))
            .as("%s: %s over %s", part.type(), text, texts.get(j).getTextContent())
            .isFalse();
      }
    }
  }

  @ParameterizedTest
  @MethodSource("types")
  void noTwoTextsOverlapAndAllAreInside(String type) throws Exception {
    checkRoom(PARTS.part(type).orElseThrow());
  }

  @ParameterizedTest
  @MethodSource("types")
  void namesAndNumbersCanBeReadAtFourHundredPixels(String type) throws Exception {
    Part part = PARTS.part(type).orElseThrow();
    Element svg = svg(part);
    assertThat(svg.getAttribute("width")).isEqualTo("400");
    assertThat(texts(svg))
        .allMatch(text -> Double.parseDouble(text.getAttribute("font-size")) >= 12);
    List<String> shown = texts(svg).stream().map(Element::getTextContent).toList();
    for (PinSpec pin : part.pins()) {
      assertThat(shown).contains(String.valueOf(pin.number()));
      PinName.of(pin.name()).pieces().forEach(piece -> assertThat(shown).contains(piece.text()));
    }
  }

  @Test
  void aBarStandsOverEachActiveLowSignal() throws Exception {
    NodeList lines = svg(PARTS.part("74x138").orElseThrow()).getElementsByTagName("line");
    // Two enables, eight outputs, and one in the explanation.
    assertThat(lines.getLength()).isEqualTo(11);
  }

  @Test
  void aPartOfSixtyFourPinsWithLongNamesFitsToo() throws Exception {
    StringBuilder inputs = new StringBuilder();
    for (int pin = 1; pin <= 61; pin++) {
      inputs.append(pin).append(": /A_VERY_LONG_NAME").append(pin).append(", ");
    }
    String text =
        """
        format: straywire-part/1
        type: giant-with-long-name
        title: A giant
        function: Y is A.
        pins:
          input: {%s}
          output: {62: Y}
          ground: {63: GND}
          supply: {64: VCC}
        logic: |
          Y = /A_VERY_LONG_NAME1
          each 2..61: ignore /A_VERY_LONG_NAME#
        table: |
          /A_VERY_LONG_NAME1 | Y
          L | L
          H | H
        open-input: Reads as 1.
        sources: ["pins: none"]
        """;
    Path file =
        Files.writeString(
            folder.resolve("giant.yaml"), text.formatted(inputs.substring(0, inputs.length() - 2)));
    checkRoom(OwnParts.beside(PARTS, file).part("giant-with-long-name").orElseThrow());
  }
}
