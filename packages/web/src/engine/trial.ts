import {
  type Appraisal,
  appraisal,
  assumptions,
  demand,
  frequencyTable,
  lineLookup,
  partCalled,
  reason,
  type Shelf,
  type Showing,
  type Subject,
  showMeasure,
  showQuantity,
} from '@soundpost/core';
import { amplitudeChart, markupOf, svg } from '@soundpost/documents';
import { handleKey, handleViews, shownOf } from './handles.ts';
import type { TriedMachine, TriedPlant, TriedPoint } from './held-point.ts';
import { judgementView } from './judgement-view.ts';
import { speedQuantity } from './machine/speed-range.ts';
import type { DecidingView, PictureView, PlaceView, TrialAsked, TrialView } from './views.ts';

const shelves: Readonly<Record<PlaceView['place'], Shelf>> = {
  transducer: 'transducers',
  mount: 'mounts',
  cable: 'cables',
  input: 'inputs',
};

/** The point as a hand holds it: at another speed, with other parts, with numbers moved. Undefined without a chain. */
export function triedSubject(
  plant: TriedPlant,
  machine: TriedMachine,
  designed: TriedPoint,
  asked: TrialAsked,
): Subject | undefined {
  const { way, chosen } = designed.stated;
  const point = asked.speed === undefined ? designed.point : pointAtSpeed(machine, designed, asked.speed);
  if (way === undefined) return undefined;
  const placed: Record<string, unknown> = { ...way, ...chosen };
  for (const [place, name] of Object.entries(asked.parts) as [PlaceView['place'], string][]) {
    const found = partCalled(plant.catalogue, shelves[place], name);
    if ('found' in found) placed[place] = found.found;
  }
  if (asked.inLine !== undefined) {
    const inLine = asked.inLine.map((name) => partCalled(plant.catalogue, 'supplies', name));
    placed.inLine = inLine.flatMap((each) => ('found' in each ? [each.found] : []));
    // A cable behind a part, and its tag, stay with their place while the places are as many as before.
    if (asked.inLine.length !== way.inLine.length) {
      delete placed.onward;
      delete placed.tags;
    }
  }
  if (placed.transducer === undefined || placed.mount === undefined) return undefined;
  const subject = { point, parts: placed } as unknown as Subject;
  const moved = assumptions(subject).filter((each) => (asked.moved[handleKey(each)] ?? 0) !== 0);
  return moved.reduce((held, each) => each.moved(held, asked.moved[handleKey(each)]!), subject);
}

/** What the point must capture if the machine runs at one speed: every state of it is that speed. */
function pointAtSpeed({ stated }: TriedMachine, designed: TriedPoint, speed: number): TriedPoint['point'] {
  const { operation } = stated.train;
  const states = operation.states.map((each) => ({ ...each, at: speed }));
  const range = { known: true as const, value: { low: speed, high: speed }, written: 'held by hand' };
  const train = { ...stated.train, operation: { ...operation, range, states } as unknown as typeof operation };
  return demand(designed.stated.statement, stated.name, lineLookup(frequencyTable(train)));
}

interface Held {
  readonly subject: Subject;
  readonly judged: Appraisal;
}

/** What follows the hand within a frame: the chart, the verdict, and the numbers that were moved. */
export function pictureView(
  machine: TriedMachine,
  designed: TriedPoint,
  held: Held | undefined,
  asked: TrialAsked,
  showing: Showing,
): PictureView {
  const { point, boundaries } = designed;
  const charted = { point: held?.subject.point ?? point, appraisal: held?.judged, boundaries };
  return {
    outcome: held?.judged.outcome ?? 'no chain',
    chart: markupOf(svg(amplitudeChart(charted, showing, asked.width ?? 'wide'), 'amplitude')),
    decides: held === undefined ? [] : deciding(held.judged, showing),
    shown: held === undefined ? {} : shownOf(held.subject, (key) => key in asked.moved),
    speed: asked.speed === undefined ? undefined : showQuantity(speedQuantity(machine), asked.speed, showing),
  };
}

export function trialView(
  machine: TriedMachine,
  designed: TriedPoint,
  held: Held | undefined,
  asked: TrialAsked,
  showing: Showing,
  began: number,
): TrialView {
  return {
    ...pictureView(machine, designed, held, asked, showing),
    judgements: held?.judged.judgements.map((each) => judgementView(each, showing)) ?? [],
    handles: held === undefined ? [] : handleViews(machine, designed, held.subject),
    milliseconds: performance.now() - began,
  };
}

/** What is not met, worst kind first; where all is met, what would fail first. */
function deciding({ judgements, outcome, nearest }: Appraisal, showing: Showing): readonly DecidingView[] {
  const all = outcome === 'meets' ? [nearest ?? []].flat() : judgements.filter((each) => each.outcome === outcome);
  return all.map((each) => ({
    words: reason(each, showing),
    rule: each.rule,
    target: each.target,
    what: showMeasure(each.what, showing),
  }));
}

/** The subject of a trial judged as the design would judge it. */
export function tried(subject: Subject | undefined, plant: TriedPlant) {
  return subject === undefined ? undefined : { subject, judged: appraisal(subject.point, subject.parts, plant.policy) };
}
