// One line of big text at a fixed height, narrowed (never cut) when it is wider than the screen.
import { useLayoutEffect, useRef } from 'preact/hooks';

export function FittedLine({ text, size }: { readonly text: string; readonly size: string }) {
  const line = useRef<HTMLSpanElement>(null);
  useLayoutEffect(() => {
    const element = line.current;
    const frame = element?.parentElement;
    if (!element || !frame) return;
    const narrow = (): void => {
      const scale = Math.min(1, frame.clientWidth / Math.max(1, element.offsetWidth));
      element.style.transform = scale < 1 ? `scaleX(${scale})` : '';
    };
    narrow();
    const observer = new ResizeObserver(narrow);
    observer.observe(frame);
    observer.observe(element);
    return () => observer.disconnect();
  }, [text, size]);
  return (
    <span class="fit">
      <span ref={line} class={`fit-line ${size}`}>
        {text}{' '}
      </span>
    </span>
  );
}
