import type { IssuedRevisions } from '@soundpost/server/protocol';
import { proxy } from 'comlink';
import { useEffect, useRef, useState } from 'react';
import { usePlantState, usePlantStore } from '../app/plant-context.tsx';
import type { DifferenceView } from '../engine/issue/difference-view.ts';
import { DifferenceReport } from './difference-report.tsx';
import { issueWorkerApart } from './issue-worker-apart.ts';
import { issuedTexts } from './issued.ts';

const now = 'the plant as it is now';

interface Compared {
  readonly difference: DifferenceView;
  readonly words: string;
  /** What it was of: it is told when that is no longer what is on the screen. */
  readonly generation: number;
  readonly toNow: boolean;
}

/** What changed since a revision was issued: values, sheets and proofs, and which tests must be made again. */
export function DifferenceSection({ issued }: { readonly issued: IssuedRevisions }) {
  const store = usePlantStore();
  const { generation } = usePlantState();
  const [from, setFrom] = useState<string>();
  const [to, setTo] = useState(now);
  const [compared, setCompared] = useState<Compared>();
  const [step, setStep] = useState<string>();
  const [failed, setFailed] = useState<string>();
  const stop = useRef<() => void>(undefined);
  useEffect(() => () => stop.current?.(), []);
  const { revisions, folder } = issued;
  const old = revisions.find((each) => each.name === from) ?? revisions.at(-1);
  const next = revisions.find((each) => each.name === to);
  if (old === undefined) return undefined;
  const compare = async () => {
    setFailed(undefined);
    setCompared(undefined);
    setStep('reading what was issued');
    const stopped = new AbortController();
    stop.current = () => stopped.abort();
    try {
      const before = await issuedTexts(folder, old.name, stopped.signal);
      const after = next === undefined ? undefined : await issuedTexts(folder, next.name, stopped.signal);
      const apart = issueWorkerApart(store, (engine) => engine.difference(before, after, proxy(setStep)));
      stopped.signal.addEventListener('abort', apart.stop);
      const difference = await apart.answer;
      const words = `From revision ${old.revision} to ${next === undefined ? now : `revision ${next.revision}`}`;
      setCompared({ difference, words, generation, toNow: next === undefined });
    } catch (error) {
      if (stopped.signal.aborted) return;
      setFailed(error instanceof Error ? error.message : String(error));
    }
    setStep(undefined);
  };
  return (
    <section aria-label="What changed">
      <h2>What changed</h2>
      <div className="issue-choice">
        <label>
          From
          <select value={old.name} onChange={(event) => setFrom(event.target.value)}>
            {revisions.map(({ name, revision }) => (
              <option key={name} value={name}>
                Revision {revision}
              </option>
            ))}
          </select>
        </label>
        <label>
          To
          <select className="wide" value={next?.name ?? now} onChange={(event) => setTo(event.target.value)}>
            <option value={now}>{now}</option>
            {revisions
              .filter((each) => each.name !== old.name)
              .map(({ name, revision }) => (
                <option key={name} value={name}>
                  Revision {revision}
                </option>
              ))}
          </select>
        </label>
        <button type="button" disabled={step !== undefined} onClick={() => void compare()}>
          Compare
        </button>
        {step === undefined ? undefined : (
          <button
            type="button"
            onClick={() => {
              stop.current?.();
              setStep(undefined);
            }}
          >
            Stop
          </button>
        )}
      </div>
      <p role="status">
        {step !== undefined
          ? `Comparing: ${step}…`
          : compared?.toNow === true && compared.generation !== generation
            ? 'The plant was changed since this was compared. Compare again.'
            : undefined}
      </p>
      {failed === undefined ? undefined : (
        <p role="alert" className="refused">
          ✗ It could not be compared: {failed}
        </p>
      )}
      {compared === undefined ? undefined : (
        <DifferenceReport title={compared.words} difference={compared.difference} />
      )}
    </section>
  );
}
