import { type OfferedPart, reason, showDecibels } from '@soundpost/core';
import { blank, bullet, grave, heading, type Line, paragraph, plainLines } from '../layout/line.ts';
import { table } from '../layout/table.ts';
import type { Manner } from '../manner.ts';
import { counted } from './values-text.ts';

/** Side by side first, then each offer by itself. */
export function offerLines(offers: readonly OfferedPart[], manner: Manner): readonly Line[] {
  const [first] = offers;
  if (first === undefined) return [];
  return [
    ...heading(`Offered in the place of ${first.asked}, at ${counted(first.points.length, 'point')}`, manner.width),
    ...(first.points.length === 0
      ? grave(`${first.asked} stands at no point with a chain: an offer in its place changes nothing.`, manner.width)
      : []),
    ...plainLines(
      table(
        [
          { head: 'Offered' },
          { head: 'Lost', align: 'right' },
          { head: 'Worse', align: 'right' },
          { head: 'Same', align: 'right' },
          { head: 'Better', align: 'right' },
          { head: 'Least margin', align: 'right' },
          { head: 'Not stated', align: 'right' },
        ],
        offers.map((each) => [
          each.offered,
          ...(['lost', 'worse', 'same', 'better'] as const).map((is) =>
            String(each.points.filter((point) => point.is === is).length),
          ),
          each.points.length === 0
            ? '–'
            : showDecibels(Math.min(...each.points.map(({ after }) => after.leastMargin)), 1, manner.showing.decimal),
          String(each.deviations.filter(({ deviation }) => deviation === 'not stated in the offer').length),
        ]),
        manner.width,
        '  ',
      ),
    ),
    ...paragraph(
      'Lost: a point that met every essential target and does not, or of which it can no longer be told. Against the ' +
        'stated targets and no others; values an offer gives as typical are not guaranteed ones.',
      manner.width,
    ),
    ...offers.flatMap((each) => [blank, ...oneOffer(each, manner)]),
  ];
}

function oneOffer(offer: OfferedPart, manner: Manner): readonly Line[] {
  const { width } = manner;
  const { difference } = offer;
  return [
    ...heading(`${offer.offered} for ${offer.asked}`, width),
    ...deviationLines(offer, manner),
    ...offer.points
      .filter(({ is }) => is !== 'same')
      .flatMap((each) => {
        const { decimal } = manner.showing;
        const [was, now] = [each.before, each.after].map(
          ({ outcome, leastMargin }) => `${outcome}, ${showDecibels(leastMargin, 1, decimal)}`,
        );
        const lines = bullet(`${each.point}, ${each.is}: ${was} → ${now}`, width);
        return each.is === 'lost' ? lines.map((line) => ({ ...line, tone: 'grave' as const })) : lines;
      }),
    ...difference.unproven.flatMap(({ at, target, after, decides }) =>
      bullet(
        `${at}, ${target}: now ${after}${decides === undefined ? '' : `; ${reason(decides, manner.showing)}`}`,
        width,
        '    ',
      ),
    ),
    ...(difference.testsToRepeat.length === 0
      ? []
      : paragraph(
          `Commissioning tests to be made again, and values to be set again (${changedSorts(offer)}), at ${counted(difference.testsToRepeat.length, 'point')}.`,
          width,
        )),
  ];
}

function changedSorts({ difference }: OfferedPart): string {
  const sorts = [...new Set(difference.changes.map((each) => each.sort))];
  return sorts.length === 0 ? 'none that is worked out' : sorts.join(', ');
}

function deviationLines({ deviations, otherKind, asked }: OfferedPart, { width }: Manner): readonly Line[] {
  if (otherKind) {
    return paragraph(`Of another kind than ${asked}: the data sheets do not compare line by line.`, width);
  }
  const unlike = deviations.filter(({ deviation }) => deviation !== 'same');
  if (unlike.length === 0) return paragraph('The data sheet states the same, line by line.', width);
  return plainLines(
    table(
      [{ head: 'Deviation' }, { head: 'Asked' }, { head: 'Offered' }],
      unlike.map(({ meaning, asked: was, offered }) => [meaning, was ?? 'not stated', offered ?? 'NOT STATED']),
      width,
      '  ',
    ),
  );
}
