// The part of teoria that the tests use as an oracle; the package ships no types.
declare module 'teoria' {
  interface TeoriaNote {
    /** Frequency in Hz over A4 = `concertPitch` (440 if left out). */
    fq(concertPitch?: number): number;
    /** A scale on this note; `simple` names its notes: "f", "bb", "c#". */
    scale(name: 'major'): { simple(): readonly string[] };
  }
  const teoria: {
    readonly note: { (name: string): TeoriaNote; fromMIDI(midi: number): TeoriaNote };
  };
  export default teoria;
}
