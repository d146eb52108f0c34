// The layout of one pan, to be changed; its readings stay whatever becomes of it.
import { useState } from 'preact/hooks';
import type { OpenPan } from '../../../state/pan/pan-model';
import type { PanScreenModels } from '../../frame/app-models';
import { goTo } from '../../frame/route';
import type { ScreenProps } from '../../frame/screen-props';
import { PanGate } from '../../parts/gates/pan-gate';
import { LayoutEditor } from './layout-editor';

export function LayoutScreen({ models }: ScreenProps) {
  return <PanGate models={models}>{(pan) => <Edited models={models} pan={pan} />}</PanGate>;
}

function Edited({ models, pan }: { readonly models: PanScreenModels; readonly pan: OpenPan }) {
  // The layout on the screen is the one from when the editor was opened.
  const [known] = useState(pan.records);
  const leave = () => goTo({ screen: 'pan', pan: pan.id });
  return (
    <LayoutEditor
      layout={pan.current.fields.layout}
      onCancel={leave}
      onSave={(layout) => {
        void models.pan.save({ layout }, null, known);
        leave();
      }}
    />
  );
}
