export const forms = [
  { form: 'pdf', name: 'PDF', what: 'to sign and to keep' },
  { form: 'xlsx', name: 'XLSX', what: 'each table, to edit and hand back' },
  { form: 'csv', name: 'CSV', what: 'each table, for other programs' },
  { form: 'svg', name: 'SVG', what: 'each drawing' },
  { form: 'html', name: 'HTML', what: 'all in one file for a browser' },
] as const;

interface FormChoiceOptions {
  readonly chosen: readonly string[];
  readonly choose: (forms: readonly string[]) => void;
}

/** The forms a set is written in; their order stays the same however they are ticked. */
export function FormChoice({ chosen, choose }: FormChoiceOptions) {
  return (
    <fieldset className="forms">
      <legend>Forms</legend>
      {forms.map(({ form, name, what }) => (
        <label key={form} className="tick">
          <input
            type="checkbox"
            checked={chosen.includes(form)}
            onChange={() =>
              choose(forms.map((each) => each.form).filter((each) => (each === form) !== chosen.includes(each)))
            }
          />{' '}
          {name} <span className="quiet">{what}</span>
        </label>
      ))}
    </fieldset>
  );
}
