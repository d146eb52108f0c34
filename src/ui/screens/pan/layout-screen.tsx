// The layout of one pan, to be changed; its readings stay whatever becomes of it.
import { useState } from 'preact/hooks';
import type { OpenPan, PanModel } from '../../../state/pan/pan-model';
import { goTo } from '../../frame/route';
import type { Needs, ScreenProps } from '../../frame/screen-props';
import { PanGate } from '../../parts/gates/pan-gate';
import { LayoutEditor } from './layout-editor';

type Models = Needs<'pan'>;

export function LayoutScreen({ models }: ScreenProps<Models>) {
  return <PanGate model={models.pan}>{(pan) => <Edited model={models.pan} pan={pan} />}</PanGate>;
}

function Edited({ model, pan }: { readonly model: Pick<PanModel, 'save'>; readonly pan: OpenPan }) {
  // The layout on the screen is the one from when the editor was opened.
  const [known] = useState(pan.records);
  const leave = () => goTo({ screen: 'pan', pan: pan.id });
  return (
    <LayoutEditor
      layout={pan.current.fields.layout}
      onCancel={leave}
      onSave={(layout) => {
        void model.save({ layout }, null, known);
        leave();
      }}
    />
  );
}
