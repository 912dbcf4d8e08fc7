import { useState } from 'react';

/** The last answer until the next one comes, so that nothing jumps while somebody types. */
export function useKept<T>(answer: T | undefined): T | undefined {
  const [kept, setKept] = useState(answer);
  if (answer !== undefined && answer !== kept) setKept(answer);
  return answer ?? kept;
}
