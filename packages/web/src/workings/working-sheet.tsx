import { useEffect, useRef, useState } from 'react';
import budgetExample from '../../../../examples/uncertainty/end-gauge.yaml?raw';
import { useAnswer, usePlantState, usePlantStore } from '../app/plant-context.tsx';
import type { WorkedView, WorkingAsked, WorkingSheetView } from '../engine/working-views.ts';
import { Cited } from '../parts/cited.tsx';
import { Formula } from '../parts/formula.tsx';
import { useKept } from '../parts/use-kept.ts';
import { ToldNumber } from '../parts/why.tsx';
import { WorkingForm } from './working-form.tsx';
import { WorkingPlot } from './working-plot.tsx';

/** Content of the files that worked examples name. */
const exampleFiles: Readonly<Record<string, string>> = { 'examples/uncertainty/end-gauge.yaml': budgetExample };

/** One formula as a calculator, its example filled in. */
export function WorkingSheet({ name }: { readonly name: string }) {
  const sheet = useAnswer((store) => store.engine.working(name), `working ${name}`);
  return sheet === undefined ? <p className="waiting">Opening…</p> : <Sheet sheet={sheet} />;
}

function exampleOf({ name, inputs }: WorkingSheetView): WorkingAsked {
  const files = Object.fromEntries(
    inputs.filter((each) => each.entry === 'file' && each.initial !== '').map((each) => [each.name, each.initial]),
  );
  const typed = inputs.map((each) => [
    each.name,
    each.entry === 'file' ? (exampleFiles[each.initial] ?? '') : each.initial,
  ]);
  return { name, typed: Object.fromEntries(typed), files };
}

function Sheet({ sheet }: { readonly sheet: WorkingSheetView }) {
  const [asked, setAsked] = useState<WorkingAsked>(() => exampleOf(sheet));
  const slow = sheet.inputs.some((each) => each.entry === 'file');
  const rested = useRested(asked, slow ? 700 : 80);
  const [worked, busy] = useWorked(rested, slow);
  const type = (input: string, text: string, file?: string) =>
    setAsked((before) => {
      const { [input]: _, ...others } = before.files;
      return {
        ...before,
        typed: { ...before.typed, [input]: text },
        files: file === undefined ? others : { ...others, [input]: file },
      };
    });
  return (
    <article className="working">
      <h2>{sheet.title}</h2>
      <div className="working-work">
        <section aria-labelledby="inputs-title">
          <h3 id="inputs-title">Given</h3>
          <WorkingForm sheet={sheet} asked={asked} refused={worked?.refused ?? {}} onTyped={type} />
          <p className="hands">
            <button type="button" onClick={() => setAsked(exampleOf(sheet))}>
              Back to the example
            </button>
          </p>
        </section>
        <Results sheet={sheet} worked={worked} busy={busy} />
      </div>
      <WorkingPlot sheet={sheet} asked={rested} />
      {worked === undefined ? undefined : <Command text={worked.command} />}
      <section aria-labelledby="holds-title">
        <h3 id="holds-title">What it holds for</h3>
        <p className="holds">{/[.!?]$/.test(sheet.holds) ? sheet.holds : `${sheet.holds}.`}</p>
      </section>
      <section aria-labelledby="sources-title">
        <h3 id="sources-title">Whose it is</h3>
        <Cited sources={sheet.sources} />
      </section>
    </article>
  );
}

interface Busy {
  readonly stop: () => void;
  readonly again: () => void;
  readonly state: 'working' | 'stopped' | 'done';
}

/** The result; where it takes seconds, from a worker of its own, which can be stopped while everything else goes on. */
function useWorked(asked: WorkingAsked, slow: boolean): readonly [WorkedView | undefined, Busy | undefined] {
  const store = usePlantStore();
  const { generation } = usePlantState();
  const key = JSON.stringify(asked);
  const quick = useAnswer((each) => (slow ? Promise.resolve(undefined) : each.engine.worked(asked)), key);
  const [run, setRun] = useState(0);
  const [held, setHeld] = useState<WorkedView>();
  const [state, setState] = useState<Busy['state']>('working');
  const stop = useRef<() => void>(() => undefined);
  // biome-ignore lint/correctness/useExhaustiveDependencies: the key stands for what is asked, the run for asking again
  useEffect(() => {
    if (!slow) return;
    const aside = store.apart((engine) => engine.worked(asked));
    stop.current = aside.stop;
    setState('working');
    void aside.answer.then((answer) => {
      setHeld(answer);
      setState('done');
    });
    return aside.stop;
  }, [store, key, slow, run, generation]);
  const kept = useKept(slow ? held : quick);
  if (!slow) return [kept, undefined];
  const stopped = () => {
    stop.current();
    setState('stopped');
  };
  return [kept, { state, stop: stopped, again: () => setRun(run + 1) }];
}

/** What is typed, once the hand rests: a budget with its trials takes seconds. */
function useRested<T>(value: T, milliseconds: number): T {
  const [rested, setRested] = useState(value);
  useEffect(() => {
    const timer = setTimeout(() => setRested(value), milliseconds);
    return () => clearTimeout(timer);
  }, [value, milliseconds]);
  return rested;
}

function Progress({ busy: { state, stop, again } }: { readonly busy: Busy }) {
  return (
    <p className="working-busy" role="status">
      {state === 'working' ? (
        <>
          Drawing the trials; this takes some seconds. <progress />{' '}
          <button type="button" onClick={stop}>
            Stop
          </button>
        </>
      ) : state === 'stopped' ? (
        <>
          Stopped; what stands below is of before.{' '}
          <button type="button" onClick={again}>
            Work it again
          </button>
        </>
      ) : (
        'Worked out.'
      )}
    </p>
  );
}

function Results({
  sheet,
  worked,
  busy,
}: {
  readonly sheet: WorkingSheetView;
  readonly worked: WorkedView | undefined;
  readonly busy: Busy | undefined;
}) {
  const meanings = new Map(sheet.outputs.map((each) => [each.name, each]));
  const missing = worked !== undefined && worked.results.length === 0;
  const shown =
    worked === undefined || missing
      ? sheet.outputs.map(({ name, formula }) => ({
          name,
          formula,
          substituted: formula,
          shown: undefined,
          why: undefined,
        }))
      : worked.results;
  return (
    <section aria-labelledby="results-title" className="results">
      <h3 id="results-title">Result</h3>
      {busy === undefined ? undefined : <Progress busy={busy} />}
      <p className="refused-whole" aria-live="polite">
        {worked?.refusedWhole ?? (missing ? 'A field cannot be read; it says why.' : '')}
      </p>
      <dl>
        {shown.map((each) => (
          <div key={each.name}>
            <dt>{meanings.get(each.name)?.meaning ?? each.name}</dt>
            <dd>
              <output>
                {each.shown === undefined ? (
                  missing ? (
                    '–'
                  ) : (
                    <span className="quiet">being worked out</span>
                  )
                ) : (
                  <ToldNumber why={each.why} what={meanings.get(each.name)?.meaning ?? each.name}>
                    {each.shown}
                  </ToldNumber>
                )}
              </output>
              <Formula text={each.formula} block />
              {each.substituted === each.formula ? undefined : <Formula text={each.substituted} block />}
            </dd>
          </div>
        ))}
      </dl>
      {worked?.doubts.map((each) => (
        <div key={each.found} className="doubt">
          <p>
            <strong>! {each.found}</strong>
          </p>
          <p>
            {each.because}
            {each.remedy.length === 0 ? '' : ` To mend it: ${each.remedy.join('; or ')}.`}
          </p>
        </div>
      ))}
    </section>
  );
}

function Command({ text }: { readonly text: string }) {
  const [copied, setCopied] = useState<string>();
  const copy = async () => {
    await navigator.clipboard.writeText(text);
    setCopied(text);
  };
  return (
    <section aria-labelledby="command-title" className="command">
      <h3 id="command-title">On the command line</h3>
      <div className="command-line">
        <code>{text}</code>
        <button type="button" onClick={() => void copy()}>
          {copied === text ? 'Copied' : 'Copy'}
        </button>
      </div>
    </section>
  );
}
