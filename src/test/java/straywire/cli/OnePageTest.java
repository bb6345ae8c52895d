package straywire.cli;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.api.Test;
import straywire.cli.OnePage.Matters;

class OnePageTest {
  private static OnePage page(int rows) {
    OnePage page = new OnePage(rows, "more");
    page.add(Matters.ECHO, "entry 1");
    page.add(Matters.REMARKS, "normal 1");
    page.add(Matters.REMARKS, "normal 2");
    page.add(Matters.MOST, "suspect");
    page.add(Matters.GROUNDS, "ground");
    page.add(Matters.MOST, "next");
    return page;
  }

  @Test
  void whatFitsIsPrintedInWhole() {
    assertThat(page(6).fitted())
        .containsExactly("entry 1", "normal 1", "normal 2", "suspect", "ground", "next");
  }

  @Test
  void whatMattersLeastGoesFirstAndTheRestKeepsItsOrder() {
    assertThat(page(5).fitted()).containsExactly("more", "normal 1", "suspect", "ground", "next");
    assertThat(page(4).fitted()).containsExactly("more", "suspect", "ground", "next");
  }

  @Test
  void whatMattersMostIsNeverLeftOut() {
    assertThat(page(1).fitted()).containsExactly("more", "suspect", "next");
  }
}
