package straywire.logic;

/** What a pin of a part does electrically, as the maker's pin table says. */
public enum PinKind {
  INPUT,
  /** Push-pull (totem-pole) output. */
  OUTPUT,
  /** Output that can let go of its line. */
  TRISTATE,
  /** Output that can only pull low. */
  OPEN_COLLECTOR,
  /** Input, or three-state output, by direction. */
  BIDIRECTIONAL,
  SUPPLY,
  GROUND,
  NOT_CONNECTED;

  public boolean drives() {
    return this == OUTPUT || this == TRISTATE || this == OPEN_COLLECTOR || this == BIDIRECTIONAL;
  }

  public boolean listens() {
    return this == INPUT || this == BIDIRECTIONAL;
  }
}
