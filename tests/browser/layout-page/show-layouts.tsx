// A page of the tests alone: drawings, the choice and the editor of layouts, without the rest of the app.
// #drawing/<layout>[/marks], #picture/<layout>, #chooser
import { signal } from '@preact/signals';
import { render } from 'preact';
import { useState } from 'preact/hooks';
import { builtInLayouts } from '../../../src/domain/pans/built-in-layouts';
import type { PanLayout } from '../../../src/domain/pans/layout';
import { lowCLead } from '../../../src/domain/pans/low-c-lead';
import { mirrored } from '../../../src/domain/pans/mirrored';
import type { MidiNote } from '../../../src/domain/tuning/units';
import type { NoteMark } from '../../../src/ui/parts/note-mark';
import { PanDrawing } from '../../../src/ui/parts/pan-drawing';
import '../../../src/ui/theme.css';

const layoutCalled = (id: string): PanLayout => {
  const plain = id.replace('-mirrored', '');
  const { layout } = builtInLayouts.find((entry) => entry.layout.id === plain) ?? {
    layout: lowCLead,
  };
  return plain === id ? layout : mirrored(layout);
};

const marks: readonly (NoteMark | null)[] = [
  { text: '+2', shape: 'outline', tone: 'true' },
  { text: '−16', shape: 'filled', tone: 'low' },
  { text: '+9', shape: 'half', tone: 'high' },
  { text: '', shape: 'dotted', tone: 'plain' },
  { text: 'dead', shape: 'crossed', tone: 'stop' },
  { text: 'buzzing', shape: 'crossed', tone: 'stop' },
  null,
];
const markOf = (note: MidiNote): NoteMark | null => marks[note % marks.length] ?? null;

function Drawing({ layout, isMarked }: { readonly layout: PanLayout; readonly isMarked: boolean }) {
  const [chosen, choose] = useState<MidiNote | null>(null);
  return (
    <main class="screen" data-chosen={chosen ?? ''}>
      <h1>{layout.name}</h1>
      <PanDrawing
        layout={layout}
        label={(note) => `Choose ${note}`}
        chosen={chosen}
        onNote={choose}
        {...(isMarked ? { markOf } : {})}
      />
    </main>
  );
}

function Page({ hash }: { readonly hash: string }) {
  const [what, id = '', more] = hash.slice(1).split('/');
  switch (what) {
    case 'picture':
      return (
        <main class="screen">
          <h1>{id}</h1>
          <PanDrawing layout={layoutCalled(id)} />
        </main>
      );
    default:
      return <Drawing layout={layoutCalled(id)} isMarked={more === 'marks'} />;
  }
}

const theme = matchMedia('(prefers-color-scheme: light)').matches ? 'light' : 'dark';
document.documentElement.dataset['theme'] = theme;
const hash = signal(location.hash);
addEventListener('hashchange', () => {
  hash.value = location.hash;
});
const Root = () => <Page hash={hash.value} key={hash.value} />;
const root = document.getElementById('app');
if (!root) throw new Error('index.html has lost its #app element');
render(<Root />, root);
