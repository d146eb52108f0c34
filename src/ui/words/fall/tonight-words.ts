// What is said about a pan tonight: whether it can be played, why, and without which notes.

import type { TonightReason, TonightVerdict } from '../../../domain/knock-check/judge-tonight';
import type { PitchClass } from '../../../domain/knock-check/saved-tunes';
import type { NoteReason, SignKind } from '../../../domain/knock-check/tonight-notes';
import type { LookAction, LossAction, NoteAction } from '../../../domain/knock-check/tonight-rules';
import type { HandedOut } from '../../../domain/ports/file-handout';
import type { LookKind } from '../../../domain/records/look-kinds';
import { displayName } from '../../../domain/tuning/note-names';
import type { Instant } from '../../../domain/tuning/units';
import { centsWords, pluralOf } from '../count-words';
import { listWords, noteListWords } from '../list-words';
import { directionWord, signedCents } from '../words';
import { lookWords } from './knock-words';

const classNames = ['C', 'C♯', 'D', 'E♭', 'E', 'F', 'F♯', 'G', 'A♭', 'A', 'B♭', 'B'] as const;
/** Major keys are written with flats where notes are written with sharps. */
const keyNames: Readonly<Record<number, string>> = { 1: 'D♭', 6: 'G♭' };

export const className = (note: PitchClass): string => classNames[note] ?? '';
export const keyName = (key: PitchClass): string => keyNames[key] ?? className(key);

/** "15:20". */
const clockWords = (at: Instant): string =>
  new Date(at).toLocaleTimeString('en-GB', { hour: '2-digit', minute: '2-digit' });

/** The result in one sentence. */
export function verdictSentence(verdict: TonightVerdict, now: Instant): string {
  switch (verdict.kind) {
    case 'do-not-play':
      return 'Do not play it.';
    case 'wait':
      if (verdict.until === null) return 'Wait. Nothing can be said yet.';
      return verdict.until > now
        ? `Wait until ${clockWords(verdict.until)}, then look again.`
        : 'The wait is over. Look again.';
    case 'strike-first':
      return 'Nobody knows yet. Strike its notes first.';
    case 'swap':
      return 'Take another pan if you can.';
    case 'play-without':
      return `Play it without ${noteListWords(verdict.notes)}.`;
    case 'play':
      return 'Play it.';
  }
}

/** Why the verdict is what it is. */
export function reasonSentence(reason: TonightReason): string {
  switch (reason.kind) {
    case 'look':
      return lookReasons[reason.look];
    case 'look-unsure':
      return `Nobody could tell: ${lookWords[reason.look].short}? Until somebody has looked who knows, take it as there.`;
    case 'cracked-note':
      return `${displayName(reason.note)} is marked as cracked.`;
    case 'unsettled':
      return 'It was struck while it was warm or just unloaded. Strike it again when it has stood in the shade for 20 to 30 minutes.';
    case 'not-struck':
      return {
        ever: 'Nobody has struck this pan in the app.',
        knock: 'It was not struck since it was knocked.',
        some: 'Too many of the notes you need were not struck.',
      }[reason.since];
    case 'pan-off':
      return `The whole pan is ${centsWords(reason.cents)} ${directionWord(reason.cents)}. Beside the band that sounds wrong.`;
    case 'many-left-out':
      return `${reason.count} of the ${reason.of} notes you need ${pluralOf(reason.count, 'is', 'are')} bad.`;
    case 'note-lost':
      return `No good ${listWords(reason.notes.map(className))} is left on it, high or low.`;
  }
}

const lookReasons: Readonly<Record<LookKind, string>> = {
  'sharp-edges': 'Something on it is sharp.',
  crack: 'It has a crack. A crack grows with every strike.',
  rim: 'The rim is bent.',
  skirt: 'The skirt is dented or touches something.',
  hangers: 'Something is loose or hangs wrong.',
  stand: 'The stand is not safe.',
  heat: 'It is warm. Heat moves many notes, and most of them come back in the shade.',
  water: 'The bowl is wet. Wipe it dry, then look again.',
};

/** What to do first about what was seen. */
export const firstSentence = (look: LookKind): string => lookWords[look].toDo;

const signWords: Readonly<Record<SignKind, string>> = {
  'no-octave': 'its octave is missing',
  'no-third': 'its third partial is missing',
  choked: 'it stops ringing too soon',
  walking: 'it changes with every strike',
  buzzing: 'it buzzes',
  'new-doublet': 'its octave has become two tones',
};

/** What is wrong with a note: "35 cents flat", "it buzzes". */
export function noteReasonWords(reason: NoteReason): string {
  switch (reason.kind) {
    case 'off':
      return `${centsWords(reason.cents)} ${directionWord(reason.cents)}`;
    case 'octave-off':
      return `its octave is ${centsWords(reason.cents)} ${directionWord(reason.cents)}`;
    case 'sign':
      return signWords[reason.sign];
    case 'mark':
      return { dead: 'marked as dead', buzzing: 'marked as buzzing', cracked: 'marked as cracked' }[
        reason.mark
      ];
  }
}

/** The same, short enough for the oval of a note. */
export function noteReasonShort(reason: NoteReason): string {
  switch (reason.kind) {
    case 'off':
      return signedCents(reason.cents);
    case 'octave-off':
      return `8ve ${signedCents(reason.cents)}`;
    case 'sign':
      return {
        'no-octave': 'no 8ve',
        'no-third': 'no 3rd',
        choked: 'choked',
        walking: 'walking',
        buzzing: 'buzzes',
        'new-doublet': 'doubled',
      }[reason.sign];
    case 'mark':
      return { dead: 'dead', buzzing: 'buzzes', cracked: 'cracked' }[reason.mark];
  }
}

/** What may be tried about a sign before a note is given up. */
export const signAdvice: Readonly<Partial<Record<SignKind, string>>> = {
  choked: 'See whether a hook, the skirt or a finger touches it. Free it, then strike it again.',
  walking: 'Stop striking it. The metal is giving way.',
  buzzing: 'See whether something loose rattles. If nothing does, it may be a crack: look again.',
};

export const tonightWords = {
  title: 'Tonight',
  link: 'Can we play it tonight?',
  needs: 'What does the set need?',
  needsAll: 'Nothing is chosen, so every note counts.',
  needsSome: (names: string) => `You need ${names}.`,
  keys: 'Major keys',
  keyLabel: (key: string) => `${key} major`,
  keysHint: 'A minor key has the notes of the major key three semitones above it.',
  notes: 'Single notes',
  tunes: 'Tunes',
  saveTune: 'Save these notes as a tune',
  tuneName: 'Name of the tune',
  tuneNameBad: 'Give the tune a name of its own.',
  removeTune: (name: string) => `Delete ${name}`,
  clear: 'Clear',
  why: 'Why',
  first: 'Do this first',
  keepInMind: 'Keep in mind',
  unsure: (what: string) => `Nobody could tell: ${what}. Show it to somebody who knows.`,
  noDrawing:
    'This pan has no drawing, so the app cannot name its notes. Strike each note softly and listen: leave out what buzzes, dies away at once or sounds lower with every strike.',
  listenToIt: 'Listen to any note',
  drawIt: 'Draw its notes',
  leaveOut: 'Leave out',
  inPassing: 'Short notes only',
  otherNotes: 'Bad, but the set does not need them',
  unread: (notes: string) => `Nobody has struck ${notes}.`,
  ifNone: (notes: string) => `If there is no other pan: leave out ${notes}.`,
  ifNoneAll: 'If there is no other pan, play softly and do not play alone.',
  againstBand: 'Against the band',
  wholePan: (where: string) => `The whole pan is ${where}.`,
  heard: 'Beside the others you will hear that.',
  notHeard: 'Hardly anybody will hear that.',
  noPitch: 'Too few notes were struck to tell.',
  wasBefore: (cents: string) => `It was ${cents} before.`,
  legend: { avoid: 'leave out', 'in-passing': 'short notes only', play: 'play' } satisfies Record<
    NoteAction,
    string
  >,
  notNeeded: 'not needed',
  notStruck: 'not struck',
  magnetTitle: 'A magnet for tonight',
  magnetHint: (notes: string, count: number) =>
    `${notes} ${pluralOf(count, 'is', 'are')} sharp, and nothing else is wrong. A small flexible magnet stuck under the note makes it lower. Its octave will not be right.`,
  magnetOff: 'It must come off before the tuner comes, so say here that it is on.',
  magnetPut: (note: string) => `I put a magnet on ${note}`,
  magnetTake: (note: string) => `I took it off ${note}`,
  magnetReminder: (notes: string) => `Magnet on ${notes}. Take it off before the tuner comes.`,
  rules: 'What decides',
  rulesWhy:
    'No published standard exists for this. These are habits of careful players. Change them as your band likes.',
  rulesUsual: 'Back to the usual ones',
  rulesBad: (least: number, most: number) => `Enter a number from ${least} to ${most}.`,
  send: 'Send this to the band leader',
  sendHint: 'As a picture, with the same in words.',
  sent: {
    shared: 'Handed on.',
    downloaded: 'The picture is among your downloads.',
    dismissed: 'Not sent.',
    again: 'Tap once more.',
    failed: 'The picture could not be handed on. Copy the text instead.',
  } satisfies Record<HandedOut, string>,
  making: 'Making the picture.',
  copy: 'Copy the text',
  copied: 'Copied. Paste it into a message.',
  notCopied: 'The text could not be copied. Select it here and copy it by hand:',
  pictureName: (pan: string, day: string) => `${pan} tonight ${day}.png`,
  lookAgain: 'Do the knock check',
  whoNext: 'Tell the band leader, and tell the tuner what happened.',
  lookActions: {
    'do-not-play': 'do not play it',
    wait: 'wait, no verdict yet',
    first: 'put it right first',
    tell: 'keep it in mind',
  } satisfies Record<LookAction, string>,
  noteActions: {
    avoid: 'leave the note out',
    'in-passing': 'play only short notes on it',
    play: 'play it',
  } satisfies Record<NoteAction, string>,
  lossActions: { swap: 'take another pan', 'play-without': 'play without it' } satisfies Record<
    LossAction,
    string
  >,
} as const;
