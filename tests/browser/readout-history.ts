/** The attributes of #readout, and when they were seen (ms of performance.now()). */
export interface HeardAttributes {
  readonly time: number;
  readonly state: string;
  readonly note: string;
  readonly verdict: string;
  readonly fundamentalCents: string;
  readonly octaveCents: string;
  readonly thirdCents: string;
  readonly thirdKind: string;
  readonly strikes: string;
}

declare global {
  interface Window {
    readoutHistory?: HeardAttributes[];
  }
}

/** Runs in the page before the app: keeps every change of the readout, so that nothing shown for a moment is missed. */
export function recordReadout(): void {
  const history: HeardAttributes[] = [];
  window.readoutHistory = history;
  let last = '';
  const look = () => {
    const data = document.getElementById('readout')?.dataset;
    if (!data) return;
    const seen = {
      state: data['state'] ?? '',
      note: data['note'] ?? '',
      verdict: data['verdict'] ?? '',
      fundamentalCents: data['fundamentalCents'] ?? '',
      octaveCents: data['octaveCents'] ?? '',
      thirdCents: data['thirdCents'] ?? '',
      thirdKind: data['thirdKind'] ?? '',
      strikes: data['strikes'] ?? '',
    };
    const text = JSON.stringify(seen);
    if (text === last) return;
    last = text;
    history.push({ time: performance.now(), ...seen });
  };
  new MutationObserver(look).observe(document, {
    subtree: true,
    childList: true,
    attributes: true,
  });
}
