import { type FormEvent, type ReactNode, useState } from 'react';
import type { BuildingAsked } from '../engine/machine/building-views.ts';
import { useBuild } from './use-build.ts';
import '../style/adding.css';

interface AddingFormOptions {
  readonly name: string;
  readonly does: string;
  /** What the fields say, as it is asked for; nothing while they do not say it. */
  readonly asked: () => BuildingAsked;
  readonly done: () => void;
  readonly children: ReactNode;
}

/** A line of fields with the button that adds what they say; what is refused is said below it. */
export function AddingForm({ name, does, asked, done, children }: AddingFormOptions) {
  const build = useBuild();
  const [refused, setRefused] = useState<string>();
  const submit = async (event: FormEvent) => {
    event.preventDefault();
    const words = await build(asked());
    setRefused(words);
    if (words === undefined) done();
  };
  return (
    <form
      className="adding"
      aria-label={name}
      onSubmit={(event) => void submit(event)}
      onInput={() => setRefused(undefined)}
    >
      {children}
      <button type="submit">{does}</button>
      <p className="refused" role="alert">
        {refused === undefined ? '' : `✗ ${refused}`}
      </p>
    </form>
  );
}

interface AskedOptions {
  readonly of: string;
  readonly value: string;
  readonly change: (value: string) => void;
}

export function AskedText({ of, value, change, example }: AskedOptions & { readonly example?: string }) {
  return (
    <label>
      <span>{of}</span>
      <input
        type="text"
        autoComplete="off"
        spellCheck={false}
        value={value}
        placeholder={example}
        onChange={(event) => change(event.target.value)}
      />
    </label>
  );
}

interface AskedChoiceOptions extends AskedOptions {
  readonly choices: readonly string[] | readonly (readonly [value: string, words: string])[];
  /** What stands there while nothing is chosen. */
  readonly none?: string;
}

export function AskedChoice({ of, value, change, choices, none }: AskedChoiceOptions) {
  return (
    <label>
      <span>{of}</span>
      <select value={value} onChange={(event) => change(event.target.value)}>
        {none === undefined ? undefined : <option value="">{none}</option>}
        {choices.map((each) => {
          const [key, words] = typeof each === 'string' ? [each, each] : each;
          return (
            <option key={key} value={key}>
              {words}
            </option>
          );
        })}
      </select>
    </label>
  );
}
