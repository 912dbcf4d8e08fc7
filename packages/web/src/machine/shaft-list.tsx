import { useState } from 'react';
import type { MachineBench } from '../engine/machine/views.ts';
import { ActGroup } from './act-group.tsx';
import { AddingForm, AskedChoice, AskedText } from './adding-form.tsx';
import { MoveButtons } from './move-buttons.tsx';
import { RemoveButton } from './remove-button.tsx';
import { RenameButton } from './rename-button.tsx';

/** What turns: every shaft with what stands on it, in the order of the train. */
export function ShaftList({ bench }: { readonly bench: MachineBench }) {
  const { name: machine, shafts } = bench;
  const [name, setName] = useState('');
  const [before, setBefore] = useState('');
  return (
    <>
      <ul className="shaft-list" aria-label="Shafts of the train">
        {shafts.map((shaft, index) => (
          <li key={shaft.name}>
            <strong>
              <bdi>{shaft.name}</bdi>
            </strong>
            <span className="quiet">
              {shaft.carries === '' ? 'nothing stands on it yet' : <bdi>carries {shaft.carries}</bdi>}
            </span>
            <ActGroup of={`shaft ${shaft.name}`}>
              <MoveButtons
                what="shaft"
                machine={machine}
                name={shaft.name}
                first={index === 0}
                last={index === shafts.length - 1}
              />
              <RenameButton what="shaft" machine={machine} name={shaft.name} />
              <RemoveButton what="shaft" machine={machine} name={shaft.name} />
            </ActGroup>
          </li>
        ))}
      </ul>
      <AddingForm
        name="Add a shaft"
        does="Add the shaft"
        asked={() => ({ act: 'add shaft', machine, name, ...(before === '' ? {} : { before }) })}
        done={() => setName('')}
      >
        <AskedText of="A new shaft" value={name} change={setName} example="pump" />
        <AskedChoice
          of="stands"
          value={before}
          change={setBefore}
          choices={shafts.map((each) => [each.name, `before ${each.name}`] as const)}
          none="last"
        />
      </AddingForm>
    </>
  );
}
