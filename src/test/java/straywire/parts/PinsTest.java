package straywire.parts;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import straywire.logic.PinKind;

/** Pin tables against pins.json, which was collected apart from the part files, with sources. */
class PinsTest {
  private static final ShippedParts PARTS = new ShippedParts();

  private static final Map<String, PinKind> KINDS =
      Map.of(
          "I", PinKind.INPUT,
          "O", PinKind.OUTPUT,
          "Z", PinKind.TRISTATE,
          "OC", PinKind.OPEN_COLLECTOR,
          "IO", PinKind.BIDIRECTIONAL,
          "IO-OC", PinKind.BIDIRECTIONAL,
          "NC", PinKind.NOT_CONNECTED);

  private static JsonNode facts() {
    try {
      return new ObjectMapper()
          .readTree(Files.readString(Path.of("src/test/resources/parts/pins.json")));
    } catch (IOException e) {
      throw new IllegalStateException(e);
    }
  }

  static Stream<String> types() {
    return PARTS.types().stream();
  }

  @Test
  void everyPartOfTheCollectionIsShippedAndNoOther() {
    List<String> collected = new ArrayList<>();
    facts().fieldNames().forEachRemaining(collected::add);
    assertThat(PARTS.types()).hasSize(109).containsExactlyInAnyOrderElementsOf(collected);
  }

  @ParameterizedTest
  @MethodSource("types")
  void pinsAndSupplyAreThoseOfTheNamedSources(String type) {
    JsonNode fact = facts().get(type);
    Part part = PARTS.part(type).orElseThrow();
    List<String> expected = new ArrayList<>();
    for (JsonNode pin : fact.get("pins")) {
      int number = expected.size() + 1;
      boolean supply = number == fact.get("vcc").asInt();
      String letters = pin.get(1).asText();
      PinKind kind =
          letters.equals("P") ? supply ? PinKind.SUPPLY : PinKind.GROUND : KINDS.get(letters);
      expected.add(number + " " + pin.get(0).asText() + " " + kind);
    }
    assertThat(part.pins().stream().map(p -> p.number() + " " + p.name() + " " + p.kind()))
        .as(fact.get("source").asText())
        .isEqualTo(expected);
    assertThat(part.pinOf(PinKind.SUPPLY)).isEqualTo(fact.get("vcc").asInt());
    assertThat(part.pinOf(PinKind.GROUND)).isEqualTo(fact.get("gnd").asInt());
  }

  @ParameterizedTest
  @MethodSource("types")
  void everyPartNamesItsSourcesAndWhatAnOpenInputDoes(String type) {
    PartNotes notes = PARTS.notes(type).orElseThrow();
    assertThat(notes.openInput()).isNotBlank();
    assertThat(notes.sources())
        .anyMatch(s -> s.startsWith("pins: "))
        .anyMatch(s -> s.startsWith("function: "));
    assertThat(notes.mistakes()).isNotEmpty();
  }
}
