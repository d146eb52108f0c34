// What decides whether a pan is played tonight: one table, which the user may edit. No published standard exists;
// all defaults are common practice, no source.

/** What something seen means for the pan: it is not played, not judged yet, made safe first, or only kept in mind. */
export type LookAction = 'do-not-play' | 'wait' | 'first' | 'tell';
/** What something heard means for a note: it is left out, played in passing only, or nothing. */
export type NoteAction = 'avoid' | 'in-passing' | 'play';
/** What it means when a note that the set needs is gone in every octave. */
export type LossAction = 'swap' | 'play-without';

interface ChoiceRule<Value extends string> {
  readonly kind: 'choice';
  readonly usual: Value;
  /** With one choice only the rule cannot be edited. */
  readonly choices: readonly Value[];
}

interface NumberRule {
  readonly kind: 'number';
  readonly usual: number;
  readonly least: number;
  readonly most: number;
  readonly unit: 'cents' | 'percent' | 'minutes';
}

const choice = <Value extends string>(
  usual: Value,
  choices: readonly Value[],
): ChoiceRule<Value> => ({ kind: 'choice', usual, choices });
const look = (usual: LookAction): ChoiceRule<LookAction> =>
  choice(usual, ['do-not-play', 'wait', 'first', 'tell']);
const sign = (usual: NoteAction): ChoiceRule<NoteAction> =>
  choice(usual, ['avoid', 'in-passing', 'play']);
const number = (
  usual: number,
  unit: NumberRule['unit'],
  least: number,
  most: number,
): NumberRule => ({ kind: 'number', usual, unit, least, most });

/** The table. What was seen comes first, then each note, then the pan as a whole. */
export const tonightRuleTable = {
  /** A crack spreads, so this rule cannot be edited. */
  crack: choice<LookAction>('do-not-play', ['do-not-play']),
  'sharp-edges': look('first'),
  rim: look('tell'),
  skirt: look('first'),
  hangers: look('first'),
  stand: look('first'),
  heat: look('wait'),
  water: look('wait'),
  /** How long a hot pan stands in the shade before it is judged. */
  'heat-minutes': number(30, 'minutes', 5, 120),
  /** Each strike lower than the one before: the note is collapsing. */
  walking: sign('avoid'),
  dead: sign('avoid'),
  choked: sign('avoid'),
  buzzing: sign('avoid'),
  'no-octave': sign('in-passing'),
  'no-third': sign('play'),
  'new-doublet': sign('in-passing'),
  /** How far a fundamental lies from the pan as a whole. */
  'off-in-passing': number(20, 'cents', 5, 100),
  'off-avoid': number(30, 'cents', 5, 200),
  /** How far an octave lies from its own note. */
  'octave-in-passing': number(30, 'cents', 5, 200),
  /** From this far sharp a note is worth a magnet. */
  'magnet-from': number(12, 'cents', 5, 100),
  /** How far the whole pan lies from the band before it is heard, and before another pan is better. */
  'pan-heard': number(10, 'cents', 3, 50),
  'pan-swap': number(25, 'cents', 5, 100),
  /** Share of the notes the set needs that may be left out. */
  'most-left-out': number(33, 'percent', 5, 100),
  'note-lost': choice<LossAction>('swap', ['swap', 'play-without']),
} as const;

export type TonightRule = keyof typeof tonightRuleTable;

type ValueOf<Rule> = Rule extends { readonly choices: readonly (infer Value)[] } ? Value : number;

export type TonightRules = {
  readonly [Rule in TonightRule]: ValueOf<(typeof tonightRuleTable)[Rule]>;
};

export const tonightRuleNames = Object.keys(tonightRuleTable) as readonly TonightRule[];

export const usualTonightRules = Object.fromEntries(
  tonightRuleNames.map((name) => [name, tonightRuleTable[name].usual]),
) as unknown as TonightRules;

/** What the user has set otherwise, as it was stored: by the name of the rule, its value. */
export type RuleChanges = Readonly<Record<string, unknown>>;

/** The rules with the user's changes in them. A value that its rule may not have, or of no rule, changes nothing. */
export const rulesWith = (changes: RuleChanges): TonightRules => ({
  ...usualTonightRules,
  ...Object.fromEntries(
    Object.entries(changes).filter(([name, value]) => isRuleName(name) && isRuleValue(name, value)),
  ),
});

const isRuleName = (name: string): name is TonightRule => Object.hasOwn(tonightRuleTable, name);

/** Whether a rule may have this value. */
export function isRuleValue(name: TonightRule, value: unknown): boolean {
  const rule = tonightRuleTable[name];
  return rule.kind === 'number'
    ? typeof value === 'number' && value >= rule.least && value <= rule.most
    : (rule.choices as readonly unknown[]).includes(value);
}
