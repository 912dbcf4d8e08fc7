import { type FormEvent, useState } from 'react';
import { useAnswer, usePlantStore } from '../app/plant-context.tsx';
import type { BuildingAsked, Built, Removable } from '../engine/machine/building-views.ts';
import { SheetDialog } from '../plant/sheet-dialog.tsx';
import { Listed } from './listed.tsx';
import { refusalWords } from './refusal-words.ts';

interface RenameButtonOptions {
  readonly what: Removable;
  readonly machine: string;
  /** Which of the machine; nothing for the machine itself. */
  readonly name: string;
  /** Where to go when it is called otherwise. */
  readonly done?: (to: string) => void;
}

/** Calls something otherwise, and tells before what follows and what only speaks of it in words. */
export function RenameButton({ what, machine, name, done }: RenameButtonOptions) {
  const [open, setOpen] = useState(false);
  const of = name === '' ? machine : name;
  return (
    <>
      <button type="button" aria-label={`Rename… ${what} ${of}`} onClick={() => setOpen(true)}>
        Rename…
      </button>
      {open ? (
        <RenameDialog
          asked={{ act: 'rename', what, machine, name, to: of }}
          close={() => setOpen(false)}
          {...(done === undefined ? {} : { done })}
        />
      ) : undefined}
    </>
  );
}

interface RenameDialogOptions {
  readonly asked: Extract<BuildingAsked, { readonly act: 'rename' }>;
  readonly close: () => void;
  readonly done?: (to: string) => void;
}

function RenameDialog({ asked, close, done }: RenameDialogOptions) {
  const store = usePlantStore();
  const own = asked.to;
  const [to, setTo] = useState(own);
  const [refused, setRefused] = useState<string>();
  const changed = to.trim() !== own;
  const answer = useAnswer(
    async ({ engine }): Promise<Built | undefined> => (changed ? await engine.built({ ...asked, to }) : undefined),
    JSON.stringify([asked, to]),
  );
  const take = async (event: FormEvent) => {
    event.preventDefault();
    const built = await store.engine.built({ ...asked, to });
    if ('refused' in built) return setRefused(built.refused);
    const words = await store.act(built.label, built.edits);
    if (words !== undefined) return setRefused(`Nothing was changed. ${refusalWords(words)}`);
    close();
    done?.(to.trim());
  };
  const doubt = refused ?? (answer !== undefined && 'refused' in answer ? answer.refused : undefined);
  return (
    <SheetDialog title={`Rename ${own}`} close={close}>
      <form onSubmit={(event) => void take(event)} className="renaming">
        <div className="dialog-body removal">
          <label className="new-name">
            <span>New name of the {asked.what === 'point' ? 'measuring point' : asked.what}</span>
            <input
              type="text"
              autoComplete="off"
              spellCheck={false}
              value={to}
              aria-invalid={doubt !== undefined}
              aria-describedby="new-name-doubt"
              // biome-ignore lint/a11y/noAutofocus: the dialog was opened to type this
              autoFocus
              onFocus={(event) => event.target.select()}
              onChange={(event) => {
                setTo(event.target.value);
                setRefused(undefined);
              }}
            />
          </label>
          <p id="new-name-doubt" role="alert" className="refused doubt">
            {doubt === undefined ? '' : `✗ ${doubt}`}
          </p>
          {answer === undefined || 'refused' in answer ? undefined : (
            <>
              {answer.takesAlong.length === 0 ? (
                <p>Nothing else in this plant file refers to it by name.</p>
              ) : (
                <>
                  <p>This follows the new name:</p>
                  <Listed words={answer.takesAlong} />
                </>
              )}
              {answer.unsettles.length === 0 ? undefined : (
                <>
                  <p>This stays as it is written. Look whether it still says what is meant:</p>
                  <Listed words={answer.unsettles} />
                </>
              )}
              <p className="quiet">
                It is one step to undo. Files beside the plant file, such as recordings and issued documents, keep the
                old name.
              </p>
            </>
          )}
        </div>
        <footer>
          <p />
          <button type="submit" className="main" disabled={!changed || doubt !== undefined}>
            Rename
          </button>
        </footer>
      </form>
    </SheetDialog>
  );
}
