package straywire.advice;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import org.junit.jupiter.api.Test;
import straywire.review.WiringReview;

class RuleBookTest {
  private static final Path RULES = Path.of("rules");
  private static final Path PAGE = Path.of("docs/rule-book.md");

  /** Run with {@code -Dstraywire.write=true} to write the page anew. */
  @Test
  void thePageInTheDocsIsCurrent() throws IOException {
    String page = RuleBook.page(RULES);
    if (Boolean.getBoolean("straywire.write")) {
      Files.writeString(PAGE, page);
    }
    assertThat(PAGE).hasContent(page);
  }

  @Test
  void everyRuleHasAnIdOfItsOwn() throws IOException {
    Map<String, Long> uses =
        rules().stream().collect(Collectors.groupingBy(RuleText::id, Collectors.counting()));
    assertThat(uses).allSatisfy((id, count) -> assertThat(count).as(id).isEqualTo(1));
    assertThat(uses.keySet()).allMatch(id -> id.matches("[A-Z]+-\\d\\d"));
  }

  @Test
  void theCompiledRulesAreTheWrittenOnes() throws IOException {
    Map<String, String> written =
        rules().stream().collect(Collectors.toMap(RuleText::id, RuleText::name));
    Map<String, String> compiled = new TreeMap<>(RuleBase.shipped().sentences());
    compiled.putAll(WiringReview.shipped().sentences());
    assertThat(compiled).containsExactlyInAnyOrderEntriesOf(written);
  }

  @Test
  void aNameIsASentenceWithoutPartNumbers() throws IOException {
    for (RuleText rule : rules()) {
      assertThat(rule.name())
          .as(rule.id())
          .matches("[A-Z].* .* .*[a-z]")
          .doesNotContainPattern("\\d");
    }
  }

  @Test
  void everyRuleSaysWhereItsKnowledgeComesFrom() throws IOException {
    for (RuleText rule : rules()) {
      assertThat(rule.source()).as(rule.id()).isNotBlank();
    }
  }

  @Test
  void noRuleKnowsAModule() throws IOException {
    for (RuleText rule : rules()) {
      assertThat(rule.when() + rule.then())
          .as(rule.id())
          .doesNotContainPattern("\\bU\\d|beat|\\d\\dx\\d\\d");
    }
  }

  @Test
  void noRuleUsesSalienceEvalLoopsOrPrinting() throws IOException {
    Pattern banned = Pattern.compile("salience|eval\\(|for\\s*\\(|while\\s*\\(|System\\.|global ");
    for (RuleText rule : rules()) {
      assertThat(rule.when() + rule.then()).as(rule.id()).doesNotContainPattern(banned);
    }
  }

  @Test
  void aConclusionFallsWithItsGroundsAndCarriesTheRuleThatDrewIt() throws IOException {
    Pattern inserted = Pattern.compile("insert\\w*\\(");
    Pattern named =
        Pattern.compile("new (Suggestion|Weigh|Normal|Caution|Hint|Finding)\\(\\s*\"([^\"]*)\"");
    for (RuleText rule : rules()) {
      assertThat(inserted.matcher(rule.then()).results().map(m -> m.group()))
          .as(rule.id())
          .isNotEmpty()
          .containsOnly("insertLogical(");
      assertThat(named.matcher(rule.then()).results().map(m -> m.group(2)))
          .allMatch(id -> id.equals(rule.id()), rule.id());
    }
  }

  private static List<RuleText> rules() throws IOException {
    List<RuleText> rules = RuleText.all(RULES);
    assertThat(rules).hasSizeGreaterThanOrEqualTo(50);
    return rules;
  }
}
