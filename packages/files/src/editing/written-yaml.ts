import fc from 'fast-check';
import type { Edit } from './edit.ts';
import { indented } from './yaml-fragment.ts';
import { entriesOf, rootOf, yamlSource } from './yaml-source.ts';

const word = fc.constantFrom('power', 'P-301', 'drive end', 'x', 'y', 'motor', '"q u"', "'012'");
const scalar = fc.constantFrom(
  ...['160 kW', '1.50', '012', '"a, b"', "'it''s'", 'true', '~', 'on plate, left', '', '2..1000 Hz', '"a\n  b"'],
);
const remark = fc.constantFrom('', '', '', ' # note', '   # § 20 °C');

/** YAML as people write it, with every style of the plant file and with remarks in between. */
const { block } = fc.letrec<{ flow: string; block: string; value: string }>((tie) => ({
  flow: fc.oneof(
    { depthSize: 'small', withCrossShrink: true },
    fc.constantFrom('1', '160 kW', '"a, b"', "'x'", 'a b'),
    fc
      .uniqueArray(fc.tuple(word, tie('flow')), { maxLength: 3, selector: ([key]) => key })
      .map((all) => `{ ${all.map(([k, v]) => `${k}: ${v}`).join(', ')} }`),
    fc.array(tie('flow'), { maxLength: 3 }).map((all) => `[${all.join(', ')}]`),
  ),
  value: fc.oneof(
    { depthSize: 'small' },
    fc.tuple(scalar, remark).map(([v, r]) => ` ${v}${r}`),
    fc.tuple(tie('flow'), remark).map(([v, r]) => ` ${v}${r}`),
    fc.constantFrom(' |\n  one\n  two', ' >-\n  one\n\n  two', ' |+\n  one\n', ' |2\n    one'),
    fc.tuple(remark, tie('block'), fc.constantFrom(2, 4)).map(([r, b, n]) => `${r}\n${indented(b, n, 'every line')}`),
  ),
  block: fc.oneof(
    fc
      .uniqueArray(fc.tuple(word, tie('value'), fc.constantFrom('', '', '# about it\n', '\n')), {
        minLength: 1,
        maxLength: 4,
        selector: ([key]) => key,
      })
      .map((all) => all.map(([k, v, above]) => `${above}${k}:${v}`).join('\n')),
    fc
      .array(tie('value'), { minLength: 1, maxLength: 3 })
      .map((all) => all.map((v) => `-${v.startsWith('\n  ') ? ` ${v.slice(3)}` : v}`).join('\n')),
  ),
}));

export const text = fc
  .tuple(block, fc.boolean(), fc.boolean())
  .map(([b, ended, windows]) => (ended ? `${b}\n` : b).replaceAll('\n', windows ? '\r\n' : '\n'))
  .filter(isYaml);
export const fragment = fc.oneof(scalar, block, fc.constantFrom('{ a: 1 }', '|\n  one\n  two', '{}')).filter(isYaml);

function isYaml(yaml: string): boolean {
  try {
    return yamlSource(yaml) !== undefined;
  } catch {
    return false;
  }
}

export function pathsIn(yaml: string): Edit['path'][] {
  const walk = (node: ReturnType<typeof rootOf>, path: Edit['path']): Edit['path'][] => [
    ...(path.length === 0 ? [] : [path]),
    ...entriesOf(node).flatMap((each) => walk(each.node, [...path, each.key])),
  ];
  return walk(rootOf(yamlSource(yaml)), []);
}

export const parallel = (one: Edit['path'], other: Edit['path']): boolean =>
  one.some((key, at) => at < other.length && key !== other[at]);

export const plainly = (yaml: string | undefined) =>
  yaml === undefined ? undefined : yamlSource(yaml).document.toJS();
