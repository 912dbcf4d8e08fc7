import type { Mount } from '@soundpost/core';
import { type Drawing, label, line, type Mark, type Point, polyline, rectangle } from '../drawing/drawing.ts';

/** A section through a mount: what is drawn, and where each field of its sheet is found on it. */
export interface MountSection {
  readonly marks: readonly Mark[];
  readonly places: Readonly<Record<string, Point>>;
}

const width = 420;
const height = 204;
const middle = 210;
/** The surface of the machine before it is made ready. */
const surface = 120;

const wall: Mark = rectangle(100, surface, 220, height - surface - 14, 'hatched');

/** The same with a spot face cut into it. */
const spotFaced: Mark = polyline(
  [
    [100, surface],
    [middle - 58, surface],
    [middle - 58, surface + 5],
    [middle + 58, surface + 5],
    [middle + 58, surface],
    [320, surface],
    [320, height - 14],
    [100, height - 14],
  ],
  'hatched',
  true,
);

/** The transducer with its cable, standing on the height given. */
function transducer(on: number): readonly Mark[] {
  return [
    polyline(
      [
        [middle, on - 60],
        [middle, on - 70],
        [middle + 100, on - 70],
      ],
      'target',
    ),
    rectangle(middle - 15, on - 60, 30, 18, 'paper'),
    rectangle(middle - 28, on - 42, 56, 42, 'paper'),
  ];
}

/** A tapped hole in a spot face, with a screw that does not reach its bottom. */
function screwed(): readonly Mark[] {
  const threads = [0, 1, 2, 3, 4, 5].map((turn) =>
    line(middle - 8, surface + 14 + turn * 6, middle + 8, surface + 11 + turn * 6, 'thin'),
  );
  return [
    spotFaced,
    rectangle(middle - 8, surface + 5, 16, 50, 'paper'),
    rectangle(middle - 6, surface - 4, 12, 44, 'solid'),
    ...threads,
  ];
}

const screwedPlaces: Readonly<Record<string, Point>> = {
  torque: [middle + 28, surface - 20],
  flatness: [middle + 50, surface + 5],
  thread: [middle + 8, surface + 26],
  threadDepth: [middle + 8, surface + 54],
  roughness: [middle - 42, surface + 5],
  spotFace: [middle - 58, surface + 3],
  studReach: [middle - 6, surface + 39],
};

/** Magnet feet, pads and couplings: from the top of the wall up to what the transducer stands on. */
const standing: Readonly<Record<string, Point>> = {
  preparation: [middle - 60, surface],
  flatness: [middle + 60, surface],
};

const curved: readonly Point[] = Array.from({ length: 23 }, (_, step): Point => {
  const x = 100 + step * 10;
  return [x, 320 - Math.sqrt(200 ** 2 - (x - middle) ** 2)];
});

/** A kind without a section does not compile. */
const sections: Readonly<Record<Mount['kind'], MountSection>> = {
  stud: { marks: [...screwed(), ...transducer(surface + 5)], places: screwedPlaces },
  'isolating-stud': {
    marks: [
      ...screwed(),
      rectangle(middle - 32, surface - 1, 64, 6, 'target-face'),
      rectangle(middle - 32, surface - 1, 64, 6, 'frame'),
      ...transducer(surface - 1),
    ],
    places: screwedPlaces,
  },
  'adhesive-pad': {
    marks: [
      wall,
      rectangle(middle - 44, surface - 3, 88, 3, 'solid'),
      rectangle(middle - 44, surface - 19, 88, 16, 'hatched'),
      ...transducer(surface - 19),
      rectangle(middle - 6, surface - 28, 12, 22, 'solid'),
    ],
    places: { ...standing, torque: [middle + 28, surface - 40], thread: [middle + 6, surface - 10] },
  },
  'quick-lock': {
    marks: [
      wall,
      rectangle(middle - 40, surface - 14, 80, 14, 'hatched'),
      rectangle(middle - 34, surface - 28, 68, 14, 'paper'),
      line(middle - 20, surface - 14, middle - 8, surface - 28, 'thin'),
      line(middle + 8, surface - 14, middle + 20, surface - 28, 'thin'),
      ...transducer(surface - 28),
    ],
    places: { ...standing, torque: [middle + 40, surface - 7] },
  },
  'flat-magnet': {
    marks: [
      wall,
      rectangle(middle - 38, surface - 24, 76, 24, 'hatched'),
      rectangle(middle - 38, surface - 6, 20, 6, 'solid'),
      rectangle(middle + 18, surface - 6, 20, 6, 'solid'),
      ...transducer(surface - 24),
    ],
    places: { ...standing, pull: [middle + 38, surface - 14], footWidth: [middle - 38, surface - 8] },
  },
  'two-pole-magnet': {
    marks: [
      polyline([...curved, [320, height - 14], [100, height - 14]], 'hatched', true),
      rectangle(middle - 36, surface - 18, 14, 21, 'solid'),
      rectangle(middle + 22, surface - 18, 14, 21, 'solid'),
      rectangle(middle - 36, surface - 30, 72, 12, 'hatched'),
      ...transducer(surface - 30),
    ],
    places: {
      preparation: [middle - 30, surface + 3],
      footWidth: [middle - 36, surface - 8],
      pull: [middle + 36, surface - 8],
    },
  },
  'hand-probe': {
    marks: [
      wall,
      polyline(
        [
          [middle - 6, surface - 16],
          [middle + 6, surface - 16],
          [middle, surface],
        ],
        'solid',
        true,
      ),
      rectangle(middle - 6, surface - 46, 12, 30, 'hatched'),
      ...transducer(surface - 46),
    ],
    places: { preparation: [middle, surface] },
  },
};

export function placesOn(kind: Mount['kind']): MountSection['places'] {
  return sections[kind].places;
}

/** The section with a letter at each of its places, in a column on either side; not to scale. */
export function mountSection(kind: Mount['kind'], name: string, letters: ReadonlyMap<string, string>): Drawing {
  const { marks, places } = sections[kind];
  const marked = [...letters].flatMap(([key, letter]) => {
    const at = places[key];
    return at === undefined ? [] : [{ letter, at }];
  });
  const left = marked.filter(({ at: [x] }) => x <= middle);
  const right = marked.filter(({ at: [x] }) => x > middle);
  return {
    width,
    height,
    title: `Section of ${name}`,
    description: `The transducer on ${name}, cut through the middle, with the letters ${marked.map((each) => each.letter).join(', ')} of the table.`,
    marks: [...marks, ...lettered(left, 44), ...lettered(right, width - 44)],
  };
}

/** Letters in circles, each with a line to its place: in the order of their heights, so that no two lines cross. */
function lettered(marked: readonly { readonly letter: string; readonly at: Point }[], x: number): readonly Mark[] {
  const apart = 26;
  const sorted = marked.toSorted((one, other) => one.at[1] - other.at[1]);
  const first = Math.min(sorted[0]?.at[1] ?? 0, height - 14 - apart * (sorted.length - 1));
  return sorted.flatMap(({ letter, at }, index) => {
    const y = Math.max(first + index * apart, 14);
    const edge = x < at[0] ? x + 11 : x - 11;
    return [
      line(edge, y, at[0], at[1], 'thin'),
      { is: 'circle', x: at[0], y: at[1], radius: 2, look: 'solid' } as const,
      { is: 'circle', x, y, radius: 11, look: 'paper' } as const,
      label(x, y + 4.8, letter, { size: 13.5, anchor: 'middle', look: 'strong' }),
    ];
  });
}
