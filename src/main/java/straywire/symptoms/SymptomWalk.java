package straywire.symptoms;

import java.util.ArrayList;
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
   * Entry.Look} and {@link Entry.Seen} with the power on and at most one button held.
   */
  void along(List<Entry> entries, Watcher watcher) {
    BoardState state = boards.off();
    ControlState hand = ControlState.atStart(module);
    int powerUps = 0;
    int presses = 0;
    List<Entry> since = new ArrayList<>();
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
      if (!looks) {
        since.add(entry);
      }
      if (looks && state.powered() && hand.held().size() <= 1) {
        Map<String, Boolean> controls = state.controls();
        long place = roles.store().map(s -> SymptomRoles.value(s.address(), controls)).orElse(0L);
        boolean driven =
            roles.gate().map(g -> controls.get(g.control()) == g.drivesAt()).orElse(true);
        long preset =
            roles
                .store()
                .filter(s -> s.data().size() == roles.width())
                .map(s -> SymptomRoles.value(s.data(), controls))
                .orElse(SymptomLook.NO_PRESET);
        String held = hand.held().stream().findFirst().orElse("");
        watcher.look(
            new SymptomLook(
                powerUps,
                presses,
                place,
                driven,
                controls,
                i,
                since.stream().anyMatch(SymptomWalk::presses),
                !roles.steps().isEmpty() && pressed(since).equals(roles.steps()),
                held,
                preset),
            entry,
            state);
        if (held.isEmpty()) {
          since.clear();
        }
      }
    }
  }

  private static boolean presses(Entry entry) {
    return entry instanceof Entry.Press || entry instanceof Entry.Hold;
  }

  /** The button that these entries press once, and do nothing else. */
  private static String pressed(List<Entry> entries) {
    if (entries.size() == 1 && entries.get(0) instanceof Entry.Press press) {
      return press.button();
    }
    boolean held =
        entries.size() == 2
            && entries.get(0) instanceof Entry.Hold hold
            && entries.get(1) instanceof Entry.Release release
            && hold.button().equals(release.button());
    return held ? ((Entry.Release) entries.get(1)).button() : "";
  }

  private boolean stores(Entry entry) {
    String button = roles.store().map(SymptomRoles.Store::button).orElse("");
    return (entry instanceof Entry.Press p && p.button().equals(button))
        || (entry instanceof Entry.Hold h && h.button().equals(button));
  }
}
