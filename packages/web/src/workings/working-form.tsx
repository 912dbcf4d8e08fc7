import type { InputView, WorkingAsked, WorkingSheetView } from '../engine/working-views.ts';
import { Letter } from '../parts/formula.tsx';

type Typing = (input: string, text: string, file?: string) => void;

/** The inputs of a formula, each with its letter, what it is, and what it takes. */
export function WorkingForm({
  sheet,
  asked,
  refused,
  onTyped,
}: {
  readonly sheet: WorkingSheetView;
  readonly asked: WorkingAsked;
  readonly refused: Readonly<Record<string, string>>;
  readonly onTyped: Typing;
}) {
  return (
    <div className="fields">
      {sheet.inputs.map((each) => (
        <InputField
          key={each.name}
          input={each}
          text={asked.typed[each.name] ?? ''}
          file={asked.files[each.name]}
          refused={refused[each.name]}
          onTyped={onTyped}
        />
      ))}
    </div>
  );
}

function InputField({
  input,
  text,
  file,
  refused,
  onTyped,
}: {
  readonly input: InputView;
  readonly text: string;
  readonly file: string | undefined;
  readonly refused: string | undefined;
  readonly onTyped: Typing;
}) {
  const id = `input-${input.name}`;
  const common = {
    id,
    value: text,
    'aria-invalid': refused !== undefined,
    'aria-describedby': `${id}-words`,
    onChange: (event: { target: { value: string } }) => onTyped(input.name, event.target.value, file),
  };
  return (
    <div className="field">
      <label htmlFor={id}>
        <span>
          {input.meaning}
          {input.optional ? <span className="quiet"> (may be left out)</span> : undefined}
        </span>
        {input.symbol === undefined ? undefined : <Letter text={input.symbol} />}
      </label>
      {input.entry === 'choice' ? (
        <select {...common}>
          {input.optional || !input.choices.includes(text) ? <option value="">not given</option> : undefined}
          {input.choices.map((each) => (
            <option key={each}>{each}</option>
          ))}
        </select>
      ) : input.entry === 'line' ? (
        <input type="text" spellCheck={false} autoComplete="off" placeholder={input.example} {...common} />
      ) : (
        <textarea rows={input.entry === 'file' ? 14 : 3} spellCheck={false} {...common} />
      )}
      {input.entry === 'file' ? <FilePicker input={input.name} file={file} onTyped={onTyped} /> : undefined}
      <p className={refused === undefined ? 'words' : 'words refused'} id={`${id}-words`} aria-live="polite">
        {refused ?? hintOf(input)}
      </p>
    </div>
  );
}

function hintOf({ entry, expected }: InputView): string {
  if (entry === 'choice') return '';
  return entry === 'file' ? 'What stands in the file; change it here, or take another' : expected;
}

/** A file of the engineer's own; it is read here and goes nowhere. */
function FilePicker({
  input,
  file,
  onTyped,
}: {
  readonly input: string;
  readonly file: string | undefined;
  readonly onTyped: Typing;
}) {
  const taken = async (chosen: File | undefined) => {
    if (chosen !== undefined) onTyped(input, await chosen.text(), chosen.name);
  };
  return (
    <p className="file-picker">
      <input
        type="file"
        aria-label="Take the content of a file"
        accept=".yaml,.yml"
        onChange={(event) => void taken(event.target.files?.[0])}
      />
      {file === undefined ? undefined : <span className="quiet"> from {file}</span>}
    </p>
  );
}
