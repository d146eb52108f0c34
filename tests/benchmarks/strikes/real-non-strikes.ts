// Recorded drums and speech: how much of it is taken as a strike.
import { finallyHeard } from '../../dsp/listen-to';
import { drumSounds, missingDrums } from '../../sounds/drum-kits';
import { hasSpeech, missingSpeech, sentence, spoken } from '../../sounds/spoken-sentences';
import { keptBelowFull } from './garage';
import { inSilence, type Sound, toldNothing } from './hear-take';
import { percent, print } from './strike-table';

/** Other voices, and other sentences, than those of the fit (`npm run fit:ear`). */
const voices = ['en-us', 'en-gb+f3', 'pt-br+m2', 'pl+f1', 'nl+m5'];
const firstSentence = 70;
const sentences = 100;

interface Named extends Sound {
  readonly name: string;
}

/** Prints how many of `sounds` held what was taken as a strike, and which. */
function printTaken(kind: string, sounds: readonly Named[]): void {
  const taken = sounds.filter((sound) => {
    const { samples, sampleRate } = keptBelowFull(inSilence(sound));
    return finallyHeard(samples, sampleRate, toldNothing).some((each) => each.kind === 'strike');
  });
  const share = percent(taken.length, sounds.length);
  print(
    `${kind.padEnd(34)} ${taken.length} of ${sounds.length} taken as a strike (${share}): ${taken.map(({ name }) => name).join(', ')}`,
  );
}

export async function printNonStrikes(): Promise<void> {
  const drums = await drumSounds();
  if (drums) printTaken('drum kits', drums);
  else print(missingDrums());
  if (!hasSpeech()) return print(missingSpeech);
  printTaken(
    'speech',
    Array.from({ length: sentences }, (_, n) =>
      spoken(sentence(firstSentence + n), voices[n % voices.length] ?? 'en-us'),
    ),
  );
}
