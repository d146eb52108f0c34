// What "not sure" means for tonight: the safe side where it costs little, and never a "do not play" by itself.
import { describe, expect, it } from 'vitest';
import { judgeTonight } from '../../../src/domain/knock-check/judge-tonight';
import { rulesWith } from '../../../src/domain/knock-check/tonight-rules';
import { lowCLead } from '../../../src/domain/pans/layouts/low-c-lead';
import type { LookKind } from '../../../src/domain/records/look-kinds';
import { panId, recordId } from '../../../src/domain/records/rack-records';
import { instant } from '../../../src/domain/tuning/units';
import { resultSample, wholeLead } from '../rounds/result-sample';

const sound = resultSample(wholeLead(() => ({})));

const judged = (unsure: readonly LookKind[]) =>
  judgeTonight(
    {
      layout: lowCLead,
      check: {
        kind: 'knock-check',
        shape: 1,
        id: recordId('check'),
        pan: panId('pan-1'),
        at: instant(sound.at - 60_000),
        round: sound.round,
        looks: unsure.map((look) => ({ look, answer: 'unsure', photo: null })),
        impact: null,
        remarks: '',
      },
      result: sound,
      cracked: [],
      signs: new Map(),
      magnets: new Map(),
      needed: null,
    },
    rulesWith({}),
  );

describe('somebody who is not sure', () => {
  it('whether there is a crack takes another pan if there is one', () => {
    expect(judged(['crack'])).toMatchObject({
      verdict: { kind: 'swap' },
      reasons: [{ kind: 'look-unsure', look: 'crack' }],
      unsure: ['crack'],
    });
  });

  it('whether something is sharp or loose makes it safe first, and plays', () => {
    expect(judged(['sharp-edges', 'hangers'])).toMatchObject({
      verdict: { kind: 'play' },
      first: ['sharp-edges', 'hangers'],
    });
  });

  it('whether the rim is bent or the pan warm is told, and nothing else follows', () => {
    expect(judged(['rim', 'heat'])).toMatchObject({
      verdict: { kind: 'play' },
      first: [],
      tell: [],
      unsure: ['rim', 'heat'],
    });
  });
});
