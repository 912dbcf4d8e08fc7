import { type Group, groups, type TemperatureClass, temperatureClasses } from '../demand/hazardous-area.ts';
import { type Answer, answer, Refusal, unanswered } from '../quantity/index.ts';
import { atmosphereOfGroup } from './group.ts';
import { type ProtectionConcept, protectionConcepts } from './protection-concept.ts';
import {
  atmosphereOf,
  levelOf,
  lowestRank,
  type ProtectionLevel,
  protectionLevels,
  type Rank,
  rankOf,
} from './protection-level.ts';

/** What a marking such as `Ex ia IIC T4 Ga` says. */
export interface Marking {
  readonly written: string;
  /** In square brackets: equipment outside whose circuits lead into the area. */
  readonly associated: boolean;
  readonly concepts: readonly ProtectionConcept[];
  readonly group: Group | undefined;
  /** `IIB+H2`: of group IIB, and for hydrogen as well. */
  readonly andHydrogen: boolean;
  readonly temperatureClass: TemperatureClass | undefined;
  /** Highest surface of a dust marking, in kelvin. */
  readonly highestSurface: number | undefined;
  /** As marked, or as the weakest concept gives it. */
  readonly level: ProtectionLevel;
}

const expected = "a marking such as 'Ex ia IIC T4 Ga', '[Ex ia Ga] IIC' or 'Ex ia IIIC T135°C Da'";

/** Reads a marking, or several with ` / ` or `;` between them. Throws Refusal where a word of it is not understood. */
export function parseMarkings(text: string): readonly Marking[] {
  const markings = text
    .split(/;|\s\/\s/)
    .map((each) => each.trim())
    .filter((each) => each !== '');
  if (markings.length === 0) throw new Refusal({ read: text, expected });
  return markings.map(parseMarking);
}

/** The category in front, `II 1 G` or `II (1) GD`, says the same again; so do degrees of sealing and the ambient. */
const beside =
  /^(?:⟨?Ex⟩?\s+)?I{1,2}\s+\(?[123]\)?(?:\s*\([123]\))?\s*\(?[GD]{1,2}\)?\s+|[-+−]?\d+\s*°C\s*(?:≤|<=?)\s*T.*$|\bIP\d\w+\b/gu;

function parseMarking(text: string): Marking {
  const plain = text.replace(beside, ' ').replace(/T\s*(\d+)\s*°\s*C/g, 'T$1°C');
  const bracket = /\[([^\]]*)\]/.exec(plain);
  if (!/\bA?Ex\b/.test(plain)) throw new Refusal({ read: text, expected });
  const words = (part: string) => part.split(/[\s[\]]+/).filter((each) => each !== '' && !/^A?Ex$/.test(each));
  // Of associated equipment the bracket speaks of the circuit; what stands outside speaks of its own place.
  const spoken = words(bracket === null ? plain : `${bracket[1]} ${groupBehind(plain)}`);
  let [group, temperatureClass, level]: [Group | undefined, TemperatureClass | undefined, ProtectionLevel | undefined] =
    [undefined, undefined, undefined];
  let highestSurface: number | undefined;
  let andHydrogen = false;
  const concepts: ProtectionConcept[] = [];
  for (const word of spoken) {
    const found = protectionConcepts.find((each) => each.letters === word);
    const surface = /^T(\d{2,3})°C$/.exec(word);
    if (found !== undefined) concepts.push(found);
    else if ((groups as readonly string[]).includes(word)) group = word as Group;
    else if (/^IIB\+H2$/i.test(word)) [group, andHydrogen] = ['IIB', true];
    else if ((temperatureClasses as readonly string[]).includes(word)) temperatureClass = word as TemperatureClass;
    else if (surface !== null) highestSurface = Number(surface[1]) + 273.15;
    else if ((protectionLevels as readonly string[]).includes(word)) level = word as ProtectionLevel;
    else throw new Refusal({ read: text, expected, suggestion: `'${word.slice(0, 20)}' is not understood.` });
  }
  const rank = lowestRank(concepts.map((each) => each.rank));
  if (rank === undefined) throw new Refusal({ read: text, expected, suggestion: 'It names no kind of protection.' });
  return {
    written: text,
    associated: bracket !== null,
    concepts,
    group,
    andHydrogen,
    temperatureClass,
    highestSurface,
    level: agreed(text, rank, level, group),
  };
}

/** The group of associated equipment stands inside the bracket or right behind it. */
function groupBehind(text: string): string {
  return /\]\s*(II[ABC](?:\+H2)?|III[ABC])\b/.exec(text)?.[1] ?? '';
}

function agreed(
  text: string,
  rank: Rank,
  level: ProtectionLevel | undefined,
  group: Group | undefined,
): ProtectionLevel {
  const atmosphere =
    group === undefined ? (level === undefined ? 'gas' : atmosphereOf(level)) : atmosphereOfGroup(group);
  if (level === undefined) return levelOf(rank, atmosphere);
  if (rankOf(level) < rank) {
    throw new Refusal({
      read: text,
      expected: `no higher level than its kind of protection reaches, ${levelOf(rank, atmosphere)}`,
      suggestion: 'Compare with the certificate; a letter may be mistyped.',
    });
  }
  if (atmosphereOf(level) !== atmosphere) {
    throw new Refusal({ read: text, expected: 'group and level both of gas or both of dust' });
  }
  return level;
}

/** The markings of a part as an answer: one that cannot be read is something still to be told. */
export function markingsOf(text: Answer<string>, of: string): Answer<readonly Marking[]> {
  if (!text.known) return text;
  try {
    return answer(parseMarkings(text.value));
  } catch (error) {
    if (!(error instanceof Refusal)) throw error;
    const { read, suggestion } = error.reason;
    return unanswered([
      { of, what: `marking as the certificate has it ('${read}'${suggestion ? `: ${suggestion}` : ''})` },
    ]);
  }
}
