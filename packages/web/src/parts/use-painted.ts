import { useEffect, useState } from 'react';

/** Milliseconds in which what stands first on a page is painted. */
const painting = 50;

/** Whether what stands first has been painted, so that what is loaded for the rest does not keep it waiting. */
export function usePainted(): boolean {
  const [painted, setPainted] = useState(false);
  useEffect(() => {
    const waits = setTimeout(() => setPainted(true), painting);
    return () => clearTimeout(waits);
  }, []);
  return painted;
}
