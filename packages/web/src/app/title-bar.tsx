import { useEffect } from 'react';
import { Link, useRoute } from 'wouter';
import type { Saving } from '../engine/plant-store.ts';
import { VerdictWord } from '../parts/verdict-word.tsx';
import { startWalk } from '../walk/walk-state.ts';
import { Conflicts } from './conflicts.tsx';
import { usePlantState, usePlantStore } from './plant-context.tsx';
import { ShowingMenu } from './showing-menu.tsx';

const savingWords: Readonly<Record<Saving, string>> = {
  saved: 'In the file',
  saving: 'Saving…',
  offline: 'Not saved: the server does not answer. It is tried again.',
  stranger: 'Not saved: the server was started anew. Open the address it printed; this page then saves by itself.',
  conflict: 'Merged; look at the conflicts',
};

/** Plant, verdict, views, history: what holds for every view. */
export function TitleBar() {
  const { plant, saving, undo, redo, notice, stopped } = usePlantState();
  const store = usePlantStore();
  useEffect(() => {
    const pressed = (event: KeyboardEvent) => {
      if (!(event.ctrlKey || event.metaKey) || event.key.toLowerCase() !== 'z' || typesIn(event.target)) return;
      event.preventDefault();
      void (event.shiftKey ? store.redo() : store.undo());
    };
    window.addEventListener('keydown', pressed);
    return () => window.removeEventListener('keydown', pressed);
  }, [store]);
  const working = plant !== undefined && plant.progress.done < plant.progress.of;
  return (
    <header className="title-bar">
      <div className="plant-name">
        <Link href="/">
          <bdi>{plant?.name ?? 'Soundpost'}</bdi>
        </Link>
        {plant?.revision ? <span className="quiet"> revision {plant.revision}</span> : undefined}
      </div>
      <nav aria-label="Views">
        <ViewLink to="/">Points</ViewLink>
        <ViewLink to="/findings">Findings</ViewLink>
        <ViewLink to="/catalogue">Catalogue</ViewLink>
        <ViewLink to="/workings">Workings</ViewLink>
        <ViewLink to="/issue">Issue</ViewLink>
        <ViewLink to="/acceptance">Acceptance</ViewLink>
      </nav>
      <div className="verdict-line" aria-live="polite">
        {working ? (
          <span className="quiet">
            {plant.progress.read < plant.progress.of
              ? `${plant.progress.read} of ${plant.progress.of} machines read`
              : `${plant.progress.done} of ${plant.progress.of} machines worked out`}{' '}
            <button type="button" className="plain" onClick={() => (stopped ? store.goOn() : store.stop())}>
              {stopped ? 'Go on' : 'Stop'}
              <span className="unseen"> working the plant out</span>
            </button>
          </span>
        ) : (
          <VerdictWord verdict={plant?.verdict} />
        )}
      </div>
      <div className="history">
        <button type="button" disabled={undo === undefined} onClick={() => void store.undo()} title={undo}>
          Undo
        </button>
        <button type="button" disabled={redo === undefined} onClick={() => void store.redo()} title={redo}>
          Redo
        </button>
        <ShowingMenu />
        <button type="button" className="plain how" onClick={startWalk}>
          How this works
        </button>
        <span className={`saving ${saving}`} role="status">
          {savingWords[saving]}
        </span>
      </div>
      {notice === undefined ? undefined : (
        <p className="notice" role="status">
          {notice}{' '}
          <button type="button" className="plain" onClick={() => store.notice(undefined)}>
            Close
          </button>
        </p>
      )}
      <Conflicts />
    </header>
  );
}

function ViewLink({ to, children }: { readonly to: string; readonly children: string }) {
  const [here] = useRoute(to === '/' ? '/' : `${to}/*?`);
  return (
    <Link href={to} aria-current={here ? 'page' : undefined}>
      {children}
    </Link>
  );
}

function typesIn(target: EventTarget | null): boolean {
  return target instanceof HTMLElement && target.matches('input[type="text"], textarea, [contenteditable]');
}
