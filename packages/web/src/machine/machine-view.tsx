import { Link, useLocation } from 'wouter';
import { machineAddress } from '../app/address.ts';
import { useAnswer, usePlantState } from '../app/plant-context.tsx';
import type { MachineBench } from '../engine/machine/views.ts';
import { FindingBlock } from '../parts/finding-block.tsx';
import { Help } from '../parts/help.tsx';
import { Markup } from '../parts/markup.tsx';
import { MachinePoints } from './machine-points.tsx';
import { MachineSheets } from './machine-sheets.tsx';
import { PointAdding } from './point-adding.tsx';
import { RemoveButton } from './remove-button.tsx';
import { RenameButton } from './rename-button.tsx';
import { ShaftList } from './shaft-list.tsx';
import { SheetFormList } from './sheet-form-list.tsx';
import { SpeedBench } from './speed-bench.tsx';
import '../style/machine.css';

/** One machine: its train with the points on it, its data sheets to type into, and its speed under the hand. */
export function MachineView({ name }: { readonly name: string }) {
  const answer = useAnswer(async (store) => ({ bench: await store.engine.machineBench(name) }), name);
  if (answer === undefined) return <p className="waiting">Working out the machine…</p>;
  if (answer.bench === undefined) {
    return (
      <>
        <h1>There is no such machine</h1>
        <p>
          No machine of this plant is named <bdi>{name}</bdi>. <Link href="/">Back to the points</Link>
        </p>
      </>
    );
  }
  return <Bench key={name} bench={answer.bench} />;
}

function Bench({ bench }: { readonly bench: MachineBench }) {
  const { generation } = usePlantState();
  const [, navigate] = useLocation();
  return (
    <article className="machine">
      <div className="crumbs">
        <span>
          <Link href="/">Points</Link> /
        </span>
        <span className="acts">
          <RenameButton
            what="machine"
            machine={bench.name}
            name=""
            done={(to) => navigate(machineAddress(to), { replace: true })}
          />
          <RemoveButton what="machine" machine={bench.name} name="" gone={() => navigate('/')} />
        </span>
      </div>
      <h1 className="name" title={bench.name}>
        <bdi>{bench.name}</bdi>
      </h1>
      <p className="title" title={bench.title}>
        <bdi>{bench.title}</bdi>
      </p>
      <div className="train-and-findings">
        <section aria-labelledby="train">
          <h2 id="train">
            The train and its points{' '}
            <Help of="a point in the drawing">
              <p>
                A point hangs under an element where its statement tells that element from the others: by <i>hears</i>,
                or by the words of its location or its name. Nothing is guessed.
              </p>
              <p>
                Left, right and the sense of rotation mean something only from one side; they are shown as stated, and
                where they are not stated it says so.
              </p>
            </Help>
          </h2>
          <Markup markup={bench.train} />
        </section>
        <section aria-labelledby="machine-findings">
          <h2 id="machine-findings">Findings about the machine itself</h2>
          {bench.findings.length === 0 ? (
            <p className="empty">
              Nothing was found against the machine as it is stated. What its points found stands in the table below,
              and in full under <Link href={`/findings?machine=${encodeURIComponent(bench.name)}`}>Findings</Link>.
            </p>
          ) : (
            bench.findings.map((each) => <FindingBlock key={each.key} finding={each} ofMachine showsWeight />)
          )}
        </section>
      </div>
      <section aria-labelledby="machine-points">
        <h2 id="machine-points">Points</h2>
        <MachinePoints bench={bench} />
        <PointAdding bench={bench} />
      </section>
      <SpeedBench bench={bench} generation={generation} />
      <section aria-labelledby="shafts">
        <h2 id="shafts">Shafts</h2>
        <ShaftList bench={bench} />
      </section>
      <SheetFormList bench={bench} />
      <MachineSheets machine={bench.name} sheets={bench.sheets} />
    </article>
  );
}
