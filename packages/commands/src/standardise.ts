import {
  costOfWays,
  design,
  mixedIntegerModel,
  plantKeeping,
  preparedKeeping,
  pricesOfTypes,
  Refusal,
  type SolverWord,
  standardisedPlant,
  substitutesOf,
} from '@soundpost/core';
import { always, argument, command, switchFlag, textFlag } from './command.ts';
import { standardisedJson } from './json/standardised-json.ts';
import { readPlant } from './plant/read-plant.ts';
import { seed } from './seed.ts';
import { readStore } from './standardise/read-store.ts';
import { standardisedLines } from './text/standardised-text.ts';
import { counted } from './text/values-text.ts';

const usualSeconds = 60;

export const standardise = command({
  name: 'standardise',
  summary: 'The fewest part numbers at the least cost with every point still proven',
  description:
    'Judges every transducer on every mount at every point of the plant, with the cable, supply and input stated there, ' +
    'and chooses among those that meet all essential targets so that price, fitting, spares and the keeping of each ' +
    'distinct part number together cost least. Says how near the choice is to the least possible cost and who proved ' +
    'it; what each kept part number costs the plant, what would be marginal or unmeasurable without it, and what could ' +
    'stand in where. Prices, stock and service level come from a store file. Ends with 1 where a point is met by nothing.',
  arguments: {
    plant: argument('PLANT', 'A plant file'),
    store: argument('STORE', 'A store file: prices, lead times, stock, what keeping a part number costs'),
  },
  flags: {
    seconds: textFlag(
      'S',
      `How long the solver may take to prove what search and bound leave open, ${usualSeconds} if not said`,
    ),
    substitutes: switchFlag('What could stand in at every point, also in the text (JSON has it always)'),
  },
  examples: ['soundpost standardise examples/raw-water-pump/plant.yaml examples/standardise/store.yaml'],
  whenAllowed: always,
  async perform(surroundings, { plant: path, store: storePath, seconds: typed, substitutes: all }, manner) {
    const seconds = secondsOf(typed);
    const { plant } = await readPlant(surroundings, path);
    const store = await readStore(surroundings, storePath);
    surroundings.step('designing the plant as stated');
    const designed = design(plant, seed);
    const keeping = plantKeeping(designed, store, (point) => surroundings.step(`judging every candidate at ${point}`));
    surroundings.step(`choosing part numbers for ${counted(keeping.problem.requirements.length, 'kind')} of point`);
    const prepared = preparedKeeping(keeping.problem);
    const searchedAlone = standardisedPlant(prepared);
    const word =
      searchedAlone.proof.by === 'shares' ? undefined : await solverWord(prepared, seconds, surroundings.step);
    const plan = standardisedPlant(prepared, word);
    surroundings.step('choosing again without each kept part number');
    const prices = pricesOfTypes(keeping.problem, plan);
    const substitutes = substitutesOf(keeping, plan);
    const standing = keeping.needs.flatMap((each) => each.standing);
    const costNow = standing.every((each) => each !== undefined)
      ? costOfWays(
          keeping.problem,
          standing.map((each) => each!.way),
        )
      : undefined;
    const facts = { keeping, plan, prices, substitutes, costNow, title: store.head };
    return {
      exit: plan.unmet.length > 0 ? 1 : 0,
      lines: standardisedLines(facts, manner, all),
      json: standardisedJson(facts),
    };
  },
});

function secondsOf(typed: string | undefined): number {
  if (typed === undefined) return usualSeconds;
  const seconds = Number(typed);
  if (Number.isFinite(seconds) && seconds >= 0 && seconds <= 86_400 && typed.trim() !== '') return seconds;
  throw new Refusal({ read: typed, expected: 'a number of seconds from 0 to 86400', suggestion: 'Try --seconds 60.' });
}

async function solverWord(
  prepared: ReturnType<typeof preparedKeeping>,
  seconds: number,
  step: (what: string) => void,
): Promise<SolverWord | undefined> {
  if (seconds === 0 || prepared.problem.classes.length === 0) return undefined;
  const { solveAside } = await import('@soundpost/solver');
  const model = mixedIntegerModel(prepared.problem, prepared.left);
  step(`proving it: ${counted(model.columns, 'column')}, ${counted(model.rows, 'row')}, at most ${seconds} s`);
  const solved = await solveAside({ text: model.text, seconds, start: model.values(prepared.choice) });
  if (solved.ended === 'no solution') return undefined;
  return {
    choice: model.choice((column) => solved.values[column] ?? 0),
    bound: solved.bound,
    proven: solved.ended === 'optimal',
    name: solved.by,
  };
}
