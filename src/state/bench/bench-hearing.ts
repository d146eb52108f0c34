// How the bench hears: the microphone, or the sound of a simulated pan.
import { computed, type ReadonlySignal, signal } from '@preact/signals';
import type { Heard } from '../../domain/measurement/strike';
import { notesOf } from '../../domain/pans/layout';
import { knownNotes } from '../../domain/reading/known-notes';
import type { ListenModel } from '../listening/listen-model';
import { noteHeard, type OpenBench } from './open-bench';

export interface BenchHearing {
  /** What is heard is for this bench; the microphone may be gone all the same. */
  readonly isOurs: ReadonlySignal<boolean>;
  /** The microphone is open for this bench. */
  readonly isListening: ReadonlySignal<boolean>;
  /** Begins to listen. Call inside a tap. */
  begin(bench: OpenBench): Promise<void>;
  /** What is heard from now on is for somebody else. */
  letGo(): void;
}

/** `hear` is told everything that is for the bench; events are numbered on over every new listening. */
export function createBenchHearing(
  listen: ListenModel,
  hear: (heard: Heard) => void,
): BenchHearing {
  const isOurs = signal(false);
  let eventsBefore = 0;
  let lastEvent = 0;

  listen.onHeard((heard) => {
    if (!isOurs.value) return;
    const event = heard.event + eventsBefore;
    lastEvent = Math.max(lastEvent, event);
    hear(asOnBench({ ...heard, event }));
  });

  return {
    isOurs,
    isListening: computed(
      () => isOurs.value && ['priming', 'listening'].includes(listen.microphone.value.kind),
    ),
    async begin(bench) {
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
    },
    letGo() {
      isOurs.value = false;
    },
  };
}

/**
 * What is knocked or rings too shortly to tell is a hammer blow here, where the hammer is in use: the ear calls one blow
 * in six a short ring, and one real strike in forty (`npm run fit:ear`).
 */
const asOnBench = (heard: Heard): Heard =>
  heard.kind === 'refused' && heard.reason === 'short-ring'
    ? { kind: 'knock', event: heard.event, at: heard.at }
    : heard;
