import {
  type Clause,
  cableKinds,
  type Fields,
  inputKinds,
  machineElementKinds,
  mountKinds,
  showClause,
  supplyKinds,
  transducerKinds,
  windowKinds,
} from '@soundpost/core';
import { clauseJson } from '../json/finding-json.ts';
import { bullet, labelled, paragraph } from '../layout/line.ts';
import { fieldLines, fieldsJson } from './fields-text.ts';
import type { Topic } from './topic.ts';

interface Kind {
  readonly kind: string;
  readonly name: string;
  readonly sources: readonly Clause[];
  readonly fields?: Fields;
  readonly cautions?: readonly string[];
  readonly prose?: string;
}

function kindTopic(is: string, { kind, name, sources, fields, cautions = [], prose }: Kind): Topic {
  return {
    is,
    name: kind,
    title: name,
    lines: ({ width }) => [
      ...(prose === undefined ? [] : paragraph(prose, width)),
      ...(cautions.length === 0 ? [] : paragraph('The fitter must see to this:', width)),
      ...cautions.flatMap((each) => bullet(each, width)),
      ...(fields === undefined ? [] : fieldLines(fields, width)),
      ...sources.flatMap((each) => labelled('Source', showClause(each), width, '', 8)),
    ],
    json: {
      is,
      kind,
      name,
      ...(prose === undefined ? {} : { prose }),
      ...(cautions.length === 0 ? {} : { cautions }),
      ...(fields === undefined ? {} : { fields: fieldsJson(fields) }),
      sources: sources.map(clauseJson),
    },
  };
}

interface PartKindText {
  readonly kind: string;
  readonly name: string;
  readonly dataSheet: Fields;
  readonly sources: readonly Clause[];
  readonly cautions?: readonly string[];
}

function parts(is: string, kinds: readonly PartKindText[], prose?: (kind: PartKindText) => string): readonly Topic[] {
  return kinds.map((each) =>
    kindTopic(is, { ...each, fields: each.dataSheet, ...(prose === undefined ? {} : { prose: prose(each) }) }),
  );
}

interface ElementKindText {
  readonly kind: string;
  readonly name: string;
  readonly sheet: Fields;
  readonly places: readonly string[];
  readonly sources: readonly Clause[];
}

/** Every kind of part, of machine element and of window. */
export const kindTopics: readonly Topic[] = [
  ...parts('transducer kind', transducerKinds, (kind) =>
    'senses' in kind && kind.senses !== 'stated' ? `It senses ${kind.senses}.` : 'Its sheet states what it senses.',
  ),
  ...parts('mount kind', mountKinds),
  ...parts('cable kind', cableKinds),
  ...parts('supply kind', supplyKinds),
  ...parts('input kind', inputKinds),
  ...(machineElementKinds as readonly ElementKindText[]).map((each) =>
    kindTopic('machine element', {
      ...each,
      fields: each.sheet,
      prose: `It stands on shafts by the roles: ${each.places.join(', ')}.`,
    }),
  ),
  ...windowKinds.map((each) => kindTopic('window', { ...each, prose: each.use })),
];
