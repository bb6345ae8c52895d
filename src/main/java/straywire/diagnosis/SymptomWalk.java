package straywire.diagnosis;

import java.util.List;
import java.util.Map;
import straywire.module.ControlState;
import straywire.module.Entry;
import straywire.module.Module;
import straywire.sim.BoardState;
import straywire.sim.Boards;

/** Works boards along entries and stops at each look. */
final class SymptomWalk {
  private final Module module;
  private final SymptomRoles roles;
  private final Boards boards;

  SymptomWalk(SymptomRoles roles, Boards boards) {
    module = boards.wiring().module();
    this.roles = roles;
    this.boards = boards;
  }

  /** Sees the boards at one look. */
  interface Watcher {
    void look(SymptomLook look, Entry entry, BoardState state);
  }

  /**
   * Carries out the entries from power off, controls at rest. Tells the watcher of every {@link
   * Entry.Look} and {@link Entry.Seen} with the power on and no button held.
   */
  void along(List<Entry> entries, Watcher watcher) {
    BoardState state = boards.off();
    ControlState hand = ControlState.atStart(module);
    int powerUps = 0;
    int presses = 0;
    for (int i = 0; i < entries.size(); i++) {
      Entry entry = entries.get(i);
      state = boards.after(state, entry);
      hand = hand.after(entry);
      if (entry instanceof Entry.Power e) {
        powerUps += e.on() ? 1 : 0;
        presses = 0;
      }
      presses += stores(entry) ? 1 : 0;
      boolean looks = entry instanceof Entry.Look || entry instanceof Entry.Seen;
      if (looks && state.powered() && hand.held().isEmpty()) {
        Map<String, Boolean> controls = state.controls();
        long place = roles.store().map(s -> SymptomRoles.value(s.address(), controls)).orElse(0L);
        boolean driven =
            roles.gate().map(g -> controls.get(g.control()) == g.drivesAt()).orElse(true);
        watcher.look(new SymptomLook(powerUps, presses, place, driven, controls, i), entry, state);
      }
    }
  }

  private boolean stores(Entry entry) {
    String button = roles.store().map(SymptomRoles.Store::button).orElse("");
    return (entry instanceof Entry.Press p && p.button().equals(button))
        || (entry instanceof Entry.Hold h && h.button().equals(button));
  }
}
