// Shows what needs an open pan once it is open.
import type { ComponentChildren } from 'preact';
import type { OpenPan, PanModel } from '../../../state/pan/pan-model';
import { panWords } from '../../words/pan-words';
import { NotHere } from './instead';
import { ViewGate } from './view-gate';

export function PanGate({
  model,
  children,
}: {
  readonly model: Pick<PanModel, 'view' | 'openAgain'>;
  readonly children: (pan: OpenPan) => ComponentChildren;
}) {
  return (
    <ViewGate
      view={model.view.value}
      missing={<NotHere text={panWords.missing} />}
      onRetry={() => void model.openAgain()}
    >
      {({ pan }) => children(pan)}
    </ViewGate>
  );
}
