import { type Answer, defectKinds, designedMachine, faultKinds, Refusal } from '@soundpost/core';
import { always, argument, command, namesFlag, textFlag } from './command.ts';
import { rehearsalJson } from './json/rehearsal-json.ts';
import { designedPointCalled, pointCalled } from './plant/point-called.ts';
import { readPlant } from './plant/read-plant.ts';
import { rehearsalFiles } from './rehearsal-files.ts';
import { detecting } from './rehearse/detection.ts';
import { courseWords, givenCourse } from './rehearse/given-course.ts';
import { givenOccasion, occasionWords } from './rehearse/given-occasion.ts';
import { changesTyped, otherChain } from './rehearse/other-chain.ts';
import { type ChainAsked, type RehearsalAsked, rehearsing, usualRate, usualSeconds } from './rehearse/rehearsal.ts';
import { defectTyped, faultTyped } from './rehearse/typed.ts';
import { seed as designSeed } from './seed.ts';
import { rehearsalLines } from './text/rehearsal-text.ts';

const usualDraws = 20;

export const rehearse = command({
  name: 'rehearse',
  summary: 'What an analyst would see at a point, healthy or with a fault put in',
  description:
    'Makes the motion at a point from the frequencies of its machine, healthy or with named faults of named sizes, sends it ' +
    'through the chosen chain sample by sample, and prints what is seen and what is hidden, by how many decibels against the ' +
    'noise in the record, the envelope of the band of bursts, the overall values, and how much of the record was clipped. ' +
    '--against does the same with another chain beside it: another transducer, mount, cable or input. --defect puts something ' +
    'wrong into the chain as installed, --against-defect into the one beside it. --course changes the speed along the record; ' +
    '--occasion makes the record of another occasion than running, as an acceptance asks for it. --detection draws many times ' +
    'and says how often a target is seen at parts of the size of the fault, with the interval of 95 %. --out writes the ' +
    `record. The same seed gives the same record. Faults: ${faultKinds.map(({ kind }) => kind).join(', ')}. Defects: ` +
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
    course: textFlag('KIND:FROM:TO', `How the speed changes: ${courseWords}, from and to a state or a speed`),
    against: namesFlag(
      'PLACE:PART,…',
      'Another chain beside the chosen one: PVT-4/stud, or mount:magnet, cable:…, cable-length:300 m, input:…',
    ),
    'against-defect': namesFlag(
      'KIND:SIZE,…',
      'Defects of the chain beside; of the chosen one where --against is left out',
    ),
    detection: textFlag('TARGET', 'How often this target, or this line of the envelope, is seen at parts of the size'),
    draws: textFlag('NUMBER', `Draws for each size of --detection; ${usualDraws} if left out`),
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
    const { plant, writing } = await readPlant(surroundings, path);
    const { machine: stated, of } = pointCalled(plant, name);
    surroundings.step(`designing ${stated.name}`);
    const { machine, point } = designedPointCalled([designedMachine(plant, stated, designSeed)], of);
    const asked: RehearsalAsked = {
      seconds: numberAbove(seconds, '--seconds', usualSeconds),
      recordRate: wholeAbove(rate, '--rate', usualRate),
      seed: wholeAbove(seed, '--seed', 1),
      course: givenCourse(given.course, state ?? 'highest', writing),
      faults: (fault ?? []).map(faultTyped),
      occasion: givenOccasion(given.occasion),
    };
    const own = (given.defect ?? []).map(defectTyped);
    const beside = given['against-defect']?.map(defectTyped);
    const asks: ChainAsked[] = [{ point, defects: own }];
    if (against !== undefined || beside !== undefined) {
      const other = against === undefined ? point : otherChain(plant, point, changesTyped(against, writing));
      asks.push({ point: other, defects: beside ?? [] });
    }
    const steps = rehearsing(machine, point, asked, asks, plant.policy.detection);
    const { script, motion, chains } = throughSteps(steps, surroundings.step);
    const detection =
      given.detection === undefined
        ? undefined
        : throughSteps(
            detecting(
              machine,
              asked,
              asks,
              plant.policy.detection,
              given.detection,
              wholeAbove(given.draws, '--draws', usualDraws),
            ),
            surroundings.step,
          );
    const [first] = chains;
    const written =
      out === undefined
        ? []
        : rehearsalFiles(
            out,
            known(first!.record, of),
            known(motion, of),
            { occasion: asked.occasion.kind, defects: own, script },
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
        detection === undefined ? undefined : { what: given.detection!, rows: detection },
        manner,
      ),
      json: rehearsalJson(
        of,
        motion,
        chains,
        written.map((each) => each.path),
        detection,
      ),
    };
  },
});

function throughSteps<T>(steps: Generator<string, T>, tell: (words: string) => void): T {
  let step = steps.next();
  while (step.done !== true) {
    tell(step.value);
    step = steps.next();
  }
  return step.value;
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
