package straywire.advice;

import static org.assertj.core.api.Assertions.assertThat;
import static org.junit.jupiter.api.DynamicTest.dynamicTest;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.DynamicTest;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestFactory;
import straywire.module.ModuleFile;
import straywire.parts.ShippedParts;
import straywire.review.Finding;
import straywire.review.Review;
import straywire.review.WiringReview;

/** Every shipped module is right on paper, or its file says why a note is meant. */
class ShippedModulesReviewTest {
  private static final WiringReview REVIEW = WiringReview.shipped();

  private static List<Path> modules() throws IOException {
    try (Stream<Path> files = Files.walk(Path.of("cases"))) {
      return files.filter(f -> f.endsWith("module.yaml")).sorted().toList();
    }
  }

  private static Review review(String name, String yaml) {
    return REVIEW.of(ModuleFile.parse(name, yaml, new ShippedParts()));
  }

  @TestFactory
  Stream<DynamicTest> aShippedModuleReviewsCleanOrExplainsEachNote() throws IOException {
    assertThat(modules()).hasSizeGreaterThanOrEqualTo(19);
    return modules().stream()
        .map(
            file ->
                dynamicTest(
                    file.getParent().getFileName().toString(),
                    () -> {
                      Review review = review(file.toString(), Files.readString(file));
                      assertThat(review.open()).isEmpty();
                      assertThat(review.idle()).isEmpty();
                    }));
  }

  @Test
  void aDecoupledBoardWithItsCapacitorsTakenAwayIsNotClean() throws IOException {
    String yaml =
        Files.readString(Path.of("cases/beat-counter/module.yaml"))
            .replaceFirst("(?m)^capacitors-to-ground:.*$", "");
    assertThat(review("without.yaml", yaml).open())
        .extracting(Finding::rule)
        .contains("CLK-01", "QUIET-02", "QUIET-03");
  }
}
