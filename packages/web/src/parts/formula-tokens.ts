/** A piece of a formula as it is typed: `f_o`, `(`, `4800 µm`. */
export interface Token {
  readonly is: 'number' | 'word' | 'power' | 'operator' | 'opens' | 'closes' | 'bar';
  readonly text: string;
  /** Of a number its unit with detector and band; of a word its subscript. */
  readonly more?: string;
  /** Whether a space stands before it, and whether one stands behind it. */
  readonly spaced: boolean;
  readonly spacedAfter: boolean;
}

/** Words that take what follows them as their argument, even without brackets. */
export const functionWords: ReadonlySet<string> = new Set(
  'cos sin tan cosh sinh lg ln exp arg gcd lcm min max atan2'.split(' '),
);

const amount = String.raw`\d+(?:[.,]\d+)?(?:e[+\-−]?\d+)?`;
const number = new RegExp(String.raw`^(?:\d{4}-\d\d-\d\d|\+${amount}/−${amount}|${amount}(?:\.\.[−-]?${amount})?)`);
const unit =
  /^(?:°(?!\p{L})| ?(?:%(?:\/\p{L}+)?)| (?:\(µm\/s\)|[\p{L}°][\p{L}\d°²³]*)(?:·\p{L}[\p{L}\d²³]*)*(?:\/√?\p{L}[\p{L}\d²³]*)*)(?![\p{L}\d_^(])/u;
const detector = /^ (?:rms|derived peak|peak|pk|pp|average)\b/;
const band = new RegExp(String.raw`^ ${amount}\.\.${amount} Hz\b`);
const word = /^(?:[A-Za-z]+(?:[-'’][A-Za-z]+)*\d*|\p{L})/u;
const subscript = /^_(?:\(([^()]*)\)|([\p{L}\d]+))|^([₀-₉]+)/u;
const powers = '⁰¹²³⁴⁵⁶⁷⁸⁹';

/** Cuts a formula into its pieces. Undefined where a character has no meaning in a formula. */
export function tokensOf(formula: string): readonly Token[] | undefined {
  const tokens: Token[] = [];
  let rest = formula;
  while (rest.trim() !== '') {
    const spaced = /^\s/.test(rest);
    rest = rest.trimStart();
    const raised = tokens.at(-1)?.text === '^';
    const found = numberAt(rest, raised) ?? wordAt(rest) ?? signAt(rest);
    if (found === undefined) return undefined;
    rest = rest.slice(found.length);
    tokens.push({ ...found.token, spaced, spacedAfter: /^\s/.test(rest) });
  }
  return tokens;
}

interface Found {
  readonly token: Omit<Token, 'spaced' | 'spacedAfter'>;
  readonly length: number;
}

/** A raised number has no unit: what follows it is what the power is multiplied with. */
function numberAt(rest: string, raised: boolean): Found | undefined {
  const text = number.exec(rest)?.[0];
  if (text === undefined) return undefined;
  if (raised) return { token: { is: 'number', text }, length: text.length };
  let more = '';
  const taken = (pattern: RegExp) => {
    const found = pattern.exec(rest.slice(text.length + more.length))?.[0] ?? '';
    more += found;
    return found !== '';
  };
  if (!functionWords.has(/^ ([a-z]+)/.exec(rest.slice(text.length))?.[1] ?? '') && taken(unit) && taken(detector)) {
    taken(band);
  }
  return { token: { is: 'number', text, ...(more === '' ? {} : { more }) }, length: text.length + more.length };
}

function wordAt(rest: string): Found | undefined {
  if (/^[Σ∂]/u.test(rest)) return undefined;
  const text = word.exec(rest)?.[0];
  if (text === undefined) return undefined;
  return withSubscript('word', text, rest);
}

function withSubscript(is: Token['is'], text: string, rest: string): Found {
  const below = subscript.exec(rest.slice(text.length));
  if (below === null) return { token: { is, text }, length: text.length };
  const more = below[1] ?? below[2] ?? [...below[3]!].map((each) => each.codePointAt(0)! - 0x2080).join('');
  return { token: { is, text, more }, length: text.length + below[0].length };
}

function signAt(rest: string): Found | undefined {
  const sign = [...rest][0]!;
  if (powers.includes(sign)) return { token: { is: 'power', text: String(powers.indexOf(sign)) }, length: sign.length };
  if ('([⌊'.includes(sign)) return { token: { is: 'opens', text: sign }, length: 1 };
  if (')]⌋'.includes(sign)) return { token: { is: 'closes', text: sign }, length: 1 };
  if (sign === '|') return { token: { is: 'bar', text: sign }, length: 1 };
  if ('ΣΠ∫'.includes(sign)) return withSubscript('operator', sign, rest);
  if ('=≈≤≥<>+-−±∓·×÷/^√∂…,;:∞'.includes(sign)) return { token: { is: 'operator', text: sign }, length: 1 };
  return undefined;
}
