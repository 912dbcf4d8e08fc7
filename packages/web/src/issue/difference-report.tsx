import type { ReactNode } from 'react';
import { Link } from 'wouter';
import { pointAddress } from '../app/address.ts';
import { usePlantState } from '../app/plant-context.tsx';
import type { CauseView, DifferenceView, ProofView } from '../engine/issue/difference-view.ts';
import { OutcomeWord } from '../parts/verdict-word.tsx';

interface ReportOptions {
  readonly title: string;
  readonly difference: DifferenceView;
}

/** Stated changes are numbered; whatever follows from them names their numbers. The gravest comes first. */
export function DifferenceReport({ title, difference }: ReportOptions) {
  const { stated, values, sheets, unproven, proven, withdrawn, tests } = difference;
  if (stated.length === 0) {
    return (
      <p>
        <strong>{title}:</strong> both state the same; nothing that follows from it differs.
      </p>
    );
  }
  return (
    <div className="difference">
      <h3>{title}</h3>
      <p>
        {counted(stated.length, 'stated change')}, {counted(values.length, 'value')} and{' '}
        {counted(sheets.length, 'sheet')} that read otherwise by them,{' '}
        <strong className={unproven.length > 0 ? 'refused' : undefined}>{unproven.length} unproven by them</strong>,{' '}
        {counted(tests.length, 'point')} to be tested again.
      </p>
      <Table title="Stated otherwise" heads={['No.', 'Where', 'Before', 'After']}>
        {stated.map(({ where, before, after, notAlone }, place) => (
          <tr key={where}>
            <td>[{place + 1}]</td>
            <td>
              <bdi>{where}</bdi>
              {notAlone ? <p className="quiet">Cannot be read without the other changes.</p> : undefined}
            </td>
            <Cell text={before} otherwise="was not there" />
            <Cell text={after} otherwise="is no longer there" />
          </tr>
        ))}
      </Table>
      <Proofs title="Became unproven" proofs={unproven} none="Nothing became unproven." />
      {proven.length === 0 ? undefined : <Proofs title="Became proven" proofs={proven} none="" />}
      {withdrawn.length === 0 ? undefined : (
        <Table title="No longer asked for" heads={['Point', 'Target']}>
          {withdrawn.map(({ at, target }) => (
            <tr key={`${at} ${target}`}>
              <Point at={at} />
              <td>{target}</td>
            </tr>
          ))}
        </Table>
      )}
      <Table title="Tests to be made again" heads={['Point', 'Because']} none="No commissioning test is touched.">
        {tests.map(({ at, because }) => (
          <tr key={at}>
            <Point at={at} />
            <td>{because}</td>
          </tr>
        ))}
      </Table>
      <Table
        title="Values that changed with it"
        heads={['Where', 'What', 'Before', 'After', 'By']}
        none="Nothing that is worked out changed."
      >
        {values.map(({ key, at, sort, name, before, after, cause }) => (
          <tr key={key}>
            <Point at={at} />
            <td>
              {sort}, <bdi>{name}</bdi>
            </td>
            {before !== undefined && before === after ? (
              <td colSpan={2}>
                <bdi>{before}</bdi>, in figures or statements that are not shown here
              </td>
            ) : (
              <>
                <Cell text={before} otherwise="was not there" />
                <Cell text={after} otherwise="is no longer there" />
              </>
            )}
            <By cause={cause} />
          </tr>
        ))}
      </Table>
      <Table title="Sheets to be issued again" heads={['Document', 'Sheet', 'What', 'By']} none="None.">
        {sheets.map(({ key, document, sheet, is, cause }) => (
          <tr key={key}>
            <td>{document}</td>
            <td>
              <bdi>{sheet}</bdi>
            </td>
            <td>{is}</td>
            <By cause={cause} />
          </tr>
        ))}
      </Table>
    </div>
  );
}

interface TableOptions {
  readonly title: string;
  readonly heads: readonly string[];
  readonly none?: string;
  readonly children: readonly ReactNode[];
}

function Table({ title, heads, none, children }: TableOptions) {
  return (
    <>
      <h4>{title}</h4>
      {children.length === 0 ? (
        <p className="quiet">{none}</p>
      ) : (
        // biome-ignore lint/a11y/noNoninteractiveTabindex: what scrolls is reached by the keyboard
        <section className="pushed" aria-label={title} tabIndex={0}>
          <table>
            <thead>
              <tr>
                {heads.map((head) => (
                  <th key={head} scope="col">
                    {head}
                  </th>
                ))}
              </tr>
            </thead>
            <tbody>{children}</tbody>
          </table>
        </section>
      )}
    </>
  );
}

function Proofs({ title, proofs, none }: { title: string; proofs: readonly ProofView[]; none: string }) {
  return (
    <Table title={title} heads={['Point', 'Target', 'Before', 'After', 'What decides']} none={none}>
      {proofs.map(({ at, target, before, after, why }) => (
        <tr key={`${at} ${target}`}>
          <Point at={at} />
          <td>{target}</td>
          <td>
            <OutcomeWord outcome={before} />
          </td>
          <td>
            <OutcomeWord outcome={after} />
          </td>
          <td>{why}</td>
        </tr>
      ))}
    </Table>
  );
}

/** A point that still stands can be opened. */
function Point({ at }: { readonly at: string }) {
  const { plant } = usePlantState();
  const stands = plant?.points.some((each) => each.of === at) ?? false;
  return <td className="place">{stands ? <Link href={pointAddress(at)}>{at}</Link> : <bdi>{at}</bdi>}</td>;
}

function Cell({ text, otherwise }: { readonly text: string | undefined; readonly otherwise: string }) {
  return <td>{text === undefined ? <span className="quiet">{otherwise}</span> : <bdi>{text}</bdi>}</td>;
}

function By({ cause: { changes, acting } }: { readonly cause: CauseView }) {
  if (acting === 'not told apart') return <td>the changes together; they could not be told apart</td>;
  const numbers = changes.map((each) => `[${each}]`).join(', ');
  return <td>{acting === 'alone' ? numbers : `${numbers}, not alone but with the others`}</td>;
}

function counted(count: number, what: string): string {
  return `${count} ${what}${count === 1 ? '' : 's'}`;
}
