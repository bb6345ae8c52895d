package straywire.parts;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import straywire.format.InputError;

class OwnPartsTest {
  @TempDir Path folder;

  private OwnParts load(String text) throws IOException {
    Path file = folder.resolve("gate.yaml");
    Files.writeString(file, text);
    return OwnParts.beside(new ShippedParts(), file);
  }

  @Test
  void aPartFileIsFoundBesideTheShippedOnes() throws IOException {
    OwnParts parts = load(SampleGate.YAML);
    assertThat(parts.part("strike-gate").orElseThrow().pinCount()).isEqualTo(6);
    assertThat(parts.part("74x00")).isPresent();
    assertThat(parts.types()).contains("strike-gate", "74x00").isSorted();
    assertThat(parts.notes("strike-gate").orElseThrow().openInput()).isEqualTo("Reads as 1.");
    assertThat(parts.family("LS")).isPresent();
  }

  @Test
  void aFolderOfPartFilesIsRead() throws IOException {
    Files.writeString(folder.resolve("b.yaml"), SampleGate.YAML.replace("strike-gate", "b-gate"));
    Files.writeString(folder.resolve("a.yaml"), SampleGate.YAML.replace("strike-gate", "a-gate"));
    assertThat(OwnParts.beside(new ShippedParts(), folder).types()).contains("a-gate", "b-gate");
  }

  @Test
  void theSampleOfThePageOnPartFilesIsAPart() throws IOException {
    String page = Files.readString(Path.of("docs/formats/part.md"));
    Matcher sample = Pattern.compile("```yaml\n(.*?)```", Pattern.DOTALL).matcher(page);
    assertThat(sample.find()).isTrue();
    assertThat(load(sample.group(1)).part("74x51-demo")).isPresent();
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "type: strike-gate | type: 74x00 | gate.yaml: 74x00 is there already; give this part another type name",
        "format: straywire-part/1 | format: part | gate.yaml:1: format: expected straywire-part/1",
        "title: Gate of the striker | titel: A gate | gate.yaml:3: unknown field titel; known are",
        "2: B | 2: A | gate.yaml:6: pins 1 and 2 are both named A",
        "3: Y | 2: Y | gate.yaml:7: pin 2 is given twice",
        "3: Y | x: Y | gate.yaml:7: expected a pin number from 1 to 99, not x",
        "5: NC | 7: NC | gate.yaml:6: pins: pin 5 is missing",
        "input: { | inputs: { | gate.yaml:6: unknown field inputs; known are",
        "supply: | unconnected: | gate.yaml:10: unconnected is given twice",
        "Y = !(A & B) | 'memory m 2 x 1 kept\n  Y = !(A & B)' | gate.yaml:12: after its size a memory may say \"kept without power\" and no more, but the sentence ends",
        "Y = !(A & B) | 'memory m 2 x 1 stays\n  Y = !(A & B)' | gate.yaml:12: after its size a memory may say \"kept without power\" and no more before \"stays\"",
        "Y = !(A & B) | 'memory m 2 x 1 kept without power always\n  Y = !(A & B)' | gate.yaml:12: after its size a memory may say \"kept without power\" and no more before \"always\"",
        "!(A & B) | !(A & C) | gate.yaml:12: no pin and no value is named C",
        "Y = !(A & B) | 't = A & B\n  Y = !(A & B)' | gate.yaml:12: nothing uses t: take it out",
        "!(A & B) | !(A & A) | gate.yaml: the logic does not use input B; say",
        "!(A & B) | !(A & B | gate.yaml:12: expected \")\", but the sentence ends",
        "!(A & B) | !(A & % B) | gate.yaml:12: cannot read \"% B)\" in the logic",
        "!(A & B) | !(A & B) when A | gate.yaml:12: Y is an ordinary output, it always drives",
        "!(A & B) | [A B] | gate.yaml:12: this value has 2 bits, but 1 bit are needed",
        "!(A & B) | !(Y & B) | gate.yaml:12: Y depends on itself",
        "Y = !(A & B) | Z = !(A & B) | gate.yaml: the logic does not say what output Y does",
        "Y = !(A & B) | A = B | gate.yaml:12: A is an input, it cannot be given a value",
        "open-input: Reads as 1. | bus: perhaps | gate.yaml:17: bus: expected true or false, not perhaps",
        "function: Y is low while A and B are high. | function: [] | gate.yaml:4: function: expected plain text",
        "sources: [\"pins: none\", \"function: none\"] | sources: none | gate.yaml:18: sources: expected a list",
        "sources: [\"pins: none\", \"function: none\"] | sources: [] | gate.yaml:18: does not fit docs/schema/part.schema.json",
      })
  void aMistakeIsToldWithFileAndLine(String right, String wrong, String message)
      throws IOException {
    String text = SampleGate.YAML.replace(right, wrong);
    if (text.equals(SampleGate.YAML)) {
      throw new IllegalArgumentException("nothing replaced: " + right);
    }
    assertThatThrownBy(() -> load(text))
        .isInstanceOf(InputError.class)
        .hasMessageContaining(message)
        .message()
        .doesNotContain("\n");
  }

  @Test
  void aPartThatDoesNotDoWhatItsTableSaysIsRefused() {
    assertThatThrownBy(() -> load(SampleGate.YAML.replace("H H | L", "H H | H")))
        .isInstanceOf(InputError.class)
        .hasMessageContaining("gate.yaml:16: table: Y should show H, the logic gives L");
  }

  @Test
  void aFileThatIsNotYamlIsRefused() {
    assertThatThrownBy(() -> load("type: [\n"))
        .isInstanceOf(InputError.class)
        .hasMessageContaining("not readable as YAML");
  }

  @Test
  void aFileThatIsNotThereIsRefused() {
    assertThatThrownBy(() -> OwnParts.beside(new ShippedParts(), folder.resolve("nothing.yaml")))
        .isInstanceOf(InputError.class)
        .hasMessageContaining("nothing.yaml: there is no such file");
  }
}
