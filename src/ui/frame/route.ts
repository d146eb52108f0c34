// Where in the app we are: the part of the address after "#/".
import { type ReadonlySignal, signal } from '@preact/signals';
import { type PanId, panId, type RoundId, roundId } from '../../domain/records/rack-records';
import { type MidiNote, midiNote } from '../../domain/tuning/units';

const plainScreens = [
  'rack',
  'listen',
  'inside',
  'practice',
  'practice-bench',
  'settings',
  'add-pan',
  'backup',
  'cautions',
  'what-moves',
  'dropped',
  'receive',
  'visit',
  'several',
] as const;
const panScreens = [
  'details',
  'layout',
  'begin',
  'history',
  'send',
  'knock',
  'tonight',
  'sheet',
  'tuned',
  'taken-out',
  'answers',
] as const;

export type PlainScreen = (typeof plainScreens)[number];
/** Screens of one pan that need nothing but the pan. */
export type PanScreenName = (typeof panScreens)[number];

export type Route =
  | { readonly [Screen in PlainScreen]: { readonly screen: Screen } }[PlainScreen]
  | { readonly screen: 'pan' | PanScreenName; readonly pan: PanId }
  | { readonly screen: 'round' | 'result'; readonly pan: PanId; readonly round: RoundId }
  | {
      readonly screen: 'note';
      readonly pan: PanId;
      readonly note: MidiNote;
      /** The round whose result led here. */
      readonly from?: RoundId | null;
    }
  | { readonly screen: 'bench'; readonly pan: PanId; readonly note: MidiNote }
  /** A note without a pan. */
  | { readonly screen: 'bare-bench'; readonly note: MidiNote };

/** The route of an address; one that leads nowhere leads to the rack. */
export function routeOf(hash: string): Route {
  const [first = '', pan = '', screen, last = '', then, origin = ''] = hash
    .replace(/^#\/?/, '')
    .split('/')
    .map(decoded);
  const plain = plainScreens.find((each) => each === first);
  if (plain) return { screen: plain };
  if (first === 'bench' && isNote(pan))
    return { screen: 'bare-bench', note: midiNote(Number(pan)) };
  if (first !== 'pan' || pan === '') return { screen: 'rack' };
  if (screen === undefined) return { screen: 'pan', pan: panId(pan) };
  const ofPan = panScreens.find((each) => each === screen);
  if (ofPan) return { screen: ofPan, pan: panId(pan) };
  if ((screen === 'round' || screen === 'result') && last !== '') {
    return { screen, pan: panId(pan), round: roundId(last) };
  }
  if ((screen === 'note' || screen === 'bench') && isNote(last)) {
    const note = { pan: panId(pan), note: midiNote(Number(last)) };
    if (screen === 'bench') return { screen, ...note };
    return then === 'result' && origin !== ''
      ? { screen, ...note, from: roundId(origin) }
      : { screen, ...note };
  }
  return { screen: 'rack' };
}

export function addressOf(to: PlainScreen | Route): string {
  const route = typeof to === 'string' ? { screen: to } : to;
  switch (route.screen) {
    case 'rack':
      return '#/';
    case 'pan':
      return `#/pan/${encodeURIComponent(route.pan)}`;
    case 'details':
    case 'layout':
    case 'begin':
    case 'history':
    case 'send':
    case 'knock':
    case 'tonight':
    case 'sheet':
    case 'tuned':
    case 'taken-out':
    case 'answers':
      return `#/pan/${encodeURIComponent(route.pan)}/${route.screen}`;
    case 'round':
    case 'result':
      return `#/pan/${encodeURIComponent(route.pan)}/${route.screen}/${encodeURIComponent(route.round)}`;
    case 'note': {
      const from = route.from ? `/result/${encodeURIComponent(route.from)}` : '';
      return `#/pan/${encodeURIComponent(route.pan)}/note/${route.note}${from}`;
    }
    case 'bench':
      return `#/pan/${encodeURIComponent(route.pan)}/${route.screen}/${route.note}`;
    case 'bare-bench':
      return `#/bench/${route.note}`;
    default:
      return `#/${route.screen}`;
  }
}

/** Leads to another screen, as a tap on a link would. */
export const goTo = (to: PlainScreen | Route): void => {
  window.location.hash = addressOf(to);
};

/** The current route, kept in step with the address bar. */
export function followRoute(window: Window): ReadonlySignal<Route> {
  const route = signal(routeOf(window.location.hash));
  window.addEventListener('hashchange', () => {
    route.value = routeOf(window.location.hash);
    window.scrollTo(0, 0);
  });
  return route;
}

const isNote = (text: string): boolean => /^\d{1,3}$/.test(text) && Number(text) <= 127;

function decoded(part: string): string {
  try {
    return decodeURIComponent(part);
  } catch {
    // "%" at the end of a mistyped address.
    return part;
  }
}
