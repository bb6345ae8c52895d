package straywire.steps;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import org.junit.jupiter.api.Test;

class ReadingTreeTest {
  @Test
  void twoCheapReadingsBeatOneThatTellsAll() {
    ReadingTree tree = new ReadingTree(new double[] {0.5, 0.25, 0.25}, 0.98);
    tree.offer(List.of("low", "high", "high"), 10);
    tree.offer(List.of("low", "high", "low"), 10);
    tree.offer(List.of("low", "high", "open"), 30);

    // The first for all, the second for the half that it leaves.
    assertThat(tree.cost()).isEqualTo(new ReadingTree.Cost(3, 15, 15));
  }

  @Test
  void takingTheMostBitsPerSecondCanCostMore() {
    ReadingTree tree = new ReadingTree(new double[] {0.25, 0.25, 0.25, 0.25}, 0.98);
    tree.offer(List.of("low", "low", "high", "high"), 10);
    tree.offer(List.of(1, 2, 3, 4), 22);

    // One bit in 10 s looks better than two in 22 s, but the 22 s are needed all the same.
    assertThat(tree.cost()).isEqualTo(new ReadingTree.Cost(4, 22, 32));
  }

  @Test
  void aGroupBeyondDoubtNeedsNoReading() {
    ReadingTree tree = new ReadingTree(new double[] {0.99, 0.01}, 0.98);
    tree.offer(List.of("low", "high"), 10);

    assertThat(tree.cost()).isEqualTo(new ReadingTree.Cost(2, 0, 0));
  }

  @Test
  void whatNoReadingPartsIsLeftTogether() {
    ReadingTree tree = new ReadingTree(new double[] {0.25, 0.25, 0.5}, 0.98);
    tree.offer(List.of("low", "low", "high"), 8);

    assertThat(tree.cost()).isEqualTo(new ReadingTree.Cost(3, 8, 8));
  }
}
