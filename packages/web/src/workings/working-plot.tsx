import { useState } from 'react';
import { useAnswer } from '../app/plant-context.tsx';
import type { PlotView, WorkingAsked, WorkingSheetView } from '../engine/working-views.ts';
import { Letter } from '../parts/formula.tsx';
import { Markup } from '../parts/markup.tsx';
import { useKept } from '../parts/use-kept.ts';

/** A result drawn against an input of the reader's choice, with its numbers beside it. */
export function WorkingPlot({ sheet, asked }: { readonly sheet: WorkingSheetView; readonly asked: WorkingAsked }) {
  const inputs = sheet.inputs.filter((each) => each.varies);
  const outputs = sheet.outputs.filter((each) => each.drawn);
  const [first] = useState(() => firstPair(sheet));
  const [output, setOutput] = useState(first.output);
  const [input, setInput] = useState(first.input);
  const [from, setFrom] = useState('');
  const [to, setTo] = useState('');
  const question = { ...asked, input, output, from, to };
  const drawn = inputs.length > 0 && outputs.length > 0;
  const plot = useKept(
    useAnswer<PlotView | undefined>(
      (store) => (drawn ? store.engine.workingPlot(question) : Promise.resolve(undefined)),
      JSON.stringify(question),
    ),
  );
  if (!drawn) return undefined;
  const chosen = inputs.find((each) => each.name === input);
  const choose = (name: string) => {
    setInput(name);
    setFrom('');
    setTo('');
  };
  const refused = plot !== undefined && 'refused' in plot ? plot : undefined;
  return (
    <section aria-labelledby="plot-title" className="working-plot">
      <h3 id="plot-title">Drawn</h3>
      <div className="plot-choice">
        <Choice label="Result" value={output} options={outputs} onChosen={setOutput} />
        <Choice label="against" value={input} options={inputs} onChosen={choose} />
        <End label="from" value={from} onTyped={setFrom} refused={refused?.at === 'from'} hint={chosen?.example} />
        <End label="to" value={to} onTyped={setTo} refused={refused?.at === 'to'} hint={chosen?.example} />
      </div>
      <p className={refused === undefined ? 'words' : 'words refused'} id="plot-words" aria-live="polite">
        {refused?.refused ?? 'Without ends it goes a decade to each side of the value above.'}
      </p>
      <div className="plot-place">{plot === undefined || 'refused' in plot ? undefined : <Drawn plot={plot} />}</div>
    </section>
  );
}

/** The first result whose formula names an input that has a value, and that input. */
function firstPair({ inputs, outputs }: WorkingSheetView) {
  const filled = inputs.filter((each) => each.varies && !/^[0.,]*(\s|$)/.test(each.initial));
  const pairs = outputs
    .filter((each) => each.drawn)
    .map((output) => {
      const letters = new Set(output.formula.split(/[^\p{L}\p{Nd}_]+/u));
      return { output, input: filled.find(({ symbol }) => symbol !== undefined && letters.has(symbol)) };
    });
  const pair = pairs.find((each) => each.input !== undefined) ?? pairs[0];
  return { output: pair?.output.name ?? '', input: (pair?.input ?? filled[0])?.name ?? '' };
}

function Choice({
  label,
  value,
  options,
  onChosen,
}: {
  readonly label: string;
  readonly value: string;
  readonly options: readonly { readonly name: string; readonly meaning: string }[];
  readonly onChosen: (name: string) => void;
}) {
  return (
    <label className="plot-part">
      <span>{label}</span>
      <select value={value} onChange={(event) => onChosen(event.target.value)}>
        {options.map((each) => (
          <option key={each.name} value={each.name}>
            {each.meaning}
          </option>
        ))}
      </select>
    </label>
  );
}

function End({
  label,
  value,
  onTyped,
  refused,
  hint,
}: {
  readonly label: string;
  readonly value: string;
  readonly onTyped: (text: string) => void;
  readonly refused: boolean;
  readonly hint: string | undefined;
}) {
  return (
    <label className="plot-part end">
      <span>{label}</span>
      <input
        type="text"
        value={value}
        placeholder={hint}
        spellCheck={false}
        aria-invalid={refused}
        aria-describedby="plot-words"
        onChange={(event) => onTyped(event.target.value)}
      />
    </label>
  );
}

function Head({ meaning, symbol }: { readonly meaning: string; readonly symbol: string | undefined }) {
  return (
    <th scope="col" className="number">
      {meaning}
      {symbol === undefined ? undefined : (
        <>
          {' '}
          <Letter text={symbol} />
        </>
      )}
    </th>
  );
}

function Drawn({ plot }: { readonly plot: Exclude<PlotView, { readonly refused: string }> }) {
  return (
    <figure className="plotted">
      <div>
        <Markup className="wide" markup={plot.wide} />
        <Markup className="narrow" markup={plot.narrow} />
        <figcaption>
          {plot.output} against {plot.input}; the line marks the value above.
        </figcaption>
      </div>
      {/* biome-ignore lint/a11y/noNoninteractiveTabindex: a table wider than the screen is scrolled by key */}
      <section className="pushed" tabIndex={0} aria-label="The same in numbers">
        <table>
          <thead>
            <tr>
              <Head meaning={plot.input} symbol={plot.inputSymbol} />
              <Head meaning={plot.output} symbol={plot.outputSymbol} />
            </tr>
          </thead>
          <tbody>
            {plot.rows.map((row) => (
              <tr key={row.input} className={row.stated ? 'stated' : undefined}>
                <td className="number">
                  {row.stated ? <span aria-hidden="true">▸ </span> : undefined}
                  {row.input}
                </td>
                <td className="number">{row.output}</td>
              </tr>
            ))}
          </tbody>
        </table>
      </section>
    </figure>
  );
}
