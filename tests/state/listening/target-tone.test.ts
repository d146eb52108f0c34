// A tone to tune to by ear.
import { signal } from '@preact/signals';
import { describe, expect, it } from 'vitest';
import { hertz } from '../../../src/domain/tuning/units';
import { createTargetTone } from '../../../src/state/listening/target-tone';

function phone(isOpen: boolean) {
  const isListening = signal(isOpen);
  const log: string[] = [];
  let end = (): void => undefined;
  const tone = createTargetTone({
    listen: {
      isListening,
      stop: async () => {
        isListening.value = false;
        log.push('microphone off');
      },
    },
    player: {
      hold: (hz) => {
        log.push(`holds ${hz}${isListening.value ? ' into the microphone' : ''}`);
        return new Promise<void>((resolve) => {
          end = resolve;
        });
      },
      stop: () => {
        log.push('silence');
        end();
      },
    },
  });
  return { tone, log };
}

describe('a target tone', () => {
  it('is held until it is tapped again', async () => {
    const { tone, log } = phone(false);
    void tone.toggle(hertz(440));
    expect(tone.sounding.value).toBe(440);
    await tone.toggle(hertz(440));
    expect(tone.sounding.value).toBeNull();
    expect(log).toEqual(['holds 440', 'silence']);
  });

  it('ends when another one begins: there is one at a time', async () => {
    const { tone, log } = phone(false);
    void tone.toggle(hertz(440));
    void tone.toggle(hertz(880));
    await Promise.resolve();
    expect(tone.sounding.value).toBe(880);
    expect(log).toEqual(['holds 440', 'silence', 'holds 880']);
  });

  it('never sounds into an open microphone', async () => {
    const { tone, log } = phone(true);
    void tone.toggle(hertz(440));
    await Promise.resolve();
    await Promise.resolve();
    expect(log).toEqual(['microphone off', 'holds 440']);
  });

  it('does not begin any more when it was ended while the microphone was closing', async () => {
    const { tone, log } = phone(true);
    const begun = tone.toggle(hertz(440));
    tone.stop();
    await begun;
    expect(log).toEqual(['microphone off']);
  });
});
