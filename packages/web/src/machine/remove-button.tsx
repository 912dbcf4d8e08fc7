import { useState } from 'react';
import { usePlantStore } from '../app/plant-context.tsx';
import type { Built, Removable } from '../engine/machine/building-views.ts';
import { SheetDialog } from '../plant/sheet-dialog.tsx';
import { Listed } from './listed.tsx';
import { refusalWords } from './refusal-words.ts';

interface RemoveButtonOptions {
  readonly what: Removable;
  readonly machine: string;
  /** Which of the machine; nothing for the machine itself. */
  readonly name: string;
  /** Where to go when it is gone. */
  readonly gone?: () => void;
}

/** Takes something away, and names before what goes with it and what then asks. */
export function RemoveButton({ what, machine, name, gone }: RemoveButtonOptions) {
  const store = usePlantStore();
  const [built, setBuilt] = useState<Built>();
  const [refused, setRefused] = useState<string>();
  const of = name === '' ? machine : name;
  const close = () => {
    setBuilt(undefined);
    setRefused(undefined);
  };
  const ask = async () => setBuilt(await store.engine.built({ act: 'remove', what, machine, name }));
  const take = async () => {
    if (built === undefined || 'refused' in built) return;
    const words = await store.act(built.label, built.edits);
    if (words !== undefined) return setRefused(refusalWords(words));
    close();
    gone?.();
  };
  return (
    <>
      <button type="button" aria-label={`Take away… ${what} ${of}`} onClick={() => void ask()}>
        Take away…
      </button>
      {built === undefined ? undefined : (
        <SheetDialog title={`Take ${of} away`} close={close}>
          <div className="dialog-body removal">
            {'refused' in built ? (
              <p className="refused" role="alert">
                ✗ {built.refused}
              </p>
            ) : (
              <>
                <p>This goes from the plant file:</p>
                <Listed words={built.takesAlong} />
                {built.unsettles.length === 0 ? undefined : (
                  <>
                    <p>This stays and changes: what it speaks of is then not there, and what needs it asks.</p>
                    <Listed words={built.unsettles} />
                  </>
                )}
                <p className="quiet">It is one step; Undo brings everything back.</p>
              </>
            )}
          </div>
          <footer>
            <p role="alert" className="refused">
              {refused === undefined ? '' : `✗ Nothing was changed. ${refused}`}
            </p>
            {'refused' in built ? undefined : (
              <button type="button" className="main" onClick={() => void take()}>
                Take {of} away
              </button>
            )}
          </footer>
        </SheetDialog>
      )}
    </>
  );
}
