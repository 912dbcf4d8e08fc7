import { workingsByRoom } from '@soundpost/core';
import { always, command } from './command.ts';
import { blank, heading, type Line, labelled, paragraph } from './layout/line.ts';
import { workingJson } from './topics/workings.ts';

export const workings = command({
  name: 'workings',
  summary: 'Every formula that can be worked, by room',
  description:
    "Lists the formulas of the house by the room they belong to. 'soundpost explain NAME' shows inputs, results, validity " +
    "and sources of one; 'soundpost work NAME …' works it.",
  arguments: {},
  flags: {},
  examples: ['soundpost workings', 'soundpost workings --json'],
  whenAllowed: always,
  async perform(_surroundings, _given, { width }) {
    const column = Math.max(...workingsByRoom.flatMap((each) => each.workings.map((one) => one.name.length))) + 2;
    return {
      exit: 0,
      lines: [
        ...workingsByRoom.flatMap(({ room, workings: list }, index): readonly Line[] => [
          ...(index === 0 ? [] : [blank]),
          ...heading(room, width),
          ...list.flatMap((each) => labelled(each.name, each.title, width, '  ', column)),
        ]),
        blank,
        ...paragraph("'soundpost explain NAME' for one of them, 'soundpost work NAME …' to work it.", width),
      ],
      json: {
        workings: workingsByRoom.flatMap(({ room, workings: list }) =>
          list.map((each) => ({ room, ...(workingJson(each) as object) })),
        ),
      },
    };
  },
});
