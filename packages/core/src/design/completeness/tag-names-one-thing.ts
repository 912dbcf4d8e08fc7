import { type Finding, finding } from '../../finding/finding.ts';
import type { Design } from '../design.ts';
import { completenessRule } from './rule.ts';

const id = 'completeness/tag';
const remedy = ['give each thing a tag of its own', 'take out the tag that belongs to nothing'];

export const tagNamesOneThing = completenessRule({
  id,
  title: 'Every tag names one thing that is there',
  prose:
    'A tag on a drawing that belongs to nothing sends somebody to look for it; one that two things carry sends them to ' +
    'the wrong one. Tags of points, and of the parts in their lines, are looked at.',
  remedy,
  sources: [],
  findings: (design) => [...twice(design), ...ofNothing(design)],
});

function twice({ machines }: Design): readonly Finding[] {
  const seen = new Set<string>();
  return machines
    .flatMap((machine) => machine.points)
    .flatMap(({ point }) => {
      const before = seen.has(point.of);
      seen.add(point.of);
      return before ? [about(point.of, `two points are called ${point.of}`, 'a tag for each point')] : [];
    });
}

/** Tags of the line beyond its parts, and points that a ground loop names and no machine has. */
function ofNothing({ machines, loops }: Design): readonly Finding[] {
  const points = machines.flatMap((machine) => machine.points);
  const names = new Set(points.map(({ point }) => point.of));
  const ofLines = points.flatMap(({ point, stated: { way } }) =>
    (way?.tags ?? [])
      .slice(way?.inLine.length ?? 0)
      .flatMap((tag) => (tag === undefined ? [] : [{ at: point.of, tag }])),
  );
  const ofLoops = loops.flatMap((loop) => loop.points.filter((each) => !names.has(each)));
  return [
    ...ofLines.map(({ at, tag }) => about(at, `the tag ${tag} belongs to no part of the line`, 'a part for each tag')),
    ...[...new Set(ofLoops)].map((each) =>
      about(each, 'a ground loop passes it and no machine has it', 'a point for each tag'),
    ),
  ];
}

function about(at: string, found: string, limit: string): Finding {
  return finding({
    rule: id,
    weight: 'blocks-issue',
    at,
    found,
    limit,
    because: 'Whoever follows the tag finds nothing, or the wrong thing.',
    remedy,
    sources: [],
  });
}
