import type { mountKinds } from '@soundpost/core';

type AnyMountKind = (typeof mountKinds)[number];

/** How a kind of mount is fitted: what must be known before, and what is done in which order. */
interface Fitting<Key extends string = string> {
  /** Fields of its sheet that whoever fits it needs; what is not stated is left to be filled in. */
  readonly fields: readonly Key[];
  /** Common practice, no source; without numbers, which stand in the table. */
  readonly steps: readonly string[];
  /** Whether the machine itself is cut into. */
  readonly cuts: boolean;
}

/** A field no sheet has, or a kind that is missing, does not compile. */
type Fittings = { readonly [K in AnyMountKind as K['kind']]: Fitting<keyof K['dataSheet'] & string> };

const tapped = [
  'preparation',
  'spotFace',
  'flatness',
  'roughness',
  'thread',
  'threadDepth',
  'studReach',
  'torque',
] as const;

const tapping: readonly string[] = [
  'Agree the place with the owner of the machine: what lies behind the wall, how thick it is, what warranty says. Mark it.',
  'Remove paint and scale down to bare metal, and cut the spot face square to the direction that is measured.',
  'Drill square to the face, in its middle, deeper than the thread; tap to the depth in the table and take out every chip.',
  'Check flatness and roughness against the table; stone off any burr around the hole.',
];

const fittings: Fittings = {
  stud: {
    fields: tapped,
    cuts: true,
    steps: [
      ...tapping,
      'Turn the stud in by hand: it must end before the bottom of the hole, and not stand proud of what the transducer takes.',
      'Wipe the faces, put on a thin film of coupling grease, and turn the transducer on by hand until the faces meet.',
      'Tighten with a torque wrench to the torque in the table, turning at the hexagon and never at the connector.',
    ],
  },
  'isolating-stud': {
    fields: tapped,
    cuts: true,
    steps: [
      ...tapping,
      'Turn the isolating stud in by hand and check that nothing bridges its layer: no chip, no grease with metal in it, no bracket.',
      'Tighten with a torque wrench to the torque in the table: too much breaks the layer.',
      'Measure the insulation between case and machine before the cable is connected, and write it down.',
    ],
  },
  'adhesive-pad': {
    fields: ['preparation', 'spotFace', 'flatness', 'roughness', 'temperature', 'thread', 'torque'],
    cuts: false,
    steps: [
      'Remove paint down to bare metal over the whole foot of the pad; degrease and let it dry.',
      'Mix and apply the adhesive as its maker says, press the pad down and turn it a little until the layer is thin and even.',
      'Hold it until it stands by itself and let it cure for the time and at the temperature its maker says.',
      'Turn the transducer on by hand and tighten it to the torque in the table.',
    ],
  },
  'quick-lock': {
    fields: ['preparation', 'spotFace', 'flatness', 'roughness', 'temperature', 'torque'],
    cuts: false,
    steps: [
      'Fix the pad to the machine as its maker says, screwed or with adhesive, on bare metal.',
      'Keep a cap on it whenever nothing is coupled.',
      'Wipe both faces, couple, and turn until it locks, with the same force each time.',
    ],
  },
  'flat-magnet': {
    fields: ['preparation', 'spotFace', 'flatness', 'roughness', 'pull', 'footWidth', 'temperature'],
    cuts: false,
    steps: [
      'Give the magnet a machined spot or a target disc of magnetic steel, bare of paint; mark it, so that each reading is taken there.',
      'Wipe both faces. Lower the magnet on its edge and let it down slowly.',
      'Try by hand that it neither rocks nor slides.',
    ],
  },
  'two-pole-magnet': {
    fields: ['preparation', 'pull', 'footWidth', 'temperature'],
    cuts: false,
    steps: [
      'Take off the paint where the two edges touch, and mark the place and the way the magnet points.',
      'Lower it on one edge, then let the other down slowly; try by hand that it does not rock.',
    ],
  },
  'hand-probe': {
    fields: ['preparation'],
    cuts: false,
    steps: [
      'Mark the place with a centre punch, away from anything that turns.',
      'Hold the probe square to the surface, with an even and gentle pressure, and keep still until the reading is settled.',
    ],
  },
};

export function fittingOf(kind: AnyMountKind['kind']): Fitting {
  return fittings[kind];
}
