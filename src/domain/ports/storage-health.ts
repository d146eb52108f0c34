/** `persistent`: the browser has promised not to clear it by itself. `best-effort`: it may, when the phone runs full. */
export type Durability = 'persistent' | 'best-effort' | 'unknown';

export interface StorageState {
  readonly durability: Durability;
  /** Of everything the app keeps, its own offline copy included; null where the browser does not say. */
  readonly usedBytes: number | null;
  /** How much the app may use in all. */
  readonly mostBytes: number | null;
}

/** How safe what is kept is on this phone. Never throws. */
export interface StorageHealth {
  look(): Promise<StorageState>;
  /**
   * Asks the browser not to clear what is kept, if it has not promised so already. Some browsers ask the user in
   * turn: call it after the first saved reading, when there is something to lose.
   */
  askToKeep(): Promise<Durability>;
}
