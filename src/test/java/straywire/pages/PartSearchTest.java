package straywire.pages;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import straywire.format.InputError;
import straywire.parts.Part;
import straywire.parts.ShippedParts;

class PartSearchTest {
  private static final PartSearch SEARCH = new PartSearch(new ShippedParts());

  private static List<String> found(String... words) {
    return SEARCH.search(List.of(words)).stream().map(Part::type).toList();
  }

  @ParameterizedTest
  @CsvSource({
    "74x189, 74x189",
    "74189, 74x189",
    "74LS189, 74x189",
    "SN74LS189N, 74x189",
    "LS189, 74x189",
    "189, 74x189",
    "7400, 74x00",
    "00, 74x00",
    "ls04, 74x04",
    "DM74ALS245AN, 74x245",
    "74HCT688, 74x688",
    "4017, 4017",
    "CD4011BE, 4011",
    "74HC4040, 4040",
    "NE555P, 555",
    "LM555CN, 555",
    "AT28C64B, 28C64",
    "28c256, 28C256",
    "HM6116, 6116",
    "2114, 2114",
    "62256, 62256",
  })
  void aPartIsFoundByTheNumbersThatPeopleUse(String asked, String type) {
    assertThat(SEARCH.numbered(asked).type()).isEqualTo(type);
  }

  @Test
  void everyPartIsFoundByItsOwnNumberAndByItsPlainOne() {
    for (Part part : SEARCH.all()) {
      assertThat(SEARCH.numbered(part.type())).isEqualTo(part);
      assertThat(SEARCH.numbered(part.type().replace("74x", "74LS"))).isEqualTo(part);
      assertThat(SEARCH.numbered(part.type().replace("74x", "74"))).isEqualTo(part);
    }
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "74188 | 74188: no part has this number; nearest is 74x189 (16 x 4 static RAM",
        "74x1161 | 74x1161: no part has this number; nearest is 74x161 (",
        "widget | widget: no part has this number; straywire part list shows all",
      })
  void aNumberThatIsNotThereIsToldWithTheNearest(String asked, String message) {
    assertThatThrownBy(() -> SEARCH.numbered(asked))
        .isInstanceOf(InputError.class)
        .hasMessageStartingWith(message);
  }

  @Test
  void wordsOfTheTitleComeBeforeWordsOfTheFunction() {
    assertThat(found("open", "collector", "inverter")).startsWith("74x05");
    assertThat(found("mux")).contains("74x151", "74x157").doesNotContain("74x00");
    assertThat(found("count").get(0)).isEqualTo("74x90");
  }

  @Test
  void theNameOfAPinFindsThePart() {
    assertThat(found("/RCO")).contains("74x190", "74x191", "74x590");
    assertThat(found("LT", "RBI")).containsExactly("74x47", "74x48");
  }

  @Test
  void aNumberAmongTheWordsFindsThePart() {
    assertThat(found("LS189")).startsWith("74x189");
  }

  @ParameterizedTest
  @ValueSource(strings = {"multiplexr", "multiplexar"})
  void aWordThatNobodyUsesIsToldWithTheNearest(String word) {
    assertThatThrownBy(() -> found(word))
        .isInstanceOf(InputError.class)
        .hasMessage(word + ": no part fits; nearest to " + word + " is multiplexer");
  }

  @Test
  void wordsThatNoPartHasTogetherAreToldSo() {
    assertThatThrownBy(() -> found("mux", "adder"))
        .hasMessage("mux adder: no part fits; each word fits some part, but none fits all");
    assertThatThrownBy(() -> found("zzzzzz"))
        .hasMessage("zzzzzz: no part fits; no part has the word zzzzzz");
  }

  @Test
  void thePartsStandInTheOrderOfTheShelf() {
    List<String> types = SEARCH.all().stream().map(Part::type).toList();
    assertThat(types).startsWith("74x00", "74x02", "74x04").endsWith("6116", "62256");
    assertThat(types.indexOf("74x86")).isLessThan(types.indexOf("74x138"));
    assertThat(types.indexOf("74x688")).isLessThan(types.indexOf("555"));
  }
}
