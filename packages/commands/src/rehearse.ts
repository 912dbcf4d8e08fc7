import {
  type Answer,
  answer,
  appraisal,
  asSeen,
  type DefectStatement,
  type DesignedMachine,
  type DesignedPoint,
  defectKinds,
  designedMachine,
  type FaultStatement,
  faultKinds,
  fromAll,
  level,
  type Plant,
  parseLevel,
  parseQuantity,
  partCalled,
  Refusal,
  type RehearsalScript,
  type RehearsedMotion,
  type RehearsedRecord,
  rehearsedMotion,
  type ThroughChain,
  throughChain,
} from '@soundpost/core';
import { always, argument, command, namesFlag, textFlag } from './command.ts';
import { type RehearsedChain, rehearsalJson } from './json/rehearsal-json.ts';
import { designedPointCalled, pointCalled, unknownName } from './plant/point-called.ts';
import { readPlant } from './plant/read-plant.ts';
import { rehearsalFiles } from './rehearsal-files.ts';
import { givenOccasion, occasionWords } from './rehearse/given-occasion.ts';
import { seed as designSeed } from './seed.ts';
import { rehearsalLines } from './text/rehearsal-text.ts';

const usualSeconds = 8;
const usualRate = 51_200;
/** Times the rate of the record at which the motion is made: resonance and slew lie above what is recorded. */
const finer = 2;

/** Share of the smallest level that a healthy machine shows, and its floor. Common practice, no source; --json says so too. */
const healthy = 0.5;
const floorOf = (motion: 'acceleration' | 'displacement') =>
  motion === 'acceleration'
    ? { name: 'floor of the machine', level: level('acceleration', 0.02, 'rms'), band: { low: 5, high: 10_000 } }
    : { name: 'floor of the machine', level: level('displacement', 2e-7, 'rms'), band: { low: 1, high: 1000 } };

export const rehearse = command({
  name: 'rehearse',
  summary: 'What an analyst would see at a point, healthy or with a fault put in',
  description:
    'Makes the motion at a point from the frequencies of its machine, healthy or with named faults of named sizes, sends it ' +
    'through the chosen chain sample by sample, and prints what is seen and what is hidden, by how many decibels against the ' +
    'noise in the record, the overall values, and how much of the record was clipped. --against does the same with another ' +
    'transducer on its mount beside it; --defect puts something wrong into the chain as installed; --occasion makes the record ' +
    'of another occasion than running, as an acceptance asks for it; --out writes the record. The same seed gives the same ' +
    `record. Faults: ${faultKinds.map(({ kind }) => kind).join(', ')}. Defects: ` +
    `${defectKinds.map(({ kind }) => kind).join(', ')}. Occasions: ${occasionWords}.`,
  arguments: {
    plant: argument('PLANT', 'A plant file'),
    point: argument('POINT', 'The point: its name, or MACHINE/POINT'),
  },
  flags: {
    fault: namesFlag('KIND:AT:SIZE,…', 'Faults, where they sit and how large: outer-ring:pump-drive-end:1 g peak'),
    defect: namesFlag(
      'KIND:SIZE,…',
      'Defects of the installed chain, of their usual size where it is left out: loose-mount:0.3',
    ),
    occasion: textFlag('KIND:SIZE', `What is recorded: ${occasionWords}; running if left out`),
    seconds: textFlag('SECONDS', `Length of the record; ${usualSeconds} if left out`),
    rate: textFlag('HERTZ', `Samples a second of the record; ${usualRate} if left out`),
    seed: textFlag('NUMBER', 'Another number, another draw of noise and slip; 1 if left out'),
    state: textFlag('STATE', 'Operating state of the machine; highest if left out'),
    against: textFlag('TRANSDUCER/MOUNT', 'Another transducer of the catalogue on its mount, beside the chosen one'),
    out: textFlag(
      'FILE',
      'Writes the record of the chosen chain: .wav with a file of its facts beside it, .uff or .csv',
    ),
  },
  examples: [
    'soundpost rehearse examples/raw-water-pump/plant.yaml pump-drive-end-horizontal',
    'soundpost rehearse examples/raw-water-pump/plant.yaml pump-drive-end-horizontal --fault "outer-ring:pump-drive-end:1 g peak" --against PVT-4/stud',
  ],
  whenAllowed: always,
  async perform(surroundings, given, manner) {
    const { plant: path, point: name, fault, seconds, rate, seed, state, against, out } = given;
    const { plant } = await readPlant(surroundings, path);
    const { machine: stated, of } = pointCalled(plant, name);
    surroundings.step(`designing ${stated.name}`);
    const { machine, point } = designedPointCalled([designedMachine(plant, stated, designSeed)], of);
    const recordRate = wholeAbove(rate, '--rate', usualRate);
    const reference = point.appraisal?.prediction.chain.transducer.reference;
    const occasion = givenOccasion(given.occasion);
    const defects = (given.defect ?? []).map(defectOf);
    const script: RehearsalScript = {
      seconds: numberAbove(seconds, '--seconds', usualSeconds),
      rate: recordRate * finer,
      seed: wholeAbove(seed, '--seed', 1),
      course: occasion.standing ? { is: 'standstill' } : { is: 'steady', at: state ?? 'highest' },
      healthy: occasion.standing ? 0 : healthy,
      faults: (fault ?? []).map(faultOf),
      background: occasion.standing
        ? []
        : [floorOf(reference === undefined || reference === 'casing' ? 'acceleration' : 'displacement')],
    };
    surroundings.step('rehearsing');
    const made = rehearsedMotion(machine, point, script);
    const motion: Answer<RehearsedMotion> = made.known ? answer(occasion.done(made.value)) : made;
    const through = { seed: script.seed, recordRate, coupling: occasion.coupling, defects };
    const points = [point, ...(against === undefined ? [] : [otherChain(plant, point, against)])];
    const chains = points.map((each) => ({
      ...throughOne(each, machine, motion, script, through, plant.policy.detection),
      standing: occasion.standing,
    }));
    const [first] = chains;
    const written =
      out === undefined
        ? []
        : rehearsalFiles(
            out,
            known(first!.record, of),
            known(motion, of),
            { occasion: occasion.kind, defects, script },
            of,
          );
    for (const file of written) await surroundings.writeFile(file.path, file.content, { overwrite: false });
    return {
      exit: 0,
      lines: rehearsalLines(
        of,
        motion,
        chains,
        written.map((each) => each.path),
        manner,
      ),
      json: rehearsalJson(
        of,
        motion,
        chains,
        written.map((each) => each.path),
      ),
    };
  },
});

function throughOne(
  point: DesignedPoint,
  machine: DesignedMachine,
  motion: Answer<RehearsedMotion>,
  script: RehearsalScript,
  through: ThroughChain,
  detection: number,
): Omit<RehearsedChain, 'standing'> {
  const predicted = point.appraisal?.prediction;
  if (predicted === undefined) {
    throw new Refusal({
      read: point.point.of,
      expected: "a point whose 'chain' names transducer, mount, cable and input",
      suggestion: 'A motion is seen through a chain only.',
    });
  }
  const record: Answer<RehearsedRecord> = motion.known ? throughChain(predicted, motion.value, through) : motion;
  return {
    name: predicted.chain.of,
    record,
    seen: fromAll({ record }, (each) => asSeen(each.record, machine, point, script, detection)),
  };
}

/** The point with another transducer on another mount, the rest of its line as it is. */
function otherChain(plant: Plant, point: DesignedPoint, asked: string): DesignedPoint {
  const [transducerName = '', mountName = 'stud'] = asked.split('/');
  const { way } = point.stated;
  if (way === undefined) throw new Refusal({ read: point.point.of, expected: "a point with a 'chain' to its input" });
  const part = <Shelf extends 'transducers' | 'mounts'>(shelf: Shelf, called: string) => {
    const looked = partCalled(plant.catalogue, shelf, called);
    if ('nearest' in looked) {
      throw unknownName(
        called,
        `one of the ${shelf} of the catalogue`,
        plant.catalogue[shelf].map(({ name }) => name),
      );
    }
    return looked.found;
  };
  const parts = { ...way, transducer: part('transducers', transducerName), mount: part('mounts', mountName) };
  return { ...point, appraisal: appraisal(point.point, parts, plant.policy) };
}

function faultOf(typed: string): FaultStatement {
  const [kind, at, ...size] = typed.split(':').map((each) => each.trim());
  if (kind === undefined || at === undefined || size.length === 0) {
    throw new Refusal({
      read: `--fault ${typed}`,
      expected: "KIND:AT:SIZE, such as 'outer-ring:pump-drive-end:1 g peak'",
    });
  }
  return { kind, at, size: parseLevel(size.join(':'), ['acceleration', 'velocity', 'displacement']) };
}

/** `loose-mount`, `loose-mount:0.3`, `low-corner:2 Hz`: a bare number is taken only of what has no unit. */
function defectOf(typed: string): DefectStatement {
  const [word, ...size] = typed.split(':').map((each) => each.trim());
  const kind = defectKinds.find((each) => each.kind === word);
  if (kind === undefined || size.length === 0) return { kind: word! };
  return { kind: word!, size: parseQuantity(size.join(':'), kind.quantity) };
}

function numberAbove(typed: string | undefined, flag: string, usual: number): number {
  const value = typed === undefined ? usual : Number(typed);
  if (Number.isFinite(value) && value > 0) return value;
  throw new Refusal({ read: `${flag} ${typed}`, expected: `a number above 0, such as ${usual}` });
}

function wholeAbove(typed: string | undefined, flag: string, usual: number): number {
  const value = numberAbove(typed, flag, usual);
  if (Number.isSafeInteger(value)) return value;
  throw new Refusal({ read: `${flag} ${typed}`, expected: `a whole number, such as ${usual}` });
}

function known<T>(found: Answer<T>, of: string): T {
  if (found.known) return found.value;
  const what = found.missing.map((each) => `${each.what} of ${each.of}`).join(', ');
  throw new Refusal({ read: of, expected: `a record to write; not known: ${what}` });
}
