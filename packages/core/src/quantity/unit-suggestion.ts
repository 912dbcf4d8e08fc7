import { sameDimension } from './dimension.ts';
import { nearest } from './nearest.ts';
import { type QuantityName, quantities } from './quantities.ts';
import { shortened } from './refusal.ts';
import { meaningFor, meaningsOf } from './unit-expression.ts';
import { knownUnitSymbols } from './units.ts';

/** What to do about a unit that cannot be read as one of the named quantities, in a sentence. Nothing is corrected. */
export function unitSuggestion(written: string, names: readonly QuantityName[]): string {
  const fits = (candidate: string) => names.some((name) => meaningFor(candidate, name) !== undefined);
  const text = shortened(written, 30);
  if (/^\d(?!\s*\/)/.test(written)) return 'Write no separator between thousands, not even a space.';
  if (/^(?:\.\.|…|[-–\u2212]|to\b)\s*[\d.]/.test(written)) return 'One value is asked for here, not a range.';
  const regrouped = regroupedDivision(written);
  if (regrouped !== undefined && fits(regrouped)) {
    return `'${text}' divides twice; write '${regrouped}', or 'per' for the first division.`;
  }
  const meanings = meaningsOf(written);
  if (meanings.length > 0) {
    return `'${text}' is a unit of ${quantitiesWith(meanings)}, and ${names.join(' or ')} is asked for.`;
  }
  const stranger = [...written.slice(0, 200)].find(
    (sign) => /\p{L}/u.test(sign) && !/[\p{Script=Latin}µμΩ]/u.test(sign),
  );
  if (stranger !== undefined) {
    const code = stranger.codePointAt(0)!.toString(16).toUpperCase().padStart(4, '0');
    return `'${shortened(stranger)}' (U+${code}) is a letter of another script that only looks like one of ours.`;
  }
  const usual = names.flatMap((name) => [...quantities[name].metric, ...quantities[name].us]);
  const variants = caseVariants(written)
    .filter(fits)
    .sort((a, b) => Number(usual.includes(b)) - Number(usual.includes(a)));
  if (variants.length > 0) {
    return `'${text}' is not a unit known here. Did you mean ${variants.map((each) => `'${each}'`).join(' or ')}?`;
  }
  const near = nearest(written, usual.filter(fits));
  return `'${text}' is not a unit known here.${near === undefined ? '' : ` Did you mean '${near}'?`}`;
}

/** `mV/in/s` as `mV/(in/s)`. */
function regroupedDivision(written: string): string | undefined {
  const parts = written.split('/').map((part) => part.trim());
  return parts.length === 3 && !/[()]/.test(written) ? `${parts[0]}/(${parts[1]}/${parts[2]})` : undefined;
}

function quantitiesWith(meanings: ReturnType<typeof meaningsOf>): string {
  const found = Object.entries(quantities)
    .filter(([name, { dimension }]) =>
      meanings.some(
        (meaning) =>
          sameDimension(meaning.dimension, dimension) && (meaning.counted === true) === (name === ('count' as string)),
      ),
    )
    .map(([name]) => name);
  return found.length === 0 ? 'no quantity used here' : found.slice(0, 3).join(' or ');
}

const bySmallLetters = new Map<string, string[]>();
for (const symbol of knownUnitSymbols) {
  const small = symbol.toLowerCase();
  bySmallLetters.set(small, [...(bySmallLetters.get(small) ?? []), symbol]);
}

/** The same letters with capitals where known symbols have them: `mv/G` as `mV/g`, `mhz` as `mHz` and `MHz`. */
function caseVariants(written: string): readonly string[] {
  let variants = [''];
  for (const piece of written.slice(0, 60).split(/([\p{L}°%]+)/u)) {
    const choices = bySmallLetters.get(piece.toLowerCase()) ?? [piece];
    variants = variants.flatMap((start) => choices.map((choice) => start + choice)).slice(0, 64);
  }
  return variants;
}
