import { measured, said, saidTogether } from '../../finding/measure.ts';
import {
  type Answer,
  asMotion,
  asSineDetector,
  fromAll,
  type Level,
  level,
  type Motion,
  motions,
} from '../../quantity/index.ts';
import { type EnvelopeLines, envelopeLines } from '../envelope-lines.ts';
import { chainOf, gainAt, motionPerNumber } from '../expected.ts';
import { bearingRings } from '../family/bearing.ts';
import type { FamilyEvidence, FamilyNamed, FamilyOpen } from '../family/family-kind.ts';
import { familyKinds } from '../family/kinds.ts';
import type { SeenLine } from '../lines-seen.ts';
import { type RunningRecord, runningRecord } from '../running-record.ts';
import {
  type CheckedRecord,
  cannotTell,
  checkKind,
  fails,
  type Judged,
  meets,
  type RivalCause,
  wants,
} from './check-kind.ts';

/** Once per turn and its halves are told apart by lines this share of the speed apart. */
const apart = 0.2;
/** Shaft lines lie below this many times the speed: an envelope is taken above. */
const aboveShaft = 10;

/** Families of machine faults, named only where several harmonics and the physics agree. */
export const machineFaults = checkKind({
  kind: 'machine-faults',
  title: 'Machine faults in the record',
  question: 'Does the record already show a fault of the machine, so that it is no baseline?',
  on: ['running'],
  applies: (designed) => chainOf(designed)?.transducer.signal === 'dynamic',
  sources: familyKinds.flatMap(({ sources }) => sources),
  judge: (looked): readonly Judged[] => {
    const running = runningRecord(looked);
    if (!running.known) return wants(running.missing);
    const facts = {
      expected: said`none of ${familyKinds.length} families: ${familyKinds.map(({ name }) => name.toLowerCase()).join(', ')}`,
      tolerance: 'several harmonics must agree with the physics before a family is named',
      because: 'A record of a faulty machine is no baseline; a good one names nothing that is not there.',
    };
    if (running.value.slow.density.resolution > apart * running.value.speed) {
      return [
        cannotTell({ ...facts, because: 'Too short a record to tell lines of the shaft apart.' }, [
          'half a minute at a steady speed',
        ]),
      ];
    }
    const evidence = evidenceOf(looked, running.value);
    const judged = familyKinds.flatMap((kind) => kind.judge(evidence).map((each) => ({ kind, each })));
    const named = judged.flatMap(({ each }) => ('named' in each ? [each.named] : []));
    if (named.length > 0) {
      return named.map((family) =>
        fails({ ...facts, of: ofCause(family), found: evidenceSaid(family) }, causesOf(family)),
      );
    }
    const open = judged.flatMap(({ each }) => ('open' in each ? [each.open] : []));
    if (open.length > 0)
      return open.map((each: FamilyOpen) =>
        cannotTell({ ...facts, found: each.because, because: each.because }, [each.needs]),
      );
    const unseen = tooCoarse(running.value);
    if (unseen !== undefined) return [cannotTell({ ...facts, because: unseen.because }, [unseen.needs])];
    return [meets({ ...facts, found: 'no family with several agreeing harmonics' })];
  },
});

/**
 * Lines of the machine that this record does not tell apart from once per turn and its multiples, or that lie above half
 * its rate: of those no family could have been named, so that none was says nothing.
 */
function tooCoarse({ lines, slow, fine, speed }: RunningRecord) {
  const names = Object.keys(bearingRings);
  const above = lines.filter(({ called, frequency }) => called === 'mesh' && frequency > 0.39 * fine.density.rate);
  if (above.length > 0) {
    const highest = above.reduce((a, b) => (b.frequency > a.frequency ? b : a));
    return {
      because: said`${highest.line.name} at ${measured('frequency', highest.frequency)} lies above what the record reaches.`,
      needs: said`the same at ${measured('frequency', 2.56 * highest.frequency)} or more`,
    };
  }
  const { resolution } = slow.density;
  const close = lines.filter(({ called, frequency }) => {
    const off = Math.abs(frequency / speed - Math.round(frequency / speed)) * speed;
    return names.includes(called) && off > 0 && off < resolution;
  });
  const nearest = close[0];
  if (nearest === undefined) return undefined;
  return {
    because: said`Lines ${measured('frequency', resolution)} apart do not tell ${nearest.line.name} from a multiple of once per turn.`,
    needs: said`a record of ${measured('time', 32 / resolution)} or more at a steady speed`,
  };
}

function evidenceOf(looked: CheckedRecord, running: RunningRecord): FamilyEvidence {
  const { designed, record } = looked;
  let envelope: Answer<EnvelopeLines> | undefined;
  const scale = fromAll({ per: motionPerNumber(designed, record), gain: gainAt(designed) }, (known) => known);
  return {
    ...looked,
    running,
    boundaries: designed.boundaries,
    envelope: (highest) => {
      envelope ??= envelopeLines(record.measures, Math.max(500, aboveShaft * running.speed), highest);
      return envelope;
    },
    level: (line) =>
      fromAll({ scale, boundaries: designed.boundaries }, ({ scale: { per, gain }, boundaries: { bc } }) => {
        const own = level(per.motion, (line.amplitude * Math.abs(per.scale)) / gain(line.frequency), 'peak');
        return asLimit(own, bc, line);
      }),
  };
}

/** The level as the limit counts it: its motion and detector, for the single line that it is. */
function asLimit(own: Level<Motion>, limit: Level, line: SeenLine): Level {
  const motion = motions.find((each) => each === limit.quantity) ?? own.quantity;
  return asSineDetector(asMotion(own, motion, line.frequency), limit.detector);
}

function ofCause({ cause }: FamilyNamed): string {
  return typeof cause === 'string' ? cause : cause.is === 'words' ? cause.words : 'machine';
}

function evidenceSaid({ evidence }: FamilyNamed): Judged['found'] {
  return saidTogether(evidence, '; ');
}

function causesOf(family: FamilyNamed): readonly RivalCause[] {
  return [
    { cause: family.cause, evidence: evidenceSaid(family), next: family.next },
    ...family.rivals.map(({ cause, next }) => ({ cause, evidence: evidenceSaid(family), next })),
  ];
}
