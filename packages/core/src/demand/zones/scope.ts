import { type Finding, finding, type Weight } from '../../finding/finding.ts';
import { measured, measuredSpan, type Said, said, saidTogether } from '../../finding/measure.ts';
import type { Length, Quantity, QuantityName, Span, Stated } from '../../quantity/index.ts';
import { iso20816x1 } from '../../source/iso-20816-1.ts';
import { type Acquaintance, type Clause, clause } from '../../source/source.ts';
import type { Extent, Support, ZoneTable } from './zone-table.ts';

/** What a table asks of the machine: each stated, or unknown, perhaps between bounds. */
export interface MachineFacts {
  readonly power: Stated<Quantity<'power'>>;
  readonly speed: Stated<Span<'shaft speed'>>;
  readonly support: Stated<Support>;
  /** Of an electrical machine only. */
  readonly shaftHeight?: Stated<Length>;
}

/** How the numbers of a table are known, to the person who would rely on them. */
export function acquaintance(table: ZoneTable): Acquaintance {
  return table.cited.how ?? table.cited.source.how;
}

/**
 * What stands between a table and its use on a machine: outside its power, speed or support it must not judge, an
 * unknown is asked, and a table that nobody here read in the standard is to be confirmed in a licensed copy.
 */
export function scopeFindings(facts: MachineFacts, table: ZoneTable, at: string): readonly Finding[] {
  return [
    ...sizeFindings(facts, table, at),
    ...speedFindings(facts.speed, table, at),
    ...supportFindings(facts.support, table, at),
    ...kindFindings(table, at),
    ...provenanceFindings(table, at),
  ];
}

interface Judged {
  readonly rule: string;
  readonly what: string;
  readonly limit: Said;
  readonly found: Said;
}

/** Inside, outside, or not known well enough to tell. */
type Place = 'inside' | 'outside' | 'unknown';

function speak(place: Place, judged: Judged, table: ZoneTable, at: string): readonly Finding[] {
  if (place === 'inside') return [];
  const weight: Weight = place === 'outside' ? 'blocks-issue' : 'question';
  return [
    finding({
      rule: judged.rule,
      weight,
      at,
      found:
        place === 'outside'
          ? said`${judged.what}: ${judged.found}`
          : said`${judged.what} is not known: ${judged.found}`,
      limit: said`${judged.limit} (${table.title})`,
      because:
        place === 'outside'
          ? 'The table does not speak of this machine; its zones would be numbers without meaning.'
          : 'Whether the table speaks of this machine depends on it.',
      remedy:
        place === 'outside'
          ? ['take a table whose scope holds the machine', "enter the owner's own limits with their source"]
          : [`state the ${judged.what}`],
      sources: [table.cited],
      ...(place === 'unknown'
        ? { asks: `What is the ${judged.what} of the machine? Its nameplate or drawing says.` }
        : {}),
    }),
  ];
}

function bounds<T>(stated: Stated<T>): { readonly low: T; readonly high: T } | undefined {
  return stated.known ? { low: stated.value, high: stated.value } : stated.between;
}

/** Wholly inside, wholly outside, or astride, which is unknown where the value itself is unknown and outside where not. */
function placeOf(low: boolean, high: boolean, apart: boolean, known: boolean): Place {
  if (low && high) return 'inside';
  return known || apart ? 'outside' : 'unknown';
}

function sizeFindings(facts: MachineFacts, table: ZoneTable, at: string): readonly Finding[] {
  const { power, shaftHeight } = table.scope;
  if (shaftHeight !== undefined && facts.shaftHeight !== undefined) {
    const { from, below } = shaftHeight;
    const range = bounds(facts.shaftHeight);
    const inside = (height: number) => height >= from && (below === undefined || height < below);
    const apart = range !== undefined && (range.high < from || (below !== undefined && range.low >= below));
    const limit = said`${measured('length', from)} or more${below === undefined ? '' : said`, below ${measured('length', below)}`}`;
    const judged = { rule: 'zones/shaft-height', what: 'shaft height', limit, found: shown('length', range) };
    const place =
      range === undefined ? 'unknown' : placeOf(inside(range.low), inside(range.high), apart, facts.shaftHeight.known);
    return speak(place, judged, table, at);
  }
  if (power === undefined) return [];
  const range = bounds(facts.power);
  const inside = (value: number) => value > (power.above ?? -1) && value <= (power.upTo ?? Number.POSITIVE_INFINITY);
  const apart =
    range !== undefined && (range.high <= (power.above ?? -1) || range.low > (power.upTo ?? Number.POSITIVE_INFINITY));
  const judged = { rule: 'zones/power', what: 'power', limit: extentInWords(power), found: shown('power', range) };
  const place =
    range === undefined ? 'unknown' : placeOf(inside(range.low), inside(range.high), apart, facts.power.known);
  return speak(place, judged, table, at);
}

function extentInWords({ above, upTo }: Extent): Said {
  const low = above === undefined ? '' : said`above ${measured('power', above)}`;
  const high = upTo === undefined ? '' : said`up to ${measured('power', upTo)}`;
  return saidTogether(
    [low, high].filter((each) => each !== ''),
    ', ',
  );
}

function shown(name: QuantityName, range: { readonly low: number; readonly high: number } | undefined): Said {
  return range === undefined ? 'nothing stated' : measuredSpan(name, range as Span);
}

function speedFindings(speed: MachineFacts['speed'], table: ZoneTable, at: string): readonly Finding[] {
  const limits = table.scope.speed;
  if (limits === undefined) return [];
  const range = speed.known
    ? speed.value
    : speed.between && { low: speed.between.low.low, high: speed.between.high.high };
  // Limits are written in r/min and read into hertz: a part in 1e9 of slack.
  const inside = (value: number) => value >= limits.from * (1 - 1e-9) && value <= limits.to * (1 + 1e-9);
  const judged = {
    rule: 'zones/speed',
    what: 'shaft speed',
    limit: measuredSpan('shaft speed', { low: limits.from, high: limits.to } as Span),
    found: shown('shaft speed', range),
  };
  const apart = range !== undefined && (range.high < limits.from || range.low > limits.to);
  const place = range === undefined ? 'unknown' : placeOf(inside(range.low), inside(range.high), apart, speed.known);
  return speak(place, judged, table, at);
}

function supportFindings(support: Stated<Support>, table: ZoneTable, at: string): readonly Finding[] {
  const asked = table.scope.support;
  if (asked === undefined || (support.known && support.value === asked)) return [];
  if (support.known) {
    const judged = { rule: 'zones/support', what: 'support', limit: asked, found: support.value };
    return speak('outside', judged, table, at);
  }
  return [
    finding({
      rule: 'zones/support',
      weight: 'question',
      at,
      found: 'whether the support is rigid or flexible is not known',
      limit: `${asked} (${table.title})`,
      because: 'The limits of the two differ by half, and the same machine may be rigid in one direction only.',
      remedy: [
        'compare the lowest natural frequency of machine and support with the main exciting frequency: rigid where it is at least 25 % above',
      ],
      sources: [table.cited, clause(iso20816x1, 'rigid and flexible support', 'from memory')],
      asks: 'Is the support rigid in the measuring direction? A bump test or the foundation drawing says.',
    }),
  ];
}

function kindFindings(table: ZoneTable, at: string): readonly Finding[] {
  const { machines, excluded } = table.scope;
  return [
    finding({
      rule: 'zones/machine-kind',
      weight: 'notes',
      at,
      found: `judged by ${table.title}`,
      limit: excluded === undefined ? machines : `${machines}; not for ${excluded}`,
      because: 'The kind of machine is checked by a reader: the scope is words.',
      remedy: [],
      sources: [table.cited],
    }),
  ];
}

const unread: Readonly<Record<Acquaintance, Weight | undefined>> = {
  read: undefined,
  'second-hand': 'warns',
  'from memory': 'warns',
  'common practice, no source': 'warns',
  'computed here': 'warns',
};

function provenanceFindings(table: ZoneTable, at: string): readonly Finding[] {
  const how = acquaintance(table);
  const weight = unread[how];
  if (weight === undefined) return [];
  const sources: readonly Clause[] = [table.cited];
  return [
    finding({
      rule: 'zones/unverified-table',
      weight,
      at,
      found: `limits of ${table.title}, known here ${how === 'second-hand' ? 'second-hand' : how}`,
      limit: 'limits read in the standard itself',
      because: `Nobody here read these numbers in the edition they are named after.${table.doubt === undefined ? '' : ` ${table.doubt}`}`,
      remedy: ['confirm in a licensed copy, or enter the confirmed limits as a table of your own'],
      sources,
    }),
  ];
}
