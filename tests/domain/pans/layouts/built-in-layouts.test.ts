// One check of every layout that comes with the app, and of the mirror images.
import { describe, expect, it } from 'vitest';
import { checkLayout } from '../../../../src/domain/pans/check-layout';
import { type Drum, notesOf, type PanLayout } from '../../../../src/domain/pans/layout';
import { builtInLayouts } from '../../../../src/domain/pans/layouts/built-in-layouts';
import { mirrored } from '../../../../src/domain/pans/mirrored';
import { middleOfNote } from '../../../../src/domain/pans/note-outline';
import { Repairs } from '../../../../src/domain/records/restore/repairs';
import { layoutRule } from '../../../../src/domain/records/restore/restore-layout';
import { noteName } from '../../../../src/domain/tuning/note-names';
import { drawnRadius, rim } from '../../../../src/ui/parts/drawing/pan-drawing-geometry';

/**
 * Lowest and highest MIDI number, number of drums. Ranges: R. A. Sharma, "Composing and Arranging for the Steel Pan,
 * Part I"; counts: Trinidad information page (tntisland.com); 20-note tenor bass: U. Kronman, Steel Pan Tuning, 1992;
 * double second, double guitar of 18 and six bass from B1: openly published drawings; derived: high-D lead, top of
 * the twelve bass; from memory: four cello, quadrophonic.
 */
const published: Readonly<Record<string, readonly [number, number, number]>> = {
  'low-c-lead': [60, 88, 1],
  'high-d-lead': [62, 90, 1],
  'double-tenor': [53, 83, 2],
  'double-second': [54, 85, 2],
  'double-guitar': [50, 67, 2],
  'double-guitar-20': [49, 68, 2],
  'triple-guitar': [48, 71, 3],
  'triple-cello': [48, 71, 3],
  'four-cello': [46, 73, 4],
  quadrophonic: [47, 82, 4],
  'tenor-bass-20': [43, 62, 4],
  'tenor-bass-24': [41, 64, 4],
  'six-bass-b-flat': [34, 51, 6],
  'six-bass-b': [35, 52, 6],
  'nine-bass': [28, 54, 9],
  'twelve-bass': [23, 58, 12],
};

const layouts = builtInLayouts
  .filter(({ family }) => family !== 'other')
  .flatMap(({ layout, isMirroredToo }) => (isMirroredToo ? [layout, mirrored(layout)] : [layout]));
const named = layouts.map((layout) => [layout.id, layout] as const);
const plainId = (id: string): string => id.replace('-mirrored', '');

const classesOf = (drum: Drum, modulus: number): number =>
  new Set(drum.notes.map(({ note }) => note % modulus)).size;

/** From the drum's middle to the edge of its drawing, in rim radii: the rim's line is drawn half outside. */
const drawn = drawnRadius / rim;

/** Distance of each note's middle from the nearest other one, or from the edge of the drawing doubled. */
function roomsOf(drum: Drum): readonly (readonly [string, number])[] {
  return drum.notes.map((place) => {
    const [x, y] = middleOfNote(place);
    const others = drum.notes.filter((other) => other !== place).map(middleOfNote);
    const room = Math.min(
      2 * (drawn - Math.max(Math.abs(x), Math.abs(y))),
      ...others.map(([ox, oy]) => Math.hypot(ox - x, oy - y)),
    );
    return [noteName(place.note), room];
  });
}

describe.each(named)('the layout %s', (id, layout) => {
  it('has every semitone of its published range once, on the published number of drums', () => {
    const [low, high, drums] = published[plainId(id)] ?? [0, 0, 0];
    const chromatic = Array.from({ length: high - low + 1 }, (_, k) => low + k);
    expect(notesOf(layout)).toEqual(chromatic);
    expect(layout.drums).toHaveLength(drums);
  });

  it('can be drawn: nothing over the rim, over another note, missing or doubled', () => {
    expect(checkLayout(layout)).toEqual([]);
  });

  it('names its source, and what is doubtful where that is little', () => {
    expect(layout.source.length).toBeGreaterThan(20);
    const { kind } = builtInLayouts.find((entry) => entry.layout.id === plainId(id)) ?? {};
    const says = (layout.doubts ?? []).join(' ');
    expect(says.includes('No published positions. This is a start of ours')).toBe(
      kind === 'unplaced',
    );
  });

  // WCAG 2.2, 2.5.5: 44 CSS px. A touch area ends half way to the next note's middle.
  it('leaves every note 44 px for a finger where one drum is 320 px wide', () => {
    for (const drum of layout.drums) {
      for (const [name, room] of roomsOf(drum)) {
        expect((room * 320) / (2 * drawn), `${drum.name}: ${name}`).toBeGreaterThanOrEqual(44);
      }
    }
  });

  it('comes back from storage as it was', () => {
    const repairs = new Repairs();
    expect(layoutRule(JSON.parse(JSON.stringify(layout)), repairs)).toEqual(layout);
    expect(repairs.list).toEqual([]);
  });

  it('draws a lower note larger than a higher one of the same ring', () => {
    for (const drum of layout.drums) {
      for (const low of drum.notes) {
        for (const high of drum.notes) {
          if (low.note >= high.note || low.ring !== high.ring) continue;
          const [lower, higher] = [low, high].map(({ along, across }) => along * across);
          expect(lower, `${noteName(low.note)} ${noteName(high.note)}`).toBeGreaterThanOrEqual(
            (higher ?? 0) - 1e-9,
          );
        }
      }
    }
  });
});

const find = (id: string): PanLayout =>
  layouts.find((layout) => layout.id === id) ?? { id, name: '', drums: [], source: '' };

describe('the drums', () => {
  it.each(['double-second', 'double-second-mirrored'])('of the %s are whole-tone', (id) => {
    expect(find(id).drums.map((drum) => classesOf(drum, 2))).toEqual([1, 1]);
  });

  it.each(['triple-cello', 'triple-guitar'])('of the %s are diminished sevenths', (id) => {
    expect(find(id).drums.map((drum) => classesOf(drum, 3))).toEqual([1, 1, 1]);
  });

  it.each(['tenor-bass-20', 'tenor-bass-24', 'four-cello', 'quadrophonic'])(
    'of the %s are augmented triads',
    (id) => {
      expect(find(id).drums.map((drum) => classesOf(drum, 4))).toEqual([1, 1, 1, 1]);
    },
  );

  // Rule of the published six basses: two pitch classes a fourth or fifth apart, one of them in two octaves.
  it.each(['six-bass-b-flat', 'six-bass-b'])('of the %s hold a fourth or fifth', (id) => {
    for (const drum of find(id).drums) {
      const [low = 0, middle = 0, high = 0] = drum.notes
        .map(({ note }) => note)
        .sort((a, b) => a - b);
      expect(high - low, drum.name).toBe(12);
      expect([5, 7], drum.name).toContain(middle - low);
    }
  });

  it('of nine and twelve basses hold three notes each', () => {
    for (const id of ['nine-bass', 'twelve-bass']) {
      expect(find(id).drums.every(({ notes }) => notes.length === 3)).toBe(true);
    }
  });

  // Three published drawings and pages agree on clockwise fourths; a mirror turns them into fifths.
  it.each([
    ['low-c-lead', 5],
    ['high-d-lead', 5],
    ['low-c-lead-mirrored', 7],
    ['high-d-lead-mirrored', 7],
  ] as const)('of the %s rise clockwise by %d semitones mod 12', (id, step) => {
    for (const ring of ['outer', 'middle'] as const) {
      const clockwise = (find(id).drums[0]?.notes ?? [])
        .filter((place) => place.ring === ring)
        .sort((a, b) => a.clock - b.clock);
      expect(clockwise).toHaveLength(12);
      clockwise.forEach((place, k) => {
        const next = clockwise[(k + 1) % 12]?.note ?? Number.NaN;
        expect((((next - place.note) % 12) + 12) % 12).toBe(step);
      });
    }
  });

  it('of leads have each octave one ring further in, on the same hour', () => {
    for (const id of ['low-c-lead', 'high-d-lead']) {
      const notes = find(id).drums[0]?.notes ?? [];
      for (const place of notes.filter(({ ring }) => ring === 'outer')) {
        const octave = notes.find(({ note }) => note === place.note + 12);
        expect(octave).toMatchObject({ ring: 'middle', clock: place.clock });
      }
    }
  });

  it('of the tenor bass of 20 are as large against each other as measured', () => {
    // U. Kronman, Steel Pan Tuning, 1992: G2 390–400 mm long, B3 200 × 200 mm round.
    const [first] = find('tenor-bass-20').drums;
    const size = (midi: number) => first?.notes.find(({ note }) => note === midi);
    expect((size(43)?.along ?? 0) / (size(59)?.along ?? 1)).toBeCloseTo(395 / 200, 6);
    expect(size(59)?.across).toBe(size(59)?.along);
  });
});

describe('the built-in layouts', () => {
  it('have an id each, and every family has one', () => {
    const ids = builtInLayouts.map(({ layout }) => layout.id);
    expect(new Set(ids).size).toBe(ids.length);
    expect(new Set(builtInLayouts.map(({ family }) => family)).size).toBe(9);
    expect(Object.keys(published).sort()).toEqual(ids.filter((id) => id !== 'own').sort());
  });

  it('name every drum of a pan differently', () => {
    for (const { layout } of builtInLayouts) {
      expect(new Set(layout.drums.map(({ name }) => name)).size).toBe(layout.drums.length);
    }
  });

  it('offer both leads and the double second mirrored', () => {
    expect(
      builtInLayouts.filter((entry) => entry.isMirroredToo).map(({ layout }) => layout.id),
    ).toEqual(['low-c-lead', 'high-d-lead', 'double-second']);
  });
});
