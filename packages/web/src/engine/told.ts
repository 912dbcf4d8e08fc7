import {
  type Appraisal,
  assumptions,
  cells,
  type DesignedMachine,
  type DesignedPoint,
  type Finding,
  type Judgement,
  operatingRange,
  type Plant,
  type Showing,
  type Subject,
  showMeasure,
  showQuantity,
  showSpan,
} from '@soundpost/core';
import {
  type Explained,
  explainedBudget,
  explainedCoverage,
  explainedFindings,
  explainedJudgement,
  typedNumber,
} from '@soundpost/documents';
import { handleKey } from './handles.ts';
import { heldOpenings } from './machine/held-speed.ts';
import { machineOpenings } from './machine/machine-bench.ts';
import { speedQuantity } from './machine/speed-range.ts';
import type { PlantSession } from './plant-session.ts';
import { pointOpenings } from './point-sheet.ts';
import { tried, triedSubject } from './trial.ts';
import type { TrialAsked } from './views.ts';
import { why, whyView } from './why.ts';
import type { NumberAsked, WhyView } from './why-views.ts';

interface Place {
  readonly machine: DesignedMachine;
  readonly point: DesignedPoint;
}

type Teller<Is extends NumberAsked['is']> = (
  asked: Extract<NumberAsked, { readonly is: Is }>,
  session: PlantSession,
  showing: Showing,
) => readonly WhyView[];

/** What is behind a number of the screen, in three depths; nothing where that number is no longer there. */
export function told(asked: NumberAsked, session: PlantSession, showing: Showing): readonly WhyView[] {
  return (tellers[asked.is] as Teller<NumberAsked['is']>)(asked as never, session, showing);
}

const tellers: { readonly [Is in NumberAsked['is']]: Teller<Is> } = {
  'point sheet': ({ of, sheet, place }, session, showing) => {
    const found = session.point(of);
    return views(found && pointOpenings(found.point, session.plant!, sheet, showing)?.openings.at(place));
  },
  'machine sheet': ({ machine, place }, session, showing) => {
    const found = session.machine(machine);
    return views(found && machineOpenings(found, showing).openings.at(place));
  },
  'held speed': ({ machine, asked, place }, session, showing) => {
    const found = session.machine(machine);
    return views(found && heldOpenings(found, asked, showing)?.at(place));
  },
  judgement: ({ of, rule, target, what, trial }, session, showing) => {
    const judged = judgedAt(session, of, trial);
    if (judged === undefined) return [];
    const all = why(judged, rule, target, session.plant!.policy, showing);
    const chosen = all.filter((each) => what === undefined || each.what === what);
    return chosen.length > 0 ? chosen : all;
  },
  handle: ({ key, trial }, session) => {
    const found = session.point(trial.of);
    const subject = found && triedSubject(session.plant!, found.machine, found.point, trial);
    const each = subject && assumptions(subject).find((one) => handleKey(one) === key);
    return views(each && explainedHandle(found!, each, trial, session.plant!));
  },
  candidate: ({ of, transducer, mount, target }, session, showing) => {
    const found = session.point(of);
    const judged = found && candidateAt(session.plant!, found, { transducer, mount });
    if (judged === undefined) return [];
    const decides =
      target === undefined ? smallestMargin(judged) : cells(judged).find((each) => each.target === target)?.decides;
    return views(decides && explainedJudgement(decides, judged, session.plant!.policy, showing));
  },
  nearest: ({ of, trial }, session, showing) => {
    const judged = judgedAt(session, of, trial);
    const decides = judged && smallestMargin(judged);
    return views(decides && explainedJudgement(decides, judged, session.plant!.policy, showing));
  },
  covered: ({ points }, session, showing) => {
    const found = points.flatMap((of) => session.point(of)?.point ?? []);
    return views(explainedCoverage(found, showing));
  },
  'count of findings': ({ of }, session) => {
    const found = session.point(of);
    return views(found && explainedFindings(found.point));
  },
  'cable length': ({ of }, session, showing) => {
    const length = session.point(of)?.point.stated.statedLength;
    if (length?.known !== true) return [];
    return views(typedNumber('cable length', `${of}, chain`, length, showQuantity('length', length.value, showing)));
  },
  'speed range': ({ machine }, session, showing) => {
    const found = session.machine(machine);
    const stated = found?.stated.train.operation.range;
    const range = found && operatingRange(found.stated.train);
    if (found === undefined || stated?.known !== true || range?.known !== true) return [];
    const shown = showSpan(speedQuantity(found), range.value as never, showing);
    return views(
      typedNumber(
        'range',
        `machine ${machine}, operation`,
        { ...stated, written: writtenOf(stated) },
        shown,
        'from the slowest to the fastest it is run',
      ),
    );
  },
  finding: ({ rule, at, key }, session, showing) => {
    const all = session.design?.findings ?? session.point(at)?.point.findings ?? session.machine(at)?.findings ?? [];
    const index = Number(key.slice(0, key.indexOf('/')));
    const same = all.filter((each) => each.rule === rule && each.at === at);
    const finding = all[index]?.rule === rule && all[index]?.at === at ? all[index] : same[0];
    return finding === undefined ? [] : ofFinding(finding, session, showing);
  },
};

function views(explained: Explained | undefined): readonly WhyView[] {
  return explained === undefined ? [] : [whyView(explained)];
}

function judgedAt(session: PlantSession, of: string, trial: TrialAsked | undefined): Appraisal | undefined {
  const found = session.point(of);
  if (found === undefined) return undefined;
  const plant = session.plant!;
  return trial === undefined
    ? found.point.appraisal
    : tried(triedSubject(plant, found.machine, found.point, trial), plant)?.judged;
}

function candidateAt(plant: Plant, { machine, point }: Place, parts: { transducer: string; mount: string }) {
  const asked: TrialAsked = { of: point.point.of, moved: {}, parts, speed: undefined };
  return tried(triedSubject(plant, machine, point, asked), plant)?.judged;
}

function smallestMargin({ judgements }: Appraisal): Judgement | undefined {
  return judgements
    .filter((each) => each.margin !== undefined)
    .reduce<Judgement | undefined>(
      (least, each) => (least === undefined || each.margin! < least.margin! ? each : least),
      undefined,
    );
}

type Assumption = ReturnType<typeof assumptions>[number];

/** A number under the hand: as it stands in the file or catalogue, and how far the hand has moved it. */
function explainedHandle({ point }: Place, each: Assumption, trial: TrialAsked, plant: Plant): Explained {
  const stated = subjectAsStated(point);
  const before = stated && assumptions(stated).find((one) => handleKey(one) === handleKey(each));
  const decades = trial.moved[handleKey(each)] ?? 0;
  const entry = statedBehind(each, point, plant);
  const typed = typedNumber(
    each.what,
    each.of,
    entry ?? { known: true, value: each.shown, written: '' },
    before?.shown ?? each.shown,
  );
  if (decades === 0 || before === undefined) return typed;
  return {
    ...typed,
    sentence: `${typed.sentence} The hand holds it at ${each.shown}; the file keeps ${before.shown} until you keep the change.`,
    numbers: [
      { name: 'in the file', shown: before.shown },
      { name: 'under the hand', shown: each.shown },
    ],
  };
}

function subjectAsStated({ point, stated: { way, chosen } }: DesignedPoint): Subject | undefined {
  return way === undefined || chosen === undefined ? undefined : { point, parts: { ...way, ...chosen } };
}

type Entry = Parameters<typeof typedNumber>[2];

/** The statement behind a number of the hand: on the sheet of a part, or of the point. */
function statedBehind({ of, what }: Assumption, { stated, point }: DesignedPoint, plant: Plant): Entry | undefined {
  const key = what.replace(/ ([a-z])/g, (_, letter: string) => letter.toUpperCase());
  const { catalogue } = plant;
  const parts = [
    ...catalogue.transducers,
    ...catalogue.mounts,
    ...catalogue.cables,
    ...catalogue.supplies,
    ...catalogue.inputs,
  ] as unknown as readonly { sheet: { of: string; values: Readonly<Record<string, Entry | undefined>> } }[];
  const ofPart = parts.find((part) => part.sheet.of === of)?.sheet.values[key];
  if (ofPart?.known === true) return ofPart;
  const target = stated.statement.targets.find((each) => `target ${each.name}` === of) as unknown as
    | Readonly<Record<string, Entry | undefined>>
    | undefined;
  const name =
    key === 'smallestLevel'
      ? 'smallest'
      : key === 'largestLevel'
        ? 'largest'
        : key === 'lineSpacing'
          ? 'resolution'
          : key;
  if (target?.[name]?.known === true) return target[name];
  if (of === point.of && what === 'surface temperature') return known(point.surfaceTemperature);
  return what === 'length' ? known(stated.statedLength) : undefined;
}

function known(entry: { readonly known: boolean } | undefined): Entry | undefined {
  return entry?.known === true ? (entry as Entry) : undefined;
}

/** What a finding about the promises of a point rests on: the budgets that do not keep theirs. */
function ofBudgets({ rule, at }: Finding, session: PlantSession, showing: Showing): readonly WhyView[] {
  const point = session.point(at)?.point;
  if (point === undefined || !rule.startsWith('design/')) return [];
  return point.budgets
    .filter((each) => each.promise.known && each.promise.value === 'not proven')
    .flatMap((each) => views(explainedBudget(each, showing)?.()));
}

/** As it was typed; empty where the record of the train does not keep it. */
function writtenOf(stated: object): string {
  return 'written' in stated && typeof stated.written === 'string' ? stated.written : '';
}

/** Behind what was found stands the judgement it came of, where it came of one; else what the rule compared. */
function ofFinding(finding: Finding, session: PlantSession, showing: Showing): readonly WhyView[] {
  const judged = session.point(finding.at)?.point.appraisal;
  const same = judged?.judgements.filter(
    (each) => each.rule === finding.rule && showMeasure(finding.found).includes(showMeasure(each.found)),
  );
  const head = whyView({
    title: finding.rule,
    sentence: showMeasure(finding.because, showing),
    numbers: [
      { name: 'found', shown: showMeasure(finding.found, showing) },
      { name: 'limit', shown: showMeasure(finding.limit, showing) },
    ],
    steps: [{ formula: 'none: found and limit are held against each other, yes or no' }],
    sources: finding.sources,
  });
  if (judged === undefined || same === undefined || same.length === 0)
    return [head, ...ofBudgets(finding, session, showing)];
  return same.map((each) => {
    const view = whyView(explainedJudgement(each, judged, session.plant!.policy, showing));
    const numbers = [...head.numbers, ...view.numbers.filter(({ name }) => name !== 'found' && name !== 'limit')];
    return { ...view, outcome: each.outcome, numbers };
  });
}
