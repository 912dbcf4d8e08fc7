import { cableKinds } from '../chain/cable/kinds.ts';
import type { Catalogue, Shelf } from '../chain/catalogue.ts';
import type { OnwardCable } from '../chain/chain.ts';
import { inputKinds } from '../chain/input/kinds.ts';
import { mountKinds } from '../chain/mount/kinds.ts';
import { kindCalled, type Part, type PartKind } from '../chain/part-kind.ts';
import { outcomes } from '../chain/rules/rule.ts';
import { supplyKinds } from '../chain/supply/kinds.ts';
import { transducerKinds } from '../chain/transducer/kinds.ts';
import { type AnyField, fieldOf, isOptional, type Stated } from '../quantity/index.ts';
import { type Appraisal, leastMargin } from '../selection/appraisal.ts';
import { assembledDesign, type Design, type DesignedPoint, designedMachine } from './design.ts';
import { type DesignDifference, designDifference } from './design-difference.ts';
import type { Plant, PlantMachine, PlantPoint } from './plant.ts';

/** How an offered value stands beside the one asked for. */
export type Deviation = 'same' | 'other' | 'not stated in the offer' | 'stated only in the offer';

/** One line of the table of deviations. */
export interface DeviationRow {
  readonly field: string;
  readonly meaning: string;
  readonly asked: string | undefined;
  readonly offered: string | undefined;
  readonly deviation: Deviation;
}

/** What becomes of one point where the offered part stands there. */
export interface PointUnderOffer {
  readonly point: string;
  readonly before: Pick<Appraisal, 'outcome' | 'nearest'> & { readonly leastMargin: number };
  readonly after: Pick<Appraisal, 'outcome' | 'nearest'> & { readonly leastMargin: number };
  readonly is: 'lost' | 'worse' | 'same' | 'better';
}

/** An offered part put in the place of another in the whole plant. */
export interface OfferedPart {
  readonly shelf: Shelf;
  readonly asked: string;
  readonly offered: string;
  /** The two are of unlike kinds, so that their data sheets do not compare line by line. */
  readonly otherKind: boolean;
  readonly deviations: readonly DeviationRow[];
  readonly points: readonly PointUnderOffer[];
  readonly difference: DesignDifference;
  readonly design: Design;
}

type AnyPart = Catalogue[Shelf][number];

/** Margins nearer than this, in decibels, are the same. */
const sameMargin = 0.05;

/** Designs again what the asked part stands in, with the offered one in its place, and compares. `seed` as in design. */
export function offeredPart(before: Design, shelf: Shelf, asked: AnyPart, offered: AnyPart, seed: number): OfferedPart {
  const { plant } = before;
  const machines = plant.machines.map((machine) => exchangedMachine(machine, shelf, asked.name, offered));
  const exchanged: Plant = { ...plant, machines };
  const after = assembledDesign(
    exchanged,
    machines.map((machine, index) =>
      machine === plant.machines[index] ? before.machines[index]! : designedMachine(exchanged, machine, seed),
    ),
  );
  const was = before.machines.flatMap(({ points }) => points);
  const is = after.machines.flatMap(({ points }) => points);
  return {
    shelf,
    asked: asked.name,
    offered: offered.name,
    otherKind: asked.kind !== offered.kind,
    deviations: asked.kind === offered.kind ? deviations(shelf, asked, offered) : [],
    points: was.flatMap((point, index) => pointUnderOffer(point, is[index]!)),
    difference: designDifference(before, after),
    design: after,
  };
}

function pointUnderOffer(was: DesignedPoint, is: DesignedPoint): readonly PointUnderOffer[] {
  if (was === is || was.appraisal === undefined || is.appraisal === undefined) return [];
  if (was.stated === is.stated) return [];
  const [before, after] = [was.appraisal, is.appraisal].map((each) => ({
    outcome: each.outcome,
    nearest: each.nearest,
    leastMargin: leastMargin(each),
  })) as [PointUnderOffer['before'], PointUnderOffer['after']];
  const fell = outcomes.indexOf(before.outcome) - outcomes.indexOf(after.outcome);
  const margin = after.leastMargin - before.leastMargin;
  const lost = stands(before.outcome) && !stands(after.outcome);
  const moved = fell !== 0 ? -fell : Math.abs(margin) < sameMargin ? 0 : margin;
  return [
    { point: was.point.of, before, after, is: lost ? 'lost' : moved < 0 ? 'worse' : moved > 0 ? 'better' : 'same' },
  ];
}

function stands(outcome: Appraisal['outcome']): boolean {
  return outcome === 'meets' || outcome === 'warns';
}

/** The same machine where the part stands nowhere in it. */
function exchangedMachine(machine: PlantMachine, shelf: Shelf, asked: string, offered: AnyPart): PlantMachine {
  const points = machine.points.map((point) => exchangedPoint(point, shelf, asked, offered));
  return points.every((point, index) => point === machine.points[index]) ? machine : { ...machine, points };
}

function exchangedPoint(point: PlantPoint, shelf: Shelf, asked: string, offered: AnyPart): PlantPoint {
  const swapped = <T extends { readonly name: string }>(part: T): T =>
    part.name === asked ? (offered as unknown as T) : part;
  const { chosen, way } = point;
  if (shelf === 'transducers' && chosen?.transducer.name === asked) {
    return { ...point, chosen: { ...chosen, transducer: swapped(chosen.transducer) } };
  }
  if (shelf === 'mounts' && chosen?.mount.name === asked) {
    return { ...point, chosen: { ...chosen, mount: swapped(chosen.mount) } };
  }
  if (way === undefined) return point;
  const onward = way.onward ?? [];
  if (shelf === 'cables' && (way.cable.name === asked || onward.some((each) => each.cable.name === asked))) {
    return {
      ...point,
      way: {
        ...way,
        cable: swapped(way.cable),
        ...(way.onward === undefined
          ? {}
          : { onward: onward.map((each): OnwardCable => ({ ...each, cable: swapped(each.cable) })) }),
      },
    };
  }
  if (shelf === 'supplies' && way.inLine.some((part) => part.name === asked)) {
    return { ...point, way: { ...way, inLine: way.inLine.map(swapped) } };
  }
  if (shelf === 'inputs' && way.input.name === asked) return { ...point, way: { ...way, input: swapped(way.input) } };
  return point;
}

const kindsOf: Readonly<Record<Shelf, readonly PartKind[]>> = {
  transducers: transducerKinds,
  mounts: mountKinds,
  cables: cableKinds,
  supplies: supplyKinds,
  inputs: inputKinds,
};

/** Every field either of them states, as written in the order of the data sheet. */
function deviations(shelf: Shelf, asked: Part, offered: Part): readonly DeviationRow[] {
  const { dataSheet } = kindCalled(kindsOf[shelf], asked.kind);
  return (Object.entries(dataSheet) as readonly (readonly [string, AnyField])[]).flatMap(([field, entry]) => {
    const was = asked.sheet.values[field] as Stated<unknown> | undefined;
    const is = offered.sheet.values[field] as Stated<unknown> | undefined;
    const shown = (stated: Stated<unknown> | undefined) =>
      stated?.known === true ? fieldOf(entry).show(stated.value) : undefined;
    const [askedText, offeredText] = [shown(was), shown(is)];
    if (askedText === undefined && offeredText === undefined && isOptional(entry)) return [];
    return [
      {
        field,
        meaning: fieldOf(entry).meaning,
        asked: askedText,
        offered: offeredText,
        deviation: deviationOf(askedText, offeredText),
      },
    ];
  });
}

function deviationOf(asked: string | undefined, offered: string | undefined): Deviation {
  if (asked === offered) return asked === undefined ? 'not stated in the offer' : 'same';
  if (offered === undefined) return 'not stated in the offer';
  return asked === undefined ? 'stated only in the offer' : 'other';
}
