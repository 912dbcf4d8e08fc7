import { useState } from 'react';
import type { ElementForm, MachineBench } from '../engine/machine/views.ts';
import { ActGroup } from './act-group.tsx';
import { AskedChoice } from './adding-form.tsx';
import { MoveButtons } from './move-buttons.tsx';
import { RemoveButton } from './remove-button.tsx';
import { RenameButton } from './rename-button.tsx';
import { useBuild } from './use-build.ts';

/** Where an element stands in the train: its shafts, its place, and that it can go. */
export function ElementStanding({ bench, element }: { readonly bench: MachineBench; readonly element: ElementForm }) {
  const build = useBuild();
  const [refused, setRefused] = useState<string>();
  const { name: machine, shafts } = bench;
  const { name, first, last, roles } = element;
  const names = shafts.map((each) => [each.name, each.name] as const);
  const stand = async (role: string, shaft: string) =>
    setRefused(await build({ act: 'stand on', machine, element: name, role, shaft }));
  return (
    <div className="element-standing">
      {roles.map(({ role, shaft, mayBeFixed, mayBeLeftOut }) => (
        <AskedChoice
          key={role}
          of={role === 'on' ? 'on shaft' : role}
          value={shaft}
          change={(next) => void stand(role, next)}
          choices={[...names, ...(mayBeFixed ? [['fixed', 'does not turn'] as const] : [])]}
          {...(mayBeLeftOut ? { none: 'not named' } : {})}
        />
      ))}
      <ActGroup of={`element ${name}`}>
        <MoveButtons what="element" machine={machine} name={name} first={first} last={last} />
        <RenameButton what="element" machine={machine} name={name} />
        <RemoveButton what="element" machine={machine} name={name} />
      </ActGroup>
      <p className="refused" role="alert">
        {refused === undefined ? '' : `✗ ${refused}`}
      </p>
    </div>
  );
}
