package straywire.ranking.published;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.Set;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/**
 * The mbd-mobs data set (IJCAI 2019): a circuit and up to a hundred observed vectors, and the
 * published number of smallest sets of gates that together explain every vector. Read in the result
 * files of the data set and recomputed, equal.
 */
class MultipleObservationsTest {
  @ParameterizedTest
  @CsvSource({
    "c17mut10n, 2",
    "c17mut10p, 5",
    "c17mut14p, 3",
    "c17mut6p, 3",
    "c17mut8n, 8",
    "c17mut8p, 4"
  })
  void smallestDiagnosesOfC17(String instance, int published) {
    assertThat(ObservedCircuit.published(instance).minimalDiagnoses(6)).hasSize(published);
  }

  /** Sets of up to three gates, which is where the published ones lie; 4 single and 1 triple. */
  @Tag("slow")
  @ParameterizedTest
  @CsvSource({
    "c432mut267p, 5",
    "c432mut269p, 5",
    "c432mut273n, 2",
    "c432mut281n, 2",
    "c432mut285p, 8"
  })
  void smallestDiagnosesOfC432(String instance, int published) {
    Set<Set<Integer>> diagnoses = ObservedCircuit.published(instance).minimalDiagnoses(3);
    assertThat(diagnoses).hasSize(published);
    if (instance.equals("c432mut267p")) {
      assertThat(diagnoses).filteredOn(d -> d.size() == 1).hasSize(4);
      assertThat(diagnoses).filteredOn(d -> d.size() == 3).hasSize(1);
    }
  }
}
