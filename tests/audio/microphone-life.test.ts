import { describe, expect, it } from 'vitest';
import {
  afterBlock,
  insecureError,
  type Pulse,
  processingOf,
  stateAt,
  stateForRefusal,
} from '../../src/audio/microphone-life';

const pulse: Pulse = {
  startedAt: 0,
  lastBlockAt: 10_000,
  lastSoundAt: 10_000,
  wasHidden: false,
  processing: [],
  sampleRate: 48_000,
};

describe('a running microphone', () => {
  it('is getting ready until blocks have come for a moment', () => {
    expect(stateAt({ ...pulse, lastBlockAt: null, lastSoundAt: 0 }, 500).kind).toBe('priming');
    expect(stateAt({ ...pulse, lastBlockAt: 200, lastSoundAt: 200 }, 250).kind).toBe('priming');
  });

  it('listens while blocks come', () => {
    expect(stateAt({ ...pulse, processing: ['gain control'] }, 10_100)).toEqual({
      kind: 'listening',
      processing: ['gain control'],
      sampleRate: 48_000,
    });
  });

  it('is lost when blocks stop', () => {
    expect(stateAt(pulse, 11_000).kind).toBe('lost');
  });

  it('is lost when blocks never come, but only after a longer wait', () => {
    const waiting = { ...pulse, lastBlockAt: null };
    expect(stateAt(waiting, 2000).kind).toBe('priming');
    expect(stateAt(waiting, 5000).kind).toBe('lost');
  });

  it('is interrupted, not lost, when blocks stopped while the app was hidden', () => {
    const hidden = { ...pulse, wasHidden: true };
    expect(stateAt(hidden, 11_000).kind).toBe('interrupted');
    const back = afterBlock(hidden, 0.1, 11_000, false);
    expect(stateAt(back, 12_000).kind).toBe('lost');
  });

  it('is silent after 2.5 s of exact zeros, and listens again when sound comes', () => {
    let zeros = pulse;
    for (let now = 10_000; now <= 12_600; now += 100) zeros = afterBlock(zeros, 0, now, false);
    expect(stateAt(zeros, 12_450).kind).toBe('listening');
    expect(stateAt(zeros, 12_600).kind).toBe('silent');
    expect(stateAt(afterBlock(zeros, 1e-5, 12_650, false), 12_700).kind).toBe('listening');
  });
});

describe('a refused microphone', () => {
  it('is denied, absent or busy by the name of the error', () => {
    // Names: W3C Media Capture and Streams, getUserMedia.
    expect(stateForRefusal('NotAllowedError').kind).toBe('denied');
    expect(stateForRefusal('NotFoundError').kind).toBe('absent');
    expect(stateForRefusal('NotReadableError').kind).toBe('busy');
    expect(stateForRefusal('Error')).toEqual({ kind: 'failed', why: 'unknown' });
  });

  it('is interrupted when a call keeps the sound from starting', () => {
    // Web Audio, AudioContext.resume(): rejects with InvalidStateError while interrupted.
    expect(stateForRefusal('InvalidStateError').kind).toBe('interrupted');
    expect(stateForRefusal('TimeoutError').kind).toBe('interrupted');
  });
});

describe('a page that did not come over https', () => {
  it('is told apart from every other failure', () => {
    expect(stateForRefusal(insecureError)).toEqual({ kind: 'failed', why: 'insecure' });
  });
});

describe('the processing of a phone', () => {
  it('is named where it stayed on', () => {
    const on = { echoCancellation: true, noiseSuppression: true, autoGainControl: true };
    expect(processingOf(on)).toEqual(['echo cancellation', 'noise suppression', 'gain control']);
    expect(processingOf({ ...on, noiseSuppression: false, echoCancellation: false })).toEqual([
      'gain control',
    ]);
  });

  it('is not claimed where the browser says nothing', () => {
    expect(processingOf({})).toEqual([]);
  });
});
