import { useState } from 'react';
import type { MachineBench } from '../engine/machine/views.ts';
import { AddingForm, AskedChoice, AskedText } from './adding-form.tsx';
import { RemoveButton } from './remove-button.tsx';
import { RenameButton } from './rename-button.tsx';
import { useBuild } from './use-build.ts';

/** By what a machine is run, and its named states. */
export function OperationChoice({ bench }: { readonly bench: MachineBench }) {
  const build = useBuild();
  const [refused, setRefused] = useState<string>();
  const [name, setName] = useState('');
  const [at, setAt] = useState('');
  const { name: machine, operation, shafts } = bench;
  const { by, of, motors, states } = operation;
  const run = async (chosen: string) => {
    const cut = chosen.indexOf(' ');
    const by = chosen.slice(0, cut) === 'line' ? 'line' : 'shaft';
    setRefused(await build({ act: 'run by', machine, by, of: chosen.slice(cut + 1) }));
  };
  return (
    <>
      <div className="element-standing">
        <AskedChoice
          of="It is run by"
          value={`${by} ${of}`}
          change={(next) => void run(next)}
          choices={[
            ...shafts.map((each) => [`shaft ${each.name}`, `the speed of shaft ${each.name}`] as const),
            ...motors.map((each) => [`line ${each}`, `the line frequency of ${each}`] as const),
          ]}
        />
        {states.length === 0 ? undefined : (
          <ul className="acts" aria-label="Named states">
            {states.map((each) => (
              <li key={each}>
                <bdi>{each}</bdi> <RenameButton what="state" machine={machine} name={each} />
                <RemoveButton what="state" machine={machine} name={each} />
              </li>
            ))}
          </ul>
        )}
        <p className="refused" role="alert">
          {refused === undefined ? '' : `✗ ${refused}`}
        </p>
      </div>
      <AddingForm
        name="Add an operating state"
        does="Add the state"
        asked={() => ({ act: 'add state', machine, name, at })}
        done={() => {
          setName('');
          setAt('');
        }}
      >
        <AskedText of="A new state" value={name} change={setName} example="duty" />
        <AskedText
          of={by === 'shaft' ? `at a speed of ${of}` : `at a line frequency of ${of}`}
          value={at}
          change={setAt}
          example={by === 'shaft' ? '1480 r/min' : '48 Hz'}
        />
      </AddingForm>
    </>
  );
}
