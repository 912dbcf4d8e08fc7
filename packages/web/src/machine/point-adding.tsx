import { useState } from 'react';
import type { MachineBench } from '../engine/machine/views.ts';
import { AddingForm, AskedChoice, AskedText } from './adding-form.tsx';

/** Adds a measuring point to the machine; what it must capture is stated at the point. */
export function PointAdding({ bench }: { readonly bench: MachineBench }) {
  const [name, setName] = useState('');
  const [location, setLocation] = useState('');
  const [direction, setDirection] = useState('');
  const [installation, setInstallation] = useState('');
  return (
    <AddingForm
      name="Add a measuring point"
      does="Add the point"
      asked={() => ({ act: 'add point', machine: bench.name, name, location, direction, installation })}
      done={() => setName('')}
    >
      <AskedText of="A new point" value={name} change={setName} example="pump-drive-end-vertical" />
      <AskedText of="at" value={location} change={setLocation} example="pump, drive-end bearing housing" />
      <AskedText of="looking" value={direction} change={setDirection} example="vertical" />
      <AskedChoice
        of="its chain is"
        value={installation}
        change={setInstallation}
        choices={bench.installations}
        none="which?"
      />
    </AddingForm>
  );
}
