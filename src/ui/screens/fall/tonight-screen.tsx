// Can the pan be played tonight? One sentence, the reasons, the map, and what may be done until the tuner comes.
import { useMemo } from 'preact/hooks';
import type { ReadingsByRound } from '../../../domain/knock-check/round-signs';
import { rulesWith } from '../../../domain/knock-check/tonight-rules';
import { resultNow } from '../../../domain/rounds/pan-now';
import type { RoundResult } from '../../../domain/rounds/round-result';
import { panAtAGlance } from '../../../state/pan/pan-at-a-glance';
import type { OpenPan } from '../../../state/pan/pan-model';
import {
  signsOfPan,
  type TonightRounds,
  tonightOfPan,
  tonightRounds,
} from '../../../state/pan/tonight-of-pan';
import type { Needs } from '../../frame/screen-props';
import { PanGate } from '../../parts/gates/pan-gate';
import { RoundsGate, resultIn } from '../../parts/gates/rounds-gate';
import { TonightAnswer } from './tonight-answer';

type Models = Needs<'pan' | 'results' | 'knock' | 'settings' | 'now' | 'fileHandout'>;

export function TonightScreen({ models }: { readonly models: Models }) {
  return <PanGate model={models.pan}>{(pan) => <Loaded models={models} pan={pan} />}</PanGate>;
}

interface Props {
  readonly models: Models;
  readonly pan: OpenPan;
}

/** Needs the round that is judged and the one that it is compared with. */
function Loaded({ models, pan }: Props) {
  const rounds = tonightRounds(pan);
  const { now, before } = rounds;
  return (
    <RoundsGate
      results={models.results}
      pan={pan}
      rounds={[now, before].filter((start) => start !== null)}
    >
      {(read) => (
        <Judged
          models={models}
          pan={pan}
          rounds={rounds}
          before={resultIn(read, before)}
          readings={read.readings}
        />
      )}
    </RoundsGate>
  );
}

/** The result by the rules and needs of this moment; the signs, which take longest, only once. */
function Judged({
  models,
  pan,
  rounds,
  before,
  readings,
}: Props & {
  readonly rounds: TonightRounds;
  readonly before: RoundResult | null;
  readonly readings: ReadingsByRound;
}) {
  const { settings } = models;
  const { highestWithPartials } = settings.limits.value;
  const judging = settings.judging.value;
  const glance = useMemo(() => panAtAGlance(pan, judging), [pan, judging]);
  const result = resultNow(glance);
  const signs = useMemo(
    () => signsOfPan(pan, rounds, readings, glance.counting, highestWithPartials),
    [pan, rounds.now?.id, rounds.before?.id, highestWithPartials],
  );
  const tonight = tonightOfPan(pan, rounds.check, result, signs, {
    needs: settings.setNeeds.value,
    tunes: settings.tunes.value,
    rules: rulesWith(settings.ruleChanges.value),
  });
  return (
    <TonightAnswer
      knock={models.knock}
      settings={settings}
      fileHandout={models.fileHandout}
      now={models.now}
      pan={pan}
      check={rounds.check}
      tonight={tonight}
      result={result}
      before={before}
    />
  );
}
