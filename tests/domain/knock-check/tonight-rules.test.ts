import { describe, expect, it } from 'vitest';
import {
  areRuleChanges,
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
  it.each([{}, { 'off-avoid': 45, heat: 'tell' }, { 'of-a-later-version': [1] }])(
    'are taken if they are %j',
    (value) => {
      expect(areRuleChanges(value)).toBe(true);
    },
  );

  it.each([
    null,
    [],
    'off-avoid',
    { 'off-avoid': 1000 },
    { 'off-avoid': '45' },
    { 'off-avoid': Number.NaN },
    { heat: 'hot' },
    { crack: 'tell' },
  ])('are left out if they are %j: a crack is never ruled away', (value) => {
    expect(areRuleChanges(value)).toBe(false);
  });
});
