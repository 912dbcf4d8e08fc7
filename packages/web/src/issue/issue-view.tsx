import { nextRevision } from '@soundpost/commands/revision-names';
import type { IssuedRevisions } from '@soundpost/server/protocol';
import { useEffect, useState, useSyncExternalStore } from 'react';
import { usePlantState, usePlantStore } from '../app/plant-context.tsx';
import { FindingBlock } from '../parts/finding-block.tsx';
import { Markup } from '../parts/markup.tsx';
import { DifferenceSection } from './difference-section.tsx';
import { FormChoice, forms } from './form-choice.tsx';
import { ImportSection } from './import-section.tsx';
import { cancelIssue, type Ended, issueRun, startIssue } from './issue-run.ts';
import { useIssued } from './issued.ts';
import { IssuedList } from './issued-list.tsx';
import { useIssueProof } from './use-issue-proof.ts';
import '../style/issue.css';

/** What leaves the office: what stands against it, what it will say, and the issue itself. */
export function IssueView() {
  const store = usePlantStore();
  const { plant, saving, showing } = usePlantState();
  const [left, setLeft] = useState<readonly string[]>([]);
  const [paper, setPaper] = useState('a4');
  const [typed, setTyped] = useState<string>();
  const [preliminary, setPreliminary] = useState(false);
  const [shown, setShown] = useState<readonly [kind: string, sheet: number]>();
  const [folder, setFolder] = useState('issued');
  const [form, setForm] = useState<readonly string[]>(forms.map((each) => each.form));
  const run = useSyncExternalStore(issueRun.subscribe, issueRun.snapshot);
  const ended = run?.ended;
  const before = useIssued(folder.trim(), ended);
  const { issued } = before;
  const revision = typed ?? proposed(plant?.revision ?? '', issued);
  const asked = { documents: undefined, revision, preliminary };
  const { engine, proof, failed } = useIssueProof(asked);
  const [markup, setMarkup] = useState('');
  // biome-ignore lint/correctness/useExhaustiveDependencies: the proof stands for the set the sheet is of
  useEffect(() => {
    if (shown !== undefined) engine?.sheet(shown[0], shown[1], asked).then(setMarkup);
  }, [engine, shown, proof]);
  if (failed !== undefined) return <p role="alert">The set could not be composed: {failed}</p>;
  if (proof === undefined) return <p className="waiting">Composing the documents…</p>;
  const chosen = proof.documents.filter(({ kind }) => !left.includes(kind));
  const machines = new Set(plant!.machines.map((each) => each.name));
  const running = run !== undefined && run.ended === undefined;
  const hindered = hindrance({
    saving,
    revision,
    documents: chosen.length,
    forms: form.length,
    folder: before.words,
    blocked: proof.blocked && !preliminary,
  });
  return (
    <div className="issue">
      <h1>Issue of documents</h1>
      <section aria-label="What stands against it">
        <h2>What stands against it</h2>
        {proof.findings.length === 0 ? (
          <p>No finding blocks the issue, and no question is open, of what this plant states.</p>
        ) : (
          proof.findings.map((each) => (
            <FindingBlock
              key={each.key}
              finding={each}
              showsWeight
              ofMachine={each.machine !== undefined && machines.has(each.machine)}
            />
          ))
        )}
      </section>
      <section aria-label="What is issued">
        <h2>What is issued</h2>
        <div className="issue-choice">
          <label>
            Revision
            <input value={revision} maxLength={40} onChange={(event) => setTyped(event.target.value)} />
          </label>
          <label>
            Paper
            <select value={paper} onChange={(event) => setPaper(event.target.value)}>
              <option value="a4">A4</option>
              <option value="a3">A3</option>
              <option value="letter">Letter</option>
            </select>
          </label>
          <label>
            Folder beside the plant
            <input value={folder} maxLength={80} onChange={(event) => setFolder(event.target.value)} />
          </label>
          <label className="tick">
            <input type="checkbox" checked={preliminary} onChange={() => setPreliminary(!preliminary)} /> Preliminary:
            every page says that nothing may be built from it
          </label>
        </div>
        <FormChoice chosen={form} choose={setForm} />
        <ul className="documents">
          {proof.documents.map(({ kind, title, readers, sheets }) => (
            <li key={kind}>
              <label className="tick">
                <input
                  type="checkbox"
                  checked={!left.includes(kind)}
                  onChange={() => setLeft(left.includes(kind) ? left.filter((each) => each !== kind) : [...left, kind])}
                />{' '}
                {title}
              </label>{' '}
              <span className="quiet">{readers}</span>{' '}
              <button
                type="button"
                className="plain"
                aria-label={`${lookAt(sheets)}: ${title}`}
                onClick={() => setShown([kind, 0])}
              >
                {lookAt(sheets)}
              </button>
            </li>
          ))}
        </ul>
        <p>
          <button
            type="button"
            className="main"
            disabled={running || hindered !== undefined}
            onClick={() =>
              void startIssue({
                base: store.disk.hash,
                folder: folder.trim(),
                revision,
                documents: chosen.map((each) => each.kind),
                forms: form,
                paper,
                preliminary,
                showing: { units: showing.units, decimal: showing.decimal },
              })
            }
          >
            Issue revision {revision}
          </button>{' '}
          {running ? (
            <button type="button" onClick={cancelIssue}>
              Cancel
            </button>
          ) : undefined}{' '}
          <span className="quiet">{hindered ?? `Written to ${issued?.path ?? `the folder ${folder}`}.`}</span>
        </p>
        <p role="status">
          {run === undefined
            ? ''
            : running
              ? `${run.done} of ${run.of} documents done. ${run.steps.at(-1) ?? 'Beginning'}… It goes on while you look at another view; to close this page cancels it.`
              : endWords(run.ended)}
        </p>
      </section>
      {shown === undefined ? undefined : (
        <section aria-label="Preview" className="preview">
          <h2>Preview</h2>
          <label>
            Sheet{' '}
            <select value={shown[1]} onChange={(event) => setShown([shown[0], Number(event.target.value)])}>
              {proof.documents
                .find((each) => each.kind === shown[0])
                ?.sheets.map((title, at) => (
                  // biome-ignore lint/suspicious/noArrayIndexKey: two sheets may have one title; their order is theirs
                  <option key={`${at}-${title}`} value={at}>
                    {title}
                  </option>
                ))}
            </select>
          </label>{' '}
          <button type="button" onClick={() => setShown(undefined)}>
            Put away
          </button>
          <Markup markup={markup} className="pushed" />
        </section>
      )}
      <IssuedList before={before} />
      {issued === undefined ? undefined : <DifferenceSection key={issued.path} issued={issued} />}
      <ImportSection issued={issued} />
    </div>
  );
}

function lookAt(sheets: readonly string[]): string {
  return sheets.length === 1 ? 'Look at it' : `Look at its ${sheets.length} sheets`;
}

function proposed(stated: string, issued: IssuedRevisions | undefined): string {
  const frozen = issued?.revisions.filter((each) => !each.preliminary).map((each) => each.revision) ?? [];
  let revision = stated === '' ? 'A' : stated;
  while (frozen.includes(revision)) revision = nextRevision(revision);
  return revision;
}

interface Standing {
  readonly saving: string;
  readonly revision: string;
  readonly documents: number;
  readonly forms: number;
  /** Why the folder cannot be written to, as far as is known. */
  readonly folder: string | undefined;
  readonly blocked: boolean;
}

function hindrance({ saving, revision, documents, forms, folder, blocked }: Standing): string | undefined {
  if (saving !== 'saved') return 'What is on the screen is not in the file yet.';
  if (revision.trim() === '') return 'A revision is needed.';
  if (documents === 0) return 'No document is chosen.';
  if (forms === 0) return 'No form is chosen.';
  if (folder !== undefined) return folder;
  return blocked ? 'A finding blocks the issue. Mend it, or issue as preliminary.' : undefined;
}

function endWords(ended: Ended | undefined): string {
  if (ended === undefined) return '';
  if (ended.is === 'issued') return ended.written ? 'Issued.' : 'It stands already exactly so; nothing was written.';
  if (ended.is === 'cancelled') return 'Cancelled. Nothing was issued, and nothing is half done.';
  if (ended.is === 'blocked') return `Nothing was issued: ${ended.findings} findings block it.`;
  return ended.words;
}
