// The layout of one pan, to be changed; its readings stay whatever becomes of it.
import type { ScreenProps } from '../late-screen';
import { PanGate } from '../parts/pan-gate';
import { goTo } from '../route';
import { LayoutEditor } from './layout-editor';

export function LayoutScreen({ models }: ScreenProps) {
  return (
    <PanGate models={models}>
      {({ id, current: { fields } }) => {
        const leave = () => goTo({ screen: 'pan', pan: id });
        return (
          <LayoutEditor
            layout={fields.layout}
            onCancel={leave}
            onSave={(layout) => {
              void models.pan.save({ layout });
              leave();
            }}
          />
        );
      }}
    </PanGate>
  );
}
