package straywire.module;

/** A small module that uses every part of the format, and ways to spoil it. */
final class SmallModule {
  static final String YAML =
      """
      format: straywire-module/1
      name: striker
      title: Striker gate
      about: strikes while both switches are up
      rails:
        VCC: {level: supply}
        GND: {level: ground}
        GND.right: {level: ground, linked-to: GND}
      parts:
        U1: {type: 74x04, family: LS, note: upper half}
        U2: {type: 74x189, family: HC, fitted: false}
      controls:
        A: {kind: switch, title: strike, closes-to: GND, pull-to: VCC, pull-ohms: 1000, rest: low}
        B: {kind: switch, closes-to: VCC}
        go: {kind: button, closes-to: GND, pull-to: VCC, pull-ohms: 4700}
      lamps:
        L1: {title: striker, to: GND, ohms: 1000}
        L0: {to: VCC, ohms: 0}
      ports:
        bells: [BELL1, BELL0]
      words:
        ab: {controls: [A, B]}
        out: {lamps: [L1, L0]}
      nets:
        VCC: [VCC, U1.VCC, U2.16]
        GND: [GND, U1.GND, U2.8]
        RIGHT: {order: unknown, ends: [U2./CS, GND.right, U2./WE]}
        A: [A, U1.1A]
        B: [B, U1.3]
        GO: {order: known, ends: [go, U1.5]}
        L1: [U1.2, L1, BELL1]
        L0: {order: unknown, ends: [U1.4, L0, BELL0]}
      neighbours:
        - [U1.14, U2.1]
      exercise:
        - {power: on}
        - {set: {ab: 01}}
        - {set: {A: high}}
        - {press: go}
        - {hold: go}
        - {look: [out, L1]}
        - {release: go}
        - {power: off}
      """;

  private SmallModule() {}

  static Module module() {
    return BeatMemory.parse(YAML);
  }

  /** The text with one place changed; fails when that place is not there. */
  static String with(String place, String change) {
    if (!YAML.contains(place)) {
      throw new IllegalArgumentException("There is no " + place);
    }
    return YAML.replace(place, change);
  }
}
