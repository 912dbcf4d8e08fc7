import { type RevisionDifference, revisionDifference } from './changes/revision-difference.ts';
import { always, argument, command } from './command.ts';
import { revisionDifferenceJson } from './json/revision-difference-json.ts';
import { statedTexts } from './plant/stated-texts.ts';
import { revisionDifferenceLines } from './text/revision-difference-text.ts';

export const changes = command({
  name: 'changes',
  summary: 'What one revision says otherwise than another, and what to test again',
  description:
    'Compares two plant files, or the folders of two issues, which hold what they were made from. Says which stated ' +
    'values changed; which frequencies, proofs, alarms, scalings, settings and sheets changed with them, each led back to ' +
    'the stated changes that move it when they are made alone, or only together; what became unproven; and at which ' +
    'points the commissioning tests have to be made again. Ends with 1 where something became unproven.',
  arguments: {
    old: argument('OLD', 'A plant file, or the folder of an issue'),
    new: argument('NEW', 'Another, to be compared with it'),
  },
  flags: {},
  examples: [
    'soundpost changes out/documents/revision-A examples/raw-water-pump/plant.yaml',
    'soundpost changes out/documents/revision-A out/documents/revision-B --json',
  ],
  whenAllowed: always,
  perform: async (surroundings, { old, new: next }, manner) => {
    const [before, after] = [await statedTexts(surroundings, old), await statedTexts(surroundings, next)];
    const difference: RevisionDifference = revisionDifference(before, after, surroundings.step);
    return {
      exit: difference.design.unproven.length > 0 ? 1 : 0,
      lines: revisionDifferenceLines(before, after, difference, manner),
      json: revisionDifferenceJson(before, after, difference),
    };
  },
});
