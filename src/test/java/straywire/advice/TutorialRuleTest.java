package straywire.advice;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.util.ArrayList;
import java.util.Collection;
import java.util.List;
import org.drools.model.codegen.ExecutableModelProject;
import org.junit.jupiter.api.Test;
import org.kie.api.KieBase;
import org.kie.api.io.ResourceType;
import org.kie.api.runtime.KieSession;
import org.kie.internal.utils.KieHelper;
import straywire.Tutorial;

/** The rule of the tutorial compiles, and its examples do what they say. */
class TutorialRuleTest {
  private static final String RULE = "rules/workshop.drl";
  private static final String EXAMPLES = "src/test/resources/rules/SHOP-01.json";

  @Test
  void theRuleOfTheTutorialFiresOnItsExampleAndNotOnTheOneThatNearlyDoes() throws IOException {
    Tutorial tutorial = Tutorial.read();
    RuleExample example =
        RuleExample.of(new ObjectMapper().readTree(tutorial.files().get(EXAMPLES)));
    KieBase rules =
        new KieHelper()
            .addContent(tutorial.files().get(RULE), ResourceType.DRL)
            .build(ExecutableModelProject.class);
    assertThat(example.rule()).isEqualTo("SHOP-01");
    assertThat(example.gives()).isNotEmpty();
    List<String> given = concluded(rules, example.fires());
    for (String text : example.gives()) {
      assertThat(given).anyMatch(g -> g.contains(text) && g.contains("rule=SHOP-01"));
    }
    assertThat(concluded(rules, example.nearly())).isEmpty();
  }

  private static List<String> concluded(KieBase rules, Collection<?> facts) {
    KieSession session = rules.newKieSession();
    try {
      facts.forEach(session::insert);
      session.fireAllRules();
      List<Object> all = new ArrayList<>(session.getObjects());
      all.removeAll(facts);
      return all.stream().map(Object::toString).toList();
    } finally {
      session.dispose();
    }
  }
}
