package straywire.electrical;

import straywire.module.Module;
import straywire.module.ModuleFile;
import straywire.parts.Family;
import straywire.parts.ShippedParts;

/** Families and one-net modules to compute on. */
final class Sheets {
  static final ShippedParts PARTS = new ShippedParts();

  private Sheets() {}

  static Family family(String name) {
    return PARTS.family(name).orElseThrow();
  }

  /**
   * A module whose net N starts at an output of U1; {@code ends} follow it.
   *
   * @param extra further lines under controls and lamps, as in a module file
   */
  static Module module(String type, String family, int output, String extra, String ends) {
    String yaml =
        """
        format: straywire-module/1
        name: sheet
        title: one net
        rails:
          VCC: {level: supply}
          GND: {level: ground}
        parts:
          U1: {type: %s, family: "%s"}
          U2: {type: 74x04, family: LS}
          U3: {type: 74x04, family: HC}
        %s
        nets:
          N: [U1.%d, %s]
        """
            .formatted(type, family, extra.strip(), output, ends);
    return ModuleFile.parse("sheet.yaml", yaml, PARTS);
  }

  static NetContents net(Module module) {
    return NetContents.of(module).get(0);
  }

  /** Usual voltage of the net while U1 drives it. */
  static double volts(Module module, boolean high) {
    NetContents net = net(module);
    return net.volts(net.drivers().get(0), high);
  }
}
