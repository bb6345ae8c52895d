package straywire.cli;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import straywire.module.Control;
import straywire.module.Entry;
import straywire.module.EntryWords;
import straywire.module.Module;
import straywire.module.Word;
import straywire.sitting.ExpectedLevels;

/** Expected levels as drawings of the parts and pictures of the lamps. */
final class LevelsTable {
  private final Module module;
  private final Glyphs glyphs;

  LevelsTable(Module module, Glyphs glyphs) {
    this.module = module;
    this.glyphs = glyphs;
  }

  List<String> lines(ExpectedLevels levels, List<String> parts) {
    List<String> lines = new ArrayList<>();
    Map<String, Boolean> switches = new TreeMap<>();
    for (Control control : module.controls().values()) {
      if (control.kind() == Control.Kind.SWITCH) {
        switches.put(control.label(), levels.controls().levels().get(control.label()));
      }
    }
    EntryWords typed = new EntryWords(module);
    lines.add(
        "Power on, black lead on ground"
            + (switches.isEmpty() ? "" : "; " + typed.print(new Entry.Set(switches)))
            + (levels.controls().held().isEmpty()
                ? ""
                : "; " + String.join(", ", levels.controls().held()) + " held"));
    for (String part : parts) {
      lines.add("");
      lines.addAll(
          PinDrawing.of(module.parts().get(part), levels.of(module.parts().get(part)), glyphs));
    }
    lines.add("");
    LampPicture picture = new LampPicture(glyphs);
    Map<String, String> lamps = levels.lamps();
    for (Word word : module.lampWords()) {
      lines.addAll(picture.of(word.label(), lamps.get(word.label()), word.members()));
    }
    return lines;
  }
}
