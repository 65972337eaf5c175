import { useEffect, useState } from 'preact/hooks';

/** Entries from which a page's heading is shown before what is reckoned from the log. */
const LONG_LOG = 3_000;

/** False until the browser has painted once, in a log so long that reckoning over it would hold that up. */
export function useAfterPaint(entryCount: number): boolean {
  const [painted, setPainted] = useState(entryCount < LONG_LOG);
  useEffect(() => {
    if (painted) return;
    let timer: ReturnType<typeof setTimeout> | undefined;
    const frame = requestAnimationFrame(() => {
      timer = setTimeout(() => setPainted(true));
    });
    return () => {
      cancelAnimationFrame(frame);
      clearTimeout(timer);
    };
  }, [painted]);
  return painted;
}
