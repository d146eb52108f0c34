import { describe, expect, it } from 'vitest';
import { type Pulse, stateAt, stateForRefusal } from '../../src/audio/microphone-life';

const pulse: Pulse = { startedAt: 0, lastBlockAt: 10_000, lastSoundAt: 10_000, processing: [] };

describe('a running microphone', () => {
  it('is getting ready until blocks have come for a moment', () => {
    expect(stateAt({ ...pulse, lastBlockAt: null, lastSoundAt: 0 }, 500).kind).toBe('priming');
    expect(stateAt({ ...pulse, lastBlockAt: 200, lastSoundAt: 200 }, 250).kind).toBe('priming');
  });

  it('listens while blocks come', () => {
    expect(stateAt({ ...pulse, processing: ['gain control'] }, 10_100)).toEqual({
      kind: 'listening',
      processing: ['gain control'],
    });
  });

  it('is lost when blocks stop', () => {
    expect(stateAt(pulse, 11_000).kind).toBe('lost');
  });

  it('is silent after 2.5 s of exact zeros, and listens again when sound comes', () => {
    const zeros = { ...pulse, lastBlockAt: 12_600, lastSoundAt: 10_000 };
    expect(stateAt(zeros, 12_600).kind).toBe('silent');
    expect(stateAt({ ...zeros, lastSoundAt: 12_650 }, 12_700).kind).toBe('listening');
  });
});

describe('a refused microphone', () => {
  it('is denied, absent or busy by the name of the error', () => {
    // Names: W3C Media Capture and Streams, getUserMedia.
    expect(stateForRefusal('NotAllowedError', '').kind).toBe('denied');
    expect(stateForRefusal('NotFoundError', '').kind).toBe('absent');
    expect(stateForRefusal('NotReadableError', '').kind).toBe('busy');
    expect(stateForRefusal('Error', 'x')).toEqual({ kind: 'failed', detail: 'x' });
  });
});
