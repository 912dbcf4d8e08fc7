import type { UnderstoodCell } from '@soundpost/commands/pure';

/** What needs a person first, then what would be done, then what needs nothing. */
export const fates: readonly (readonly [UnderstoodCell['is'], sign: string, words: string])[] = [
  ['conflict', '⚡', 'in conflict, not taken'],
  ['refused', '✗', 'refused'],
  ['change', '△', 'understood'],
  ['as the plant has it', '=', 'the plant says so already'],
];

export const importHeads = [
  'Cell',
  'Row',
  'Column',
  'Exported',
  'Edited to',
  'In the plant now',
  'What becomes of it',
] as const;

interface ImportRowOptions {
  readonly told: UnderstoodCell;
  /** Of a conflict: whether the table holds. */
  readonly overruled: boolean;
  readonly overrule: (holds: boolean) => void;
}

/** One edited cell; on a narrow screen a card whose lines carry their heads. */
export function ImportRow({ told, overruled, overrule }: ImportRowOptions) {
  const { cell, of, column, exported, edited, now, is, words } = told;
  const [, sign, fate] = fates.find((each) => each[0] === is)!;
  const shows = overruled ? 'in conflict; the table holds' : fate;
  return (
    <tr>
      <td data-head="Cell">{cell}</td>
      <td data-head="Row" className="place">
        <bdi>{of}</bdi>
      </td>
      <td data-head="Column">{column}</td>
      <Text head="Exported" text={exported} />
      <Text head="Edited to" text={edited} />
      <Text head="In the plant now" text={now} />
      <td data-head="What becomes of it" className="fate">
        <span className={(is === 'conflict' && !overruled) || is === 'refused' ? 'refused' : undefined}>
          <span aria-hidden="true">{overruled ? '△' : sign}</span> {shows}
        </span>
        {words === undefined ? undefined : <p>{words}</p>}
        {is !== 'conflict' ? undefined : (
          <label className="tick">
            <input type="checkbox" checked={overruled} onChange={() => overrule(!overruled)} /> Let the table hold:{' '}
            <bdi>{edited}</bdi> in place of <bdi>{now === '' ? 'nothing' : now}</bdi>
          </label>
        )}
      </td>
    </tr>
  );
}

function Text({ head, text }: { readonly head: string; readonly text: string | undefined }) {
  return (
    <td data-head={head}>
      {text === undefined || text === '' ? <span className="quiet">nothing</span> : <bdi>{shortened(text)}</bdi>}
    </td>
  );
}

/** Enough of a text to know it by. */
const longest = 300;

function shortened(text: string): string {
  return text.length <= longest ? text : `${text.slice(0, longest)}… (${text.length} characters)`;
}
