// How the bench hears: the microphone, or the sound of a simulated pan.
import { computed, effect, type ReadonlySignal, signal } from '@preact/signals';
import type { Heard } from '../../domain/measurement/strike';
import { notesOf } from '../../domain/pans/layout';
import type { Clock } from '../../domain/ports/phone-ports';
import { knownNotes } from '../../domain/reading/known-notes';
import type { Instant } from '../../domain/tuning/units';
import type { ListenModel } from '../listening/listen-model';
import { noteHeard, type OpenBench } from './open-bench';

export interface BenchHearing {
  /** What is heard is meant for this bench, even if the microphone is gone. */
  readonly isOurs: ReadonlySignal<boolean>;
  /** The microphone is open for this bench. */
  readonly isListening: ReadonlySignal<boolean>;
  /** It began to listen by itself, and nothing has been heard since. */
  readonly cameOn: ReadonlySignal<boolean>;
  /** Begins to listen. Call inside a tap. */
  begin(bench: OpenBench): Promise<void>;
  /** Begins to listen where the microphone was on a moment ago, as it is for the next note of a pan. */
  goOn(bench: OpenBench): Promise<void>;
  /** Turns the microphone off, as the user wants it. */
  stop(): void;
  /** What is heard from now on is meant for somebody else. */
  letGo(): void;
}

/** Up to this long ago counts as "a moment ago", milliseconds (own choice): time to go from one note to the next. */
const aMoment = 60_000;

/** `hear` is told everything that is for the bench; events are numbered on over every new listening. */
export function createBenchHearing(
  listen: ListenModel,
  hear: (heard: Heard) => void,
  clock: Clock,
): BenchHearing {
  const isOurs = signal(false);
  const cameOn = signal(false);
  /** When the microphone was on last, unless the user has turned it off. */
  let lastOn: Instant | null = null;
  let isOn = false;
  effect(() => {
    const isOnNow = listen.microphone.value.kind === 'listening';
    if (isOn && !isOnNow) lastOn = clock.now();
    isOn = isOnNow;
  });
  let eventsBefore = 0;
  let lastEvent = 0;

  listen.onHeard((heard) => {
    if (!isOurs.value) return;
    cameOn.value = false;
    const event = heard.event + eventsBefore;
    lastEvent = Math.max(lastEvent, event);
    hear(asOnBench({ ...heard, event }));
  });

  const begin = async (bench: OpenBench): Promise<void> => {
    eventsBefore = lastEvent;
    isOurs.value = true;
    const note = noteHeard(bench);
    switch (bench.subject.kind) {
      case 'pan': {
        const { a4, readings, layout } = bench.around;
        const notes = layout === null ? [] : notesOf(layout);
        const known = knownNotes(readings);
        return listen.listenTo({ notes, known, a4, whose: 'bench' }, note);
      }
      case 'bare':
        listen.expect(note);
        return listen.listen();
      case 'practice':
        return listen.beginPractice(bench.subject.source);
    }
  };

  return {
    isOurs,
    isListening: computed(
      () => isOurs.value && ['priming', 'listening'].includes(listen.microphone.value.kind),
    ),
    cameOn,
    begin(bench) {
      cameOn.value = false;
      return begin(bench);
    },
    async goOn(bench) {
      const isRecent = isOn || (lastOn !== null && clock.now() - lastOn <= aMoment);
      if (!isRecent || bench.subject.kind === 'practice') return;
      cameOn.value = true;
      await begin(bench);
    },
    stop() {
      cameOn.value = false;
      isOurs.value = false;
      isOn = false;
      lastOn = null;
      void listen.stop();
    },
    letGo() {
      isOurs.value = false;
    },
  };
}

/**
 * A knock, or a ring too short to tell, is a hammer blow here, where the hammer is in use: the ear calls one blow
 * in six a short ring, and one real strike in forty (`npm run fit:ear`).
 */
const asOnBench = (heard: Heard): Heard =>
  heard.kind === 'refused' && heard.reason === 'short-ring'
    ? { kind: 'knock', event: heard.event, at: heard.at }
    : heard;
