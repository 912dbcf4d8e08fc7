import { type Finding, finding } from '../finding/finding.ts';
import { iec60079x14 } from '../source/iec-60079-14.ts';
import { clause } from '../source/source.ts';

/** A point and the tag of the barrier channel its loop runs through. */
export interface ChannelUse {
  readonly point: string;
  readonly tag: string;
}

/** Two loops on one channel: what each allows in the field is then spent twice, and the signals meet. */
export function sharedChannels(uses: readonly ChannelUse[]): readonly Finding[] {
  const tags = [...new Set(uses.map((use) => use.tag))];
  return tags.flatMap((tag) => {
    const points = [...new Set(uses.filter((use) => use.tag === tag).map((use) => use.point))];
    if (points.length < 2) return [];
    return points.map((point) =>
      finding({
        rule: 'area/channel',
        weight: 'blocks-issue',
        at: point,
        found: `${points.length} loops on ${tag}: ${points.join(', ')}`,
        limit: 'one loop on one channel',
        because:
          'Each loop was compared with the whole of what the channel allows; two of them were compared with nothing.',
        remedy: ['a channel for each loop', 'a mended tag, if it was mistyped'],
        sources: [clause(iec60079x14, 'intrinsically safe circuits')],
      }),
    );
  });
}
