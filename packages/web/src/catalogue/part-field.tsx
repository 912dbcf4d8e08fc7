import type { FieldView, TypedField } from '../engine/catalogue/views.ts';
import { Letter } from '../parts/formula.tsx';

/** One field of a data sheet: its value, how it is known, and from where. */
export function PartField({
  field,
  typed,
  refused,
  statuses,
  onTyped,
}: {
  readonly field: FieldView;
  readonly typed: TypedField | undefined;
  readonly refused: string | undefined;
  readonly statuses: readonly string[];
  readonly onTyped: (value: TypedField) => void;
}) {
  const id = `part-${field.key}`;
  const value = typed ?? begins(field);
  const change = (part: Partial<TypedField>) => onTyped({ ...value, ...part });
  const common = {
    id,
    value: value.text,
    'aria-invalid': refused !== undefined,
    'aria-describedby': `${id}-words`,
    onChange: (event: { target: { value: string } }) => change({ text: event.target.value }),
  };
  return (
    <fieldset className={typed === undefined ? 'part-field' : 'part-field touched'}>
      <legend>
        {field.meaning} {field.symbol === undefined ? undefined : <Letter text={field.symbol} />}
      </legend>
      <div className="part-entry">
        <label htmlFor={id}>Value</label>
        {field.choices.length > 0 ? (
          <select {...common}>
            <option value="">not stated</option>
            <option>unknown</option>
            {field.choices.map((each) => (
              <option key={each}>{each}</option>
            ))}
          </select>
        ) : (
          <input type="text" spellCheck={false} autoComplete="off" placeholder={field.example} {...common} />
        )}
        <label htmlFor={`${id}-status`}>How known</label>
        <select id={`${id}-status`} value={value.status} onChange={(event) => change({ status: event.target.value })}>
          <option value="">not said</option>
          {statuses.map((each) => (
            <option key={each}>{each}</option>
          ))}
        </select>
        <label htmlFor={`${id}-source`}>From where</label>
        <input
          id={`${id}-source`}
          type="text"
          value={value.source}
          onChange={(event) => change({ source: event.target.value })}
        />
      </div>
      <p className={refused === undefined ? 'words' : 'words refused'} id={`${id}-words`} aria-live="polite">
        {refused ?? (field.choices.length > 0 ? '' : field.expected)}
      </p>
    </fieldset>
  );
}

function begins({ state, written, status, source }: FieldView): TypedField {
  return { text: state === 'unknown' ? 'unknown' : written, status, source };
}
