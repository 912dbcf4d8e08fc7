import { nearest, Refusal } from '../quantity/index.ts';
import {
  type Binary,
  binaryFunctions,
  difference,
  negative,
  power,
  product,
  quotient,
  sum,
  type Unary,
  unaryFunctions,
} from './operations.ts';
import { type Token, tokensOf } from './tokens.ts';

/** A model as it is computed: numbers and names joined by operations. */
export type ModelTerm =
  | { readonly is: 'number'; readonly value: number }
  | { readonly is: 'name'; readonly name: string }
  | { readonly is: 'unary'; readonly operation: Unary; readonly of: ModelTerm }
  | { readonly is: 'binary'; readonly operation: Binary; readonly left: ModelTerm; readonly right: ModelTerm };

export interface Expression {
  readonly text: string;
  /** What stands before the equals sign, where there is one. */
  readonly measurand: string | undefined;
  readonly term: ModelTerm;
  /** The names it asks for, each with the column where it first stands, counted from 1. */
  readonly names: ReadonlyMap<string, number>;
}

const longest = 2000;
const deepest = 100;

const unaryNamed = new Map(unaryFunctions.map((each) => [each.name, each]));
const binaryNamed = new Map(binaryFunctions.map((each) => [each.name, each]));
const constants = new Map([['pi', Math.PI]]);
const functionNames = [...unaryNamed.keys(), ...binaryNamed.keys()];

/** Words that a model cannot use as the name of an input. */
export const reservedNames: readonly string[] = [...functionNames, ...constants.keys()];

const namePattern = /^[\p{L}_][\p{L}\p{N}_]*$/u;

/** Whether a word can be the name of an input of a model. */
export function canBeName(word: string): boolean {
  return namePattern.test(word) && word.length <= 60 && !reservedNames.includes(word);
}

/**
 * Reads a model such as `R = V / I * cos(phi)`: + − * / ^ with the usual precedence (^ first and from the right, then
 * the sign, so −x^2 is −(x^2)), parentheses, numbers, names, pi, and the functions of operations.ts. At most 2000
 * characters and 100 levels deep. Throws Refusal with the column.
 */
export function parseExpression(text: string): Expression {
  if (text.length > longest) {
    throw new Refusal({ read: text, expected: `a model of at most ${longest} characters` });
  }
  const equals = text.indexOf('=');
  const measurand = equals < 0 ? undefined : text.slice(0, equals).trim();
  if (measurand !== undefined && !canBeName(measurand)) {
    throw new Refusal({ read: text, expected: "one name before the equals sign, such as 'R = V / I'" });
  }
  return new Reader(text, equals + 1, measurand).expression();
}

class Reader {
  readonly #text: string;
  readonly #measurand: string | undefined;
  readonly #tokens: readonly Token[];
  readonly #names = new Map<string, number>();
  #next = 0;
  #depth = 0;

  constructor(text: string, start: number, measurand: string | undefined) {
    this.#text = text;
    this.#measurand = measurand;
    this.#tokens = tokensOf(text, start);
  }

  expression(): Expression {
    const term = this.#sum();
    const left = this.#peek();
    if (left.is !== 'end') {
      const joined = left.is === 'sign' && left.text !== '(' ? undefined : "A product is written with '*'.";
      throw this.#refusal(left, 'an operator (+ - * / ^) or the end', joined);
    }
    return { text: this.#text.trim(), measurand: this.#measurand, term, names: this.#names };
  }

  #sum(): ModelTerm {
    let left = this.#product();
    for (;;) {
      if (this.#taken('+')) left = { is: 'binary', operation: sum, left, right: this.#product() };
      else if (this.#taken('-')) left = { is: 'binary', operation: difference, left, right: this.#product() };
      else return left;
    }
  }

  #product(): ModelTerm {
    let left = this.#signed();
    for (;;) {
      if (this.#taken('*')) left = { is: 'binary', operation: product, left, right: this.#signed() };
      else if (this.#taken('/')) left = { is: 'binary', operation: quotient, left, right: this.#signed() };
      else return left;
    }
  }

  #signed(): ModelTerm {
    if (this.#taken('-')) return this.#deeper(() => ({ is: 'unary', operation: negative, of: this.#signed() }));
    if (this.#taken('+')) return this.#deeper(() => this.#signed());
    return this.#power();
  }

  #power(): ModelTerm {
    const left = this.#primary();
    if (!this.#taken('^')) return left;
    return this.#deeper(() => ({ is: 'binary', operation: power, left, right: this.#signed() }));
  }

  #primary(): ModelTerm {
    const token = this.#peek();
    this.#next++;
    if (token.is === 'number') return { is: 'number', value: this.#number(token) };
    if (token.is === 'name') return this.#named(token);
    if (token.is === 'sign' && token.text === '(') {
      const inside = this.#deeper(() => this.#sum());
      this.#close(token);
      return inside;
    }
    throw this.#refusal(
      token,
      "a number, a name or '('",
      token.text === '*' ? "A power is written with '^'." : undefined,
    );
  }

  #named(token: Token): ModelTerm {
    const name = token.text;
    const constant = constants.get(name);
    if (constant !== undefined) return { is: 'number', value: constant };
    const isCall = this.#peek().text === '(';
    const unary = unaryNamed.get(name);
    const binary = binaryNamed.get(name);
    if (isCall) {
      if (unary !== undefined) return { is: 'unary', operation: unary, of: this.#arguments(token, 1)[0]! };
      if (binary !== undefined) {
        const [first, ...rest] = this.#arguments(token, 2);
        return rest.reduce((left, right) => ({ is: 'binary', operation: binary, left, right }) as const, first!);
      }
      const near = nearest(name, functionNames);
      const hint = near === undefined ? "A product is written with '*'." : `Did you mean '${near}'?`;
      throw this.#refusal(token, `a function: ${functionNames.join(', ')}`, hint);
    }
    if (unary !== undefined || binary !== undefined) {
      throw this.#refusal(this.#peek(), `'(' after the function ${name}`);
    }
    if (!this.#names.has(name)) this.#names.set(name, token.column);
    return { is: 'name', name };
  }

  #arguments(named: Token, least: 1 | 2): readonly ModelTerm[] {
    const open = this.#peek();
    this.#next++;
    const list = this.#deeper(() => {
      const terms = [this.#sum()];
      while (this.#taken(',')) terms.push(this.#sum());
      return terms;
    });
    this.#close(open);
    if (least === 1 ? list.length === 1 : list.length >= 2) return list;
    const count = least === 1 ? 'one argument' : 'two or more arguments';
    const decimals = least === 1 ? 'Decimals are written with a point; the comma parts arguments.' : undefined;
    throw this.#refusal(named, `${count} of ${named.text}, not ${list.length},`, decimals);
  }

  #number(token: Token): number {
    const value = Number(token.text);
    if (Number.isFinite(value)) return value;
    throw this.#refusal(token, 'a number that can be computed with');
  }

  #close(open: Token): void {
    if (this.#taken(')')) return;
    const token = this.#peek();
    throw this.#refusal(token, `')' to close the '(' at column ${open.column}`);
  }

  #deeper<T>(read: () => T): T {
    this.#depth++;
    if (this.#depth > deepest) {
      throw this.#refusal(this.#peek(), `a model of at most ${deepest} levels of parentheses, signs and powers`);
    }
    const result = read();
    this.#depth--;
    return result;
  }

  #peek(): Token {
    return this.#tokens[Math.min(this.#next, this.#tokens.length - 1)]!;
  }

  #taken(sign: string): boolean {
    const token = this.#peek();
    if (token.is !== 'sign' || token.text !== sign) return false;
    this.#next++;
    return true;
  }

  #refusal(token: Token, expected: string, suggestion?: string): Refusal {
    const found = token.is === 'end' ? 'the end' : `'${token.text}'`;
    return new Refusal({
      read: this.#text.trim(),
      expected: `${expected} at column ${token.column}, where ${found} stands`,
      ...(suggestion === undefined ? {} : { suggestion }),
    });
  }
}
