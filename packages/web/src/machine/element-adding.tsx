import { useState } from 'react';
import { useSearchParams } from 'wouter';
import type { MachineBench } from '../engine/machine/views.ts';
import { AddingForm, AskedChoice, AskedText } from './adding-form.tsx';

/** Adds an element of any kind; its data sheet then opens to be typed into. */
export function ElementAdding({ bench }: { readonly bench: MachineBench }) {
  const { name: machine, kinds, shafts, forms } = bench;
  const [, setSearch] = useSearchParams();
  const [kind, setKind] = useState('');
  const [name, setName] = useState('');
  const [before, setBefore] = useState('');
  const [standing, setStanding] = useState<Readonly<Record<string, string>>>({});
  const roles = kinds.find((each) => each.kind === kind)?.roles ?? [];
  const elements = forms.flatMap(({ element }) => element?.name ?? []);
  const names = shafts.map((each) => [each.name, each.name] as const);
  // Where there is one shaft only, there is nothing to choose.
  const only = names.length === 1 ? names[0]![0] : '';
  const on = Object.fromEntries(
    roles.map(({ role, mayBeLeftOut }) => [role, standing[role] ?? (roles.length === 1 && !mayBeLeftOut ? only : '')]),
  );
  return (
    <AddingForm
      name="Add an element"
      does="Add the element"
      asked={() => ({
        act: 'add element',
        machine,
        kind,
        name,
        shafts: on,
        ...(before === '' ? {} : { before }),
      })}
      done={() => {
        setSearch({ sheet: name.trim() }, { replace: true });
        setName('');
        setStanding({});
      }}
    >
      <AskedChoice
        of="A new element"
        value={kind}
        change={(next) => {
          setKind(next);
          setStanding({});
        }}
        choices={kinds.map((each) => [each.kind, each.name] as const)}
        none="of which kind?"
      />
      <AskedText of="called" value={name} change={setName} example="pump-drive-end" />
      {roles.map(({ role, mayBeFixed, mayBeLeftOut }) => (
        <AskedChoice
          key={role}
          of={role === 'on' ? 'on shaft' : `${role}`}
          value={on[role] ?? ''}
          change={(shaft) => setStanding({ ...standing, [role]: shaft })}
          choices={[...names, ...(mayBeFixed ? [['fixed', 'does not turn'] as const] : [])]}
          none={mayBeLeftOut ? 'not named' : 'which shaft?'}
        />
      ))}
      <AskedChoice
        of="stands"
        value={before}
        change={setBefore}
        choices={elements.map((each) => [each, `before ${each}`] as const)}
        none="last"
      />
    </AddingForm>
  );
}
