import { usePrinting } from '../parts/use-printing.ts';
import { VerdictWord } from '../parts/verdict-word.tsx';
import { usePlantState } from './plant-context.tsx';

/** What a printed sheet is of: the title bar stays on the screen. */
export function PrintedHead() {
  const { plant, saving } = usePlantState();
  const printing = usePrinting();
  if (!printing || plant === undefined) return undefined;
  return (
    <div className="printed-head">
      <span>
        <bdi>{plant.name}</bdi>
        {plant.revision ? <> · revision {plant.revision}</> : undefined}
      </span>
      <span>
        {plant.progress.done < plant.progress.of ? (
          `${plant.progress.done} of ${plant.progress.of} machines worked out`
        ) : (
          <VerdictWord verdict={plant.verdict} />
        )}
        {saving === 'saved' || saving === 'conflict' ? undefined : ' · not saved to the file yet'}
      </span>
      <span className="quiet">A working print of the workbench; the issued documents are what counts.</span>
    </div>
  );
}
