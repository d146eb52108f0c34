import { describe, expect, it } from 'vitest';
import {
  isRuleValue,
  rulesWith,
  tonightRuleNames,
  tonightRuleTable,
  usualTonightRules,
} from '../../../src/domain/knock-check/tonight-rules';

describe('the table of rules', () => {
  it('has a usual value for every rule, which the rule allows', () => {
    for (const name of tonightRuleNames) {
      expect(isRuleValue(name, usualTonightRules[name]), name).toBe(true);
      expect(usualTonightRules[name]).toBe(tonightRuleTable[name].usual);
    }
  });

  it('keeps what the user has not changed', () => {
    expect(rulesWith({ 'off-avoid': 45 })).toEqual({ ...usualTonightRules, 'off-avoid': 45 });
  });
});

describe('stored changes of the rules', () => {
  it.each([{}, { 'off-avoid': 45 }, { 'off-avoid': 45, heat: 'tell' }])(
    'count if they are %j',
    (changes) => {
      expect(rulesWith(changes)).toEqual({ ...usualTonightRules, ...changes });
    },
  );

  it.each([
    { 'off-avoid': 1000 },
    { 'off-avoid': '45' },
    { 'off-avoid': Number.NaN },
    { heat: 'hot' },
    { crack: 'tell' },
    { 'of-a-later-version': [1] },
    JSON.parse('{ "__proto__": 1, "toString": 2 }'),
  ])('count for nothing if they are %j: a crack is never ruled away', (changes) => {
    expect(rulesWith(changes)).toEqual(usualTonightRules);
    expect(rulesWith({ ...changes, 'magnet-from': 20 })).toEqual({
      ...usualTonightRules,
      'magnet-from': 20,
    });
  });
});
