// A page of the tests alone: drawings, the choice and the editor of layouts, without the rest of the app.
// #drawing/<layout>[/marks], #picture/<layout>, #editor/<layout>, #chooser
import { signal } from '@preact/signals';
import { render } from 'preact';
import { useState } from 'preact/hooks';
import type { PanLayout } from '../../../src/domain/pans/layout';
import { builtInLayouts } from '../../../src/domain/pans/layouts/built-in-layouts';
import { lowCLead } from '../../../src/domain/pans/layouts/low-c-lead';
import { mirrored } from '../../../src/domain/pans/mirrored';
import type { MidiNote } from '../../../src/domain/tuning/units';
import type { NoteMark } from '../../../src/ui/parts/drawing/note-mark';
import { PanDrawing } from '../../../src/ui/parts/drawing/pan-drawing';
import { type ChosenLayout, LayoutChooser } from '../../../src/ui/parts/layout/layout-chooser';
import { LayoutEditor } from '../../../src/ui/screens/pan/layout-editor';
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
    <main class="screen" data-layout={layout.id} data-chosen={chosen ?? ''}>
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

/** Shows what was handed over as text, for the tests to read. */
const Handed = ({ value }: { readonly value: unknown }) => (
  <main class="screen">
    <pre id="handed" class="only-spoken">
      {JSON.stringify(value)}
    </pre>
  </main>
);

function Editor({ layout }: { readonly layout: PanLayout }) {
  const [ended, end] = useState<PanLayout | 'cancelled' | null>(null);
  if (ended !== null) return <Handed value={ended} />;
  return <LayoutEditor layout={layout} onSave={end} onCancel={() => end('cancelled')} />;
}

function Chooser() {
  const [taken, take] = useState<ChosenLayout | null>(null);
  if (taken) return <Handed value={taken} />;
  return (
    <main class="screen">
      <h1>Layouts</h1>
      <LayoutChooser onTake={take} />
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
    case 'editor':
      return <Editor layout={layoutCalled(id)} />;
    case 'chooser':
      return <Chooser />;
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
