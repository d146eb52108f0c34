// A part of a screen that loads after it: the screen is whole without it, and the next opening tries again.
import type { ComponentType } from 'preact';
import { useEffect, useState } from 'preact/hooks';

export function LatePart<Props extends object>({
  load,
  props,
}: {
  readonly load: () => Promise<ComponentType<Props>>;
  readonly props: Props;
}) {
  const [Part, show] = useState<ComponentType<Props> | null>(null);
  useEffect(() => {
    load().then(
      (loaded) => show(() => loaded),
      () => undefined,
    );
  }, []);
  return Part && <Part {...props} />;
}
