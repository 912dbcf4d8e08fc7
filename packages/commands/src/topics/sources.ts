import { sources, workings } from '@soundpost/core';
import { labelled, paragraph } from '../layout/line.ts';
import type { Topic } from './topic.ts';

/** Every source, how it is known here, and which workings lean on it. */
export const sourceTopics: readonly Topic[] = sources.map((source) => {
  const leaning = workings
    .filter((each) => each.sources.some((cited) => cited.source.id === source.id))
    .map((each) => each.name);
  return {
    is: 'source',
    name: source.id,
    title: source.title,
    lines: ({ width }) => [
      ...labelled('How it is known', source.how, width, '', 17),
      ...paragraph(source.note, width),
      ...(leaning.length === 0 ? [] : labelled('Leaning on it', leaning.join(', '), width, '', 17)),
    ],
    json: { is: 'source', ...source, workings: leaning },
  };
});
