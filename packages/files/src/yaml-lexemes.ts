import { CST, Lexer, Parser } from 'yaml';

/**
 * What the lexer hands over: `type` is that of the library, `value` for the text after its scalar mark. `offset` counts
 * from the start of the text.
 */
export interface Lexeme {
  readonly type: string;
  readonly source: string;
  readonly offset: number;
}

const scalarMark = '\x1f';

/** The lexemes of a YAML text with their offsets. Linear in the text; nothing nests yet. */
export function* lexemesOf(text: string): Generator<Lexeme, void> {
  let offset = 0;
  let afterMark = false;
  for (const source of new Lexer().lex(text)) {
    const type = afterMark ? 'value' : (CST.tokenType(source) ?? 'unknown');
    yield { type, source, offset };
    afterMark = source === scalarMark && !afterMark;
    if (type !== 'scalar' && type !== 'doc-mode' && type !== 'flow-error-end') offset += source.length;
  }
}

/** Beyond these the file is refused anyway, and the rest of a hostile one may be all errors. */
const mostErrors = 5;

/**
 * The syntax tree, with comments and blank lines of their own left out: they say nothing to a reader, and a flood of
 * them would cost the parser time. `nested` hears how many collections are open at each lexeme.
 */
export function* syntaxOf(text: string, nested: (depth: number, offset: number) => void): Generator<CST.Token, void> {
  const parser = new Parser();
  let held: Lexeme[] = [];
  let lineIsBlank = true;
  let errors = 0;
  for (const lexeme of lexemesOf(text)) {
    const { type, source, offset } = lexeme;
    if (lineIsBlank && type === 'space') {
      held.push(lexeme);
      continue;
    }
    if (lineIsBlank && (type === 'newline' || type === 'comment')) {
      if (type === 'newline') held = [];
      continue;
    }
    for (const each of [...held, lexeme]) {
      parser.offset = each.offset;
      for (const token of parser.next(each.source)) {
        if (token.type === 'error' && ++errors > mostErrors) return;
        yield token;
      }
    }
    held = [];
    nested(collectionsIn(parser.stack), offset);
    if (type === 'value') lineIsBlank = source.endsWith('\n');
    else if (type === 'newline') lineIsBlank = true;
    else if (type !== 'doc-mode') lineIsBlank = false;
  }
  yield* parser.end();
}

/** The stack holds the document, the open collections, and a scalar that is being read. */
function collectionsIn(stack: readonly CST.Token[]): number {
  return stack.length - 1 - (stack.at(-1)?.type.includes('scalar') === true ? 1 : 0);
}
