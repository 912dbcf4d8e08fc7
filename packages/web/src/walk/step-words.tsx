import { Link } from 'wouter';
import { pointAddress } from '../app/address.ts';
import { useAnswer } from '../app/plant-context.tsx';
import type { PlantView, PointRow } from '../engine/views.ts';
import { OutcomeWord } from '../parts/verdict-word.tsx';
import type { StepName } from './walk-steps.ts';

interface StepWordsOptions {
  readonly plant: PlantView;
  readonly start: PointRow;
  /** The point as it is now. */
  readonly row: PointRow;
  /** Nothing when the walk is over. */
  readonly step: StepName | undefined;
}

/** What to do now, and what came of what was done, from the plant as it is. */
export function StepWords({ plant, start, row, step }: StepWordsOptions) {
  const link = (
    <Link href={pointAddress(start.of)} title={start.of}>
      <bdi>{start.name}</bdi>
    </Link>
  );
  switch (step) {
    case 'open':
      return (
        <p>
          Here you see whether a measuring chain can see what it is there for. Open {link}: an{' '}
          <bdi>{start.transducer}</bdi> on <bdi>{start.mount}</bdi>.
        </p>
      );
    case 'swap':
      return (
        <p>
          In the box <b>Mount</b> choose {start.mount === 'stud' ? 'a magnet, the two-pole one say,' : 'another'} in
          place of <bdi>{start.mount}</bdi>. The chart and the verdict answer at once, and nothing is in the file yet.
          Then press <b>Keep in the file</b>.
        </p>
      );
    case 'undo':
      return <Turned start={start} row={row} />;
    case 'ask':
      return (
        <p>
          <bdi>{start.mount}</bdi> is back, in the file too. What nobody stated stays unknown, and becomes a question.{' '}
          {plant.questions.length === 0
            ? 'No question is open in this plant; its findings say what was compared.'
            : `${plant.questions.length} ${plant.questions.length === 1 ? 'is' : 'are'} open.`}{' '}
          Open <Link href="/findings">Findings</Link>.
        </p>
      );
    default:
      return (
        <p>
          That is the whole of it: state, look, change, and ask what is missing. Each finding says against which limit.
          ‘How this works’ in the title bar begins again.
        </p>
      );
  }
}

/** Which targets the other mount turns, as the judgements say. */
function Turned({ start, row }: { readonly start: PointRow; readonly row: PointRow }) {
  const answer = useAnswer(async (store) => ({ point: await store.engine.point(start.of) }), `walk ${start.of}`);
  const judged = answer?.point?.trial.judgements ?? [];
  const turned = judged.filter((each) => each.outcome === 'fails' || each.outcome === 'cannot tell');
  const [first] = turned;
  return (
    <p>
      On <bdi>{row.mount}</bdi>:{' '}
      {first === undefined ? (
        <>every target is still met here, with another margin. </>
      ) : (
        <>
          {first.target === undefined ? undefined : <b>{first.target} </b>}
          <OutcomeWord outcome={first.outcome} />: {first.what} is {first.found}, the limit {first.limit}. What the
          other mount showed truly, this one does not.{' '}
        </>
      )}
      Now press <b>Undo</b> in the title bar, or Ctrl and Z.
    </p>
  );
}
