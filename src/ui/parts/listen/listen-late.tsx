// What the listening screen shows after the first strike, or when it is wanted: not with the first JavaScript.
import type { ComponentProps } from 'preact';
import { useEffect } from 'preact/hooks';
import { watchKeys } from '../../frame/watch-keys';
import { FarView } from './far-view';

export { ReadoutDetails } from './readout-details';

/** The far view of a screen without keys of its own: any key leads back. */
export function FarListen(props: ComponentProps<typeof FarView>) {
  const { onLeave } = props;
  useEffect(
    () =>
      watchKeys(window, () => {
        onLeave();
        return true;
      }),
    [onLeave],
  );
  return <FarView {...props} />;
}
