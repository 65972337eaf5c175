import type { RefObject } from 'preact';
import { useEffect, useRef, useState } from 'preact/hooks';

/** The width of an element in CSS pixels, kept as it changes; `guess` until it is known. */
export function useWidth<T extends HTMLElement>(guess: number): [RefObject<T>, number] {
  const box = useRef<T>(null);
  const [width, setWidth] = useState(guess);
  useEffect(() => {
    const element = box.current;
    if (!element) return;
    const watch = new ResizeObserver(([entry]) => {
      if (entry) setWidth(Math.max(240, Math.floor(entry.contentRect.width)));
    });
    watch.observe(element);
    return () => watch.disconnect();
  }, []);
  return [box, width];
}
