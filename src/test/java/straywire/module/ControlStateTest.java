package straywire.module;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;

class ControlStateTest {
  private static final Module MODULE = BeatMemory.MODULE;

  private static BenchLog log(Entry... entries) {
    BenchLog log = new BenchLog("beat-memory", "", List.of());
    for (Entry entry : entries) {
      log = log.with(entry);
    }
    return log;
  }

  @Test
  void atStartPowerIsOffAndEveryControlIsAtRest() {
    ControlState start = ControlState.atStart(MODULE);

    assertThat(start.power()).isFalse();
    assertThat(start.held()).isEmpty();
    assertThat(start.levels()).hasSize(14).containsEntry("A0", false).containsEntry("write", true);
  }

  @Test
  void everyEntryLeavesAFullState() {
    BenchLog log =
        log(
            new Entry.Power(true),
            new Entry.Set(Map.of("A0", true, "drive", false)),
            new Entry.Hold("write"),
            new Entry.Seen(Map.of("R0", LampState.LIT)),
            new Entry.Release("write"),
            new Entry.Power(false));

    assertThat(ControlState.at(MODULE, log, 0)).isEqualTo(ControlState.atStart(MODULE));
    assertThat(ControlState.at(MODULE, log, 1).power()).isTrue();
    assertThat(ControlState.at(MODULE, log, 1).levels()).containsEntry("A0", false);
    assertThat(ControlState.at(MODULE, log, 2).levels())
        .containsEntry("A0", true)
        .containsEntry("drive", false)
        .containsEntry("write", true);
    assertThat(ControlState.at(MODULE, log, 4).levels()).containsEntry("write", false);
    assertThat(ControlState.at(MODULE, log, 4).held()).containsExactly("write");
    assertThat(ControlState.at(MODULE, log, 5).levels()).containsEntry("write", true);
    assertThat(ControlState.at(MODULE, log, 5).held()).isEmpty();
    assertThat(ControlState.at(MODULE, log, 6).power()).isFalse();
    assertThat(ControlState.at(MODULE, log, 6).levels()).containsEntry("A0", true);
  }

  @Test
  void aPressEndsWithTheButtonLetGo() {
    BenchLog log = log(new Entry.Hold("write"), new Entry.Press("write"));

    assertThat(ControlState.at(MODULE, log, 2)).isEqualTo(ControlState.atStart(MODULE));
    assertThat(ControlState.at(MODULE, log(new Entry.Press("write")), 1))
        .isEqualTo(ControlState.atStart(MODULE));
  }

  @Test
  void holdingTwiceOrReleasingWhatIsUpChangesNothing() {
    ControlState start = ControlState.atStart(MODULE);
    ControlState held = start.after(new Entry.Hold("write"));

    assertThat(held.after(new Entry.Hold("write"))).isEqualTo(held);
    assertThat(start.after(new Entry.Release("write"))).isEqualTo(start);
  }

  @Test
  void workOnTheModuleTakesTheHandOffTheButtons() {
    ControlState held =
        ControlState.atStart(MODULE)
            .after(new Entry.Set(Map.of("A0", true)))
            .after(new Entry.Hold("write"));

    for (Entry work : List.of(new Entry.Repaired("the wire"), new Entry.Exchanged("U1"))) {
      assertThat(held.after(work)).isEqualTo(held.after(new Entry.Release("write")));
    }
    assertThat(held.after(new Entry.Power(false)).held()).containsExactly("write");
  }

  @Test
  void whatWasUndoneCountsUntilItWasUndone() {
    BenchLog log =
        log(new Entry.Set(Map.of("A0", true)), new Entry.Withdrawn(1), new Entry.Withdrawn(2));

    assertThat(ControlState.at(MODULE, log, 1).levels()).containsEntry("A0", true);
    assertThat(ControlState.at(MODULE, log, 2).levels()).containsEntry("A0", false);
    assertThat(ControlState.at(MODULE, log, 3).levels()).containsEntry("A0", true);
  }
}
