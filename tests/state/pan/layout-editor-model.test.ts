import { describe, expect, it } from 'vitest';
import { notesOf } from '../../../src/domain/pans/layout';
import { doubleSecond } from '../../../src/domain/pans/layouts/double-second';
import { lowCLead } from '../../../src/domain/pans/layouts/low-c-lead';
import { noteNamed } from '../../../src/domain/pans/place-notes';
import { createLayoutEditorModel } from '../../../src/state/pan/layout-editor-model';

const c4 = noteNamed('C4');
const d4 = noteNamed('D4');

describe('the editor of a layout', () => {
  it('changes its own copy and nothing else', () => {
    const before = JSON.stringify(lowCLead);
    const model = createLayoutEditorModel(lowCLead);
    model.choose(c4);
    model.remove();
    expect(notesOf(model.layout.value)).toHaveLength(28);
    expect(JSON.stringify(lowCLead)).toBe(before);
  });

  it('takes a whole drag back in one step, and the drag before it in another', () => {
    const model = createLayoutEditorModel(lowCLead);
    model.choose(c4);
    for (const far of [0.3, 0.5]) {
      model.startDrag();
      for (const clock of [5, 4, 3]) model.dragTo({ clock, radius: far });
    }
    expect(model.place.value).toMatchObject({ clock: 3, radius: 0.5 });
    model.undo();
    expect(model.place.value).toMatchObject({ clock: 3, radius: 0.3 });
    model.undo();
    expect(model.layout.value).toBe(lowCLead);
    expect([model.canUndo.value, model.canRedo.value]).toEqual([false, true]);
    model.redo();
    expect(model.place.value).toMatchObject({ clock: 3, radius: 0.3 });
  });

  it('moves the chosen note by keys, to the right and towards the player', () => {
    const model = createLayoutEditorModel(lowCLead);
    model.choose(noteNamed('C6'));
    model.dragTo({ clock: 6, radius: 0.2 });
    model.nudge(0, 0.02);
    expect(model.place.value?.clock).toBeCloseTo(6, 9);
    expect(model.place.value?.radius).toBeCloseTo(0.22, 9);
    model.nudge(0.02, 0);
    expect(model.place.value?.clock).toBeLessThan(6);
  });

  it('refuses a doubled note with the reason, and forgets the refusal at the next change', () => {
    const model = createLayoutEditorModel(lowCLead);
    model.choose(c4);
    model.rename(d4);
    expect(model.refused.value).toEqual({ why: 'doubled', note: d4 });
    expect(model.chosen.value).toBe(c4);
    expect(model.layout.value).toBe(lowCLead);
    model.rename(noteNamed('B3'));
    expect(model.refused.value).toBeNull();
    expect(model.chosen.value).toBe(noteNamed('B3'));
    model.undo();
    expect(model.chosen.value).toBeNull();
  });

  it('shows what is wrong while it lets it happen', () => {
    const model = createLayoutEditorModel(lowCLead);
    model.choose(c4);
    model.dragTo({ clock: 12, radius: 0.8 });
    expect(model.faults.value).toContainEqual({
      kind: 'overlap',
      note: c4,
      other: noteNamed('F#4'),
    });
  });

  it('adds the note that is missing to the shown drum and chooses it', () => {
    const model = createLayoutEditorModel(doubleSecond);
    model.choose(noteNamed('G3'));
    model.remove();
    expect([model.drum.value, model.proposed.value]).toEqual([1, noteNamed('G3')]);
    model.showDrum(0);
    model.add();
    expect([model.drum.value, model.chosen.value]).toEqual([0, noteNamed('G3')]);
    model.moveToDrum(1);
    expect([model.drum.value, model.chosen.value]).toEqual([1, noteNamed('G3')]);
  });

  it('lets a note go when another drum is shown', () => {
    const model = createLayoutEditorModel(doubleSecond);
    model.choose(noteNamed('F#3'));
    model.showDrum(1);
    expect([model.drum.value, model.chosen.value]).toEqual([1, null]);
  });

  it('keeps an offset within a semitone, and takes no text for a number', () => {
    const model = createLayoutEditorModel(lowCLead);
    model.choose(c4);
    model.setOffset(250);
    expect(model.place.value?.offset).toBe(100);
    model.setOffset(Number.NaN);
    expect(model.place.value?.offset).toBe(100);
    model.setOffset(0);
    expect(model.place.value).not.toHaveProperty('offset');
  });

  it('says what it would not do to a drum that holds notes, and shows a drum it has added', () => {
    const model = createLayoutEditorModel(doubleSecond);
    model.removeDrum();
    expect(model.refused.value?.why).toBe('not-empty');
    model.addDrum();
    expect(model.drum.value).toBe(2);
    model.removeDrum();
    expect(model.layout.value).toEqual(doubleSecond);
    expect(model.drum.value).toBe(1);
  });
});
