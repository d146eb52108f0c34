import { describe, expect, it } from 'vitest';
import { markupText } from '../../../../src/ui/sheet/markup';
import { sheetPage } from '../../../../src/ui/sheet/sheet-page';
import { eventWords } from '../../../../src/ui/words/tuner/sheet-event-words';
import { remarksCell, sheetWords } from '../../../../src/ui/words/tuner/sheet-words';
import { panWith } from '../../../browser/seeded-pans';
import { damagedLead, knockedLead, ruinedLead } from '../../../browser/sheet-rack';
import { sheetSample } from '../../../domain/sheet/sheet-sample';

const damaged = sheetSample(damagedLead);
const remarkOn = (sheet: typeof damaged, note: number) => {
  const found = sheet.notes.find((each) => each.note === note);
  return found && remarksCell(found);
};
const knocks = (sheet: typeof damaged) =>
  sheet.events.filter(({ kind }) => kind === 'knock').map(eventWords);

describe('the remarks beside a note', () => {
  it('name its signs of damage beside its mark', () => {
    expect(remarkOn(damaged, 60)).toBe('dead; choked');
    expect(remarkOn(damaged, 62)).toBe('no octave');
    expect(remarkOn(damaged, 66)).toBe('no third');
    expect(remarkOn(damaged, 73)).toMatch(/octave doubled$/);
    expect(remarkOn(damaged, 74)).toBe('sharp; choked, buzzing');
    expect(remarkOn(damaged, 76)).toBe('choked');
    expect(remarkOn(damaged, 75)).toBe('');
  });

  it('say nothing twice: a note that is marked as buzzing, and one whose reading walks', () => {
    expect(remarkOn(damaged, 64)).toBe('buzzing');
    expect(remarkOn(damaged, 71)).toBe('walking −6.0 a strike');
  });

  it('say so where the table shows a later round', () => {
    const later = sheetSample([...damagedLead, ...panWith({}, [{ day: 220 }]).slice(1)]);
    expect(remarkOn(later, 74)).toBe('after the knock: choked, buzzing');
    expect(remarkOn(later, 71)).toBe('after the knock: walking');
  });
});

describe('a knock on the sheet', () => {
  it('is told with the signs that were heard after it', () => {
    expect(knocks(damaged)[0]).toMatch(
      /Signs of damage heard after it: choked C4, A4, D5, E5; no octave D4; buzzing E4, D5; no third F♯4; walking B4; octave doubled C♯5\.$/,
    );
    expect(knocks(damaged)[1]).not.toMatch(/heard after it/);
  });

  it('is told with the number of notes where many show the same sign', () => {
    const ruined = sheetSample(ruinedLead);
    const walking = ruined.notes.filter(({ signs }) => signs.kinds.includes('walking')).length;
    // All but the one that gave no sound.
    expect(walking).toBe(28);
    expect(knocks(ruined)[0]).toMatch(
      /walking on 28 notes; octave doubled on \d+ notes; choked E5\.$/,
    );
  });

  it('is told with the news that nothing was heard, too', () => {
    const check = damagedLead.filter(({ id }) => id === 'check-2');
    const sound = sheetSample([...panWith({}, [{ day: 3 }, { day: 210 }]), ...check]);
    expect(knocks(sound)[0]).toMatch(/No sign of damage was heard after it\.$/);
  });

  it('has its words explained where a sign is named, and only there', () => {
    expect(markupText(sheetPage(damaged, null))).toContain(sheetWords.howSigns);
    expect(markupText(sheetPage(sheetSample(knockedLead), null))).not.toContain(
      sheetWords.howSigns,
    );
  });
});
