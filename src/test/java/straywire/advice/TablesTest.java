package straywire.advice;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.IOException;
import java.nio.file.Path;
import java.util.Set;
import java.util.TreeSet;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.junit.jupiter.api.Test;
import straywire.format.InputError;

class TablesTest {
  private final SymptomTable symptoms = SymptomTable.shipped();

  @Test
  void everySymptomTheJobNamesIsThere() {
    assertThat(symptoms.entries())
        .extracting(SymptomEntry::id)
        .contains(
            "all-zeros",
            "all-ones",
            "random-at-power-up",
            "changes-each-power-up",
            "changes-untouched",
            "never-changes-on-write",
            "writes-unasked",
            "bit-stuck-low",
            "bit-stuck-high",
            "complemented-all",
            "complemented-nibble",
            "complemented-one",
            "reversed-all",
            "reversed-nibble",
            "two-swapped",
            "two-equal",
            "writes-elsewhere",
            "addresses-share",
            "half-dead",
            "bus-never-drives",
            "bus-never-releases",
            "bus-fights",
            "lamp-dim",
            "chip-warm",
            "hand-near");
  }

  @Test
  void everyQuestionIsOne() {
    assertThat(symptoms.entries()).allMatch(s -> s.question().matches("[A-Z].*\\?"));
  }

  /** An executable symptom is the simulation's: no rule may weigh it a second time. */
  @Test
  void rulesSpeakOfAllWeighedSymptomsAndNoOthers() throws IOException {
    Pattern named = Pattern.compile("symptom == \"([^\"]*)\"");
    Set<String> inRules = new TreeSet<>();
    for (RuleText rule : RuleText.all(Path.of("rules"))) {
      Matcher symptom = named.matcher(rule.when());
      while (symptom.find()) {
        inRules.add(symptom.group(1));
      }
    }
    assertThat(symptoms.entries())
        .filteredOn(s -> s.kind() == SymptomEntry.Kind.WEIGHED)
        .extracting(SymptomEntry::id)
        .containsExactlyInAnyOrderElementsOf(inRules);
  }

  @Test
  void aRepeatedIdIsRefused() {
    String row = "- {id: dim, question: Dim?, kind: weighed, about: lamp, seconds: 5}\n";
    assertThat(SymptomTable.parse("t.yaml", row).symptom("dim")).isPresent();
    assertThatThrownBy(() -> SymptomTable.parse("t.yaml", row + row))
        .isInstanceOf(InputError.class)
        .hasMessage("t.yaml: symptom dim is there twice");
  }

  @Test
  void aBadFieldIsNamed() {
    assertThatThrownBy(
            () ->
                SymptomTable.parse(
                    "t.yaml", "- {id: dim, question: Dim?, kind: odd, about: lamp, seconds: 5}"))
        .isInstanceOf(InputError.class)
        .hasMessage("t.yaml: symptom dim: kind is one of [executable, weighed], got odd");
    assertThatThrownBy(
            () ->
                SymptomTable.parse(
                    "t.yaml",
                    "- {id: dim, question: Dim?, kind: weighed, about: lamp, seconds: 0}"))
        .hasMessageContaining("seconds is a whole number above 0, got 0");
    assertThatThrownBy(() -> SymptomTable.parse("t.yaml", "- {id: dim}"))
        .hasMessageContaining("needs the fields [about, id, kind, question, seconds] only");
  }

  @Test
  void lookAlikesComeInBothDirections() {
    LookAlikes table = LookAlikes.shipped();
    assertThat(table.types())
        .extracting(t -> t.type() + " " + t.other())
        .contains("74x189 74x219", "74x219 74x189")
        .doesNotHaveDuplicates();
    assertThat(table.types()).noneMatch(t -> t.type().equals(t.other()));
  }
}
