import { useEffect, useRef, useState } from 'react';
import { useLocation } from 'wouter';
import { usePlantState } from '../app/plant-context.tsx';
import type { PlantView } from '../engine/views.ts';
import { StepWords } from './step-words.tsx';
import { endWalk, useWalk } from './walk-state.ts';
import { stepAfter, walkPoint, walkSteps } from './walk-steps.ts';
import '../style/walk.css';

/** A short walk on the plant that is open. It teaches by doing: a step goes on when it was really done. */
export function Walk() {
  const walk = useWalk();
  const { plant } = usePlantState();
  return walk === undefined || plant === undefined ? undefined : <Panel key={walk} plant={plant} />;
}

function Panel({ plant }: { readonly plant: PlantView }) {
  const [place] = useLocation();
  const began = useRef(walkPoint(plant));
  const [step, setStep] = useState(0);
  const start = began.current;
  const row = plant.points.find((each) => each.of === start?.of);
  const seen = { place, row, mount: start?.mount ?? '' };
  const after = start === undefined ? step : stepAfter(step, seen);
  useEffect(() => {
    if (after !== step) setStep(after);
  }, [after, step]);
  return (
    <aside className="walk" aria-label="How this works">
      <ol>
        {walkSteps.map((each, index) => (
          <li key={each.name} aria-current={index === step ? 'step' : undefined} data-done={index < step || undefined}>
            <span aria-hidden="true">{index < step ? '✓' : index + 1}</span> {each.title}
            {index < step ? <span className="unseen">, done</span> : undefined}
          </li>
        ))}
      </ol>
      <div className="walk-words" aria-live="polite">
        {start === undefined ? (
          <p>
            No point of this plant has a chain yet. Give one a transducer, a mount, a cable and an input in the table of
            points, then begin here again.
          </p>
        ) : (
          <StepWords plant={plant} start={start} row={row ?? start} step={walkSteps[step]?.name} />
        )}
      </div>
      <button type="button" onClick={endWalk}>
        {step === walkSteps.length ? 'Close' : 'Put away'}
      </button>
    </aside>
  );
}
