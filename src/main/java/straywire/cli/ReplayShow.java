package straywire.cli;

import java.io.PrintWriter;
import straywire.module.BenchLog;
import straywire.module.Entry;
import straywire.module.Module;
import straywire.sitting.Sitting;
import straywire.sitting.Situation;
import straywire.sitting.Situation.Stage;

/** Plays a recorded log before the eye: short while all is as it should be, in full after that. */
final class ReplayShow {
  private final Sitting sitting;
  private final PrintWriter out;
  private final Screen screen;

  ReplayShow(Sitting sitting, PrintWriter out, Glyphs glyphs) {
    this.sitting = sitting;
    this.out = out;
    screen = new Screen(out, sitting.workbench().module(), glyphs, Screen.PAGE_COLUMNS, 0);
  }

  void play(BenchLog log) {
    Module module = sitting.workbench().module();
    screen.line(module.title() + ": " + log.title() + ".");
    screen.line(module.about());
    screen.advice(sitting.now());
    out.println();
    Stage before = Stage.EXERCISING;
    for (BenchLog.Line line : log.standing()) {
      if (line.entry() instanceof Entry.Expected) {
        continue;
      }
      sitting.enter(line.entry());
      screen.entry(line);
      if (tells(line.entry())) {
        Situation now = sitting.now();
        show(now, before);
        before = now.stage();
      }
      out.flush();
    }
    out.println();
  }

  private void show(Situation now, Stage before) {
    boolean quiet =
        now.stage() == before
            && (now.stage() == Stage.EXERCISING || now.stage() == Stage.CONFIRMING);
    if (quiet) {
      screen.advice(now);
      out.println("       as it should be");
      return;
    }
    out.println();
    if (now.stage() == Stage.CONFIRMING || now.stage() == Stage.CONFIRMED) {
      screen.next(now);
    } else {
      screen.situation(now, sitting.log());
    }
    out.println();
  }

  /** Entries after which there is something to say. */
  private static boolean tells(Entry entry) {
    return !(entry instanceof Entry.Power
        || entry instanceof Entry.Set
        || entry instanceof Entry.Press
        || entry instanceof Entry.Hold
        || entry instanceof Entry.Release
        || entry instanceof Entry.Note);
  }
}
