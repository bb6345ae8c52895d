package straywire.faults;

import java.util.HashMap;
import java.util.List;
import java.util.Map;
import straywire.module.End;
import straywire.module.Jumper;
import straywire.module.Module;

/** Finds the ends and jumpers of a module by the names a suggestion gives them. */
final class BoardIndex {
  final Map<String, End> ends = new HashMap<>();
  final Map<String, Jumper> jumpers = new HashMap<>();

  BoardIndex(Module module) {
    BoardWords board = new BoardWords(module);
    module.parts().keySet().forEach(part -> board.pins(part).forEach(this::put));
    module.terminals().forEach(this::put);
    module.lamps().keySet().forEach(label -> put(new End(End.Kind.LAMP, label, 0)));
    module.passives().ends().forEach(this::put);
    module.rails().forEach(rail -> put(new End(End.Kind.RAIL, rail.label(), 0)));
    for (List<String> lines : module.ports().values()) {
      lines.forEach(line -> put(new End(End.Kind.PORT, line, 0)));
    }
    module.jumpers().forEach(jumper -> jumpers.put(jumper.name(), jumper));
  }

  private void put(End end) {
    ends.put(end.toString(), end);
  }
}
