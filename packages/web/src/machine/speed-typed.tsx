import { useId, useState } from 'react';

interface SpeedTypedOptions {
  readonly shown: string;
  readonly refused: string | undefined;
  type(text: string): void;
}

/** A speed as the engineer writes it, with its unit; taken with Enter. */
export function SpeedTyped({ shown, refused, type }: SpeedTypedOptions) {
  const [text, setText] = useState('');
  const field = useId();
  const why = useId();
  const take = () => {
    if (text.trim() !== '') type(text.trim());
  };
  return (
    <form
      className="speed-typed"
      onSubmit={(event) => {
        event.preventDefault();
        take();
      }}
    >
      <label htmlFor={field}>or typed, with unit</label>
      <input
        id={field}
        type="text"
        autoComplete="off"
        placeholder={shown}
        value={text}
        aria-invalid={refused !== undefined}
        aria-describedby={why}
        onChange={(event) => setText(event.target.value)}
      />
      <button type="submit">Hold it</button>
      <p id={why} className="refused" role="alert">
        {refused}
      </p>
    </form>
  );
}
