package straywire.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collections;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import straywire.Tutorial;

/** Follows the tutorial to the letter: its files written, its commands run, its output compared. */
class TutorialTest {
  private static final String LEFT_OUT = "...";

  @TempDir private Path folder;

  @Test
  void whatTheTutorialShowsIsWhatHappens() throws IOException {
    Tutorial tutorial = Tutorial.read();
    assertThat(tutorial.files()).hasSize(6);
    assertThat(tutorial.commands()).hasSize(8);
    for (var file : tutorial.files().entrySet()) {
      Path path = folder.resolve(file.getKey());
      Files.createDirectories(path.getParent());
      Files.writeString(path, file.getValue());
    }
    for (Tutorial.Command command : tutorial.commands()) {
      CommandRun run =
          CommandRun.of(command.words().stream().map(this::here).toArray(String[]::new));
      List<String> printed =
          Arrays.asList(
              (run.out() + run.err()).replace(folder + "/", "").stripTrailing().split("\n"));
      assertThat(agree(command.shown(), printed))
          .as("%s%nshown:%n%s%nprinted:%n%s", command.words(), command.shown(), printed)
          .isTrue();
    }
  }

  /** Files that the page names lie in a folder of their own here. */
  private String here(String word) {
    return word.matches(".*\\.(txt|yaml|jsonl)") ? folder.resolve(word).toString() : word;
  }

  private static boolean agree(List<String> shown, List<String> printed) {
    int at = 0;
    List<String> run = new ArrayList<>();
    boolean free = false;
    for (String line : shown) {
      if (!line.equals(LEFT_OUT)) {
        run.add(line);
        continue;
      }
      at = after(run, printed, at, free);
      if (at < 0) {
        return false;
      }
      run.clear();
      free = true;
    }
    if (run.isEmpty()) {
      return free || at == printed.size();
    }
    int end = free ? Collections.lastIndexOfSubList(printed, run) : at;
    return end >= at
        && end + run.size() == printed.size()
        && printed.subList(end, printed.size()).equals(run);
  }

  /** Where the lines end in what was printed, at or (free) after a place; -1 when nowhere. */
  private static int after(List<String> run, List<String> printed, int at, boolean free) {
    List<String> rest = printed.subList(at, printed.size());
    int found = Collections.indexOfSubList(rest, run);
    return found == 0 || (free && found > 0) ? at + found + run.size() : -1;
  }

  @Test
  void linesLeftOutStandForAnyLinesAndNothingElseDoes() {
    List<String> printed = List.of("a", "b", "c", "d");
    assertThat(agree(List.of("a", "...", "d"), printed)).isTrue();
    assertThat(agree(List.of("...", "b", "c", "..."), printed)).isTrue();
    assertThat(agree(List.of("a", "b", "c", "d"), printed)).isTrue();
    assertThat(agree(List.of("a", "...", "c"), printed)).isFalse();
    assertThat(agree(List.of("b", "...", "d"), printed)).isFalse();
    assertThat(agree(List.of("a", "c", "..."), printed)).isFalse();
    assertThat(agree(List.of("a", "...", "c", "..", "d"), printed)).isFalse();
  }
}
