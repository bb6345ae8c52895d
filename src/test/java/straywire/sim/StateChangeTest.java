package straywire.sim;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import straywire.module.Entry;
import straywire.module.Module;
import straywire.module.ModuleFile;
import straywire.parts.ShippedParts;

class StateChangeTest {
  /** As built: meant, without a wire, and with another part's output dead; two lane groups. */
  private static List<Variation> variations(Wiring wiring) {
    List<Variation> all = new ArrayList<>();
    for (int lane = 0; lane < 70; lane++) {
      Variation variation = new Variation();
      if (lane % 3 == 1) {
        List<straywire.module.Jumper> jumpers = wiring.module().jumpers();
        variation.remove(wiring.jumper(jumpers.get(lane % jumpers.size())));
      }
      all.add(variation);
    }
    return all;
  }

  @ParameterizedTest
  @ValueSource(strings = {"beat-memory", "tune-store", "beat-counter"})
  void eachStateComesBackFromTheOneAfter(String name) {
    Module module =
        ModuleFile.readShipped(Path.of("cases", name, "module.yaml"), new ShippedParts());
    Wiring wiring = new Wiring(module);
    Boards boards = new Boards(wiring, variations(wiring));
    List<Entry> entries = new ArrayList<>(module.exercise());
    entries.add(new Entry.Power(false));
    entries.add(new Entry.Power(true));
    BoardState state = boards.off();
    for (Entry entry : entries) {
      BoardState after = boards.after(state, entry);
      BoardState back = StateChange.between(state, after).undo(after);
      assertThat(back.powered()).isEqualTo(state.powered());
      assertThat(back.controls()).isEqualTo(state.controls());
      assertThat(back.groups()).as(entry.toString()).isDeepEqualTo(state.groups());
      state = after;
    }
  }

  @Test
  void aReadingChangesNothing() {
    Module module =
        ModuleFile.readShipped(Path.of("cases", "beat-memory", "module.yaml"), new ShippedParts());
    BoardState off = new Boards(new Wiring(module), List.of(new Variation())).off();
    assertThat(StateChange.between(off, off).undo(off)).isSameAs(off);
  }
}
