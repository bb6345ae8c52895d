package straywire.advice;

import static org.assertj.core.api.Assertions.assertThat;
import static org.junit.jupiter.api.DynamicTest.dynamicTest;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.SortedSet;
import java.util.TreeSet;
import java.util.stream.Stream;
import org.junit.jupiter.api.DynamicTest;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestFactory;
import straywire.review.WiringReview;

class RuleExamplesTest {
  private final RuleSessions proposal = RuleSessions.compiled(RuleBase.PROPOSAL);
  private final RuleSessions advice = RuleSessions.compiled(RuleBase.ADVICE);
  private final RuleSessions review = RuleSessions.compiled(WiringReview.REVIEW);
  private final Map<String, RuleExample> examples = RuleExample.all();

  @Test
  void everyRuleHasExamplesAndEveryExampleHasItsRule() {
    SortedSet<String> rules = new TreeSet<>(proposal.sentences().keySet());
    rules.addAll(advice.sentences().keySet());
    rules.addAll(review.sentences().keySet());
    assertThat(examples.keySet()).containsExactlyElementsOf(rules);
    assertThat(rules).hasSizeGreaterThanOrEqualTo(50);
  }

  @TestFactory
  Stream<DynamicTest> theFactsThatShouldFireARuleDo() {
    return examples.values().stream()
        .map(example -> dynamicTest(example.rule(), () -> assertFires(example)));
  }

  @TestFactory
  Stream<DynamicTest> theFactsThatNearlyFireARuleDoNot() {
    return examples.values().stream()
        .map(example -> dynamicTest(example.rule(), () -> assertRests(example)));
  }

  private void assertFires(RuleExample example) {
    SortedSet<String> fired = new TreeSet<>();
    List<Object> conclusions = new ArrayList<>(sessions(example).conclude(example.fires(), fired));
    conclusions.removeAll(example.fires());
    assertThat(fired).contains(example.rule());
    // What a rule concludes carries its id, unless it is a derived fact.
    List<String> own =
        conclusions.stream()
            .map(Object::toString)
            .filter(t -> t.contains("[rule=" + example.rule() + ",") || !t.contains("[rule="))
            .toList();
    assertThat(example.gives()).isNotEmpty();
    for (String text : example.gives()) {
      assertThat(own).as(example.rule()).anyMatch(t -> t.contains(text));
    }
  }

  private void assertRests(RuleExample example) {
    SortedSet<String> fired = new TreeSet<>();
    sessions(example).conclude(example.nearly(), fired);
    assertThat(example.nearly()).isNotEmpty();
    assertThat(example.lacks()).isNotBlank();
    assertThat(fired).as(example.lacks()).doesNotContain(example.rule());
  }

  private RuleSessions sessions(RuleExample example) {
    return Stream.of(proposal, advice, review)
        .filter(sessions -> sessions.sentences().containsKey(example.rule()))
        .findFirst()
        .orElseThrow();
  }
}
