import type { RefusalReason } from '@soundpost/core';

const quoteIt = 'If it is meant as text, put it in quotes.';

/** Why a lexeme is not read at all; undefined for those that are. */
export function forbiddenLexeme(type: string, source: string): RefusalReason | undefined {
  const about = forbidden[type];
  return about === undefined ? undefined : { read: source.trim(), ...about };
}

const forbidden: Readonly<Record<string, { readonly expected: string; readonly suggestion: string }>> = {
  anchor: {
    expected: 'a value that is said once, where it belongs (no YAML anchors)',
    suggestion: `Give the thing a name and refer to the name. ${quoteIt}`,
  },
  alias: {
    expected: 'a value that is said here (no YAML aliases)',
    suggestion: `Give the thing a name and refer to the name. ${quoteIt}`,
  },
  tag: { expected: 'a value without a YAML tag', suggestion: `What is meant follows from the key. ${quoteIt}` },
  'directive-line': { expected: 'no YAML directives', suggestion: 'Delete the line; YAML 1.2 is read.' },
  'explicit-key-ind': {
    expected: "a key followed by ':' (no '?' keys)",
    suggestion: `Write the key in front of its value. ${quoteIt}`,
  },
};

/** Words that every object of the language answers to: as keys they could stand for something that is not in the file. */
const reserved: ReadonlySet<string> = new Set([...Object.getOwnPropertyNames(Object.prototype), 'prototype']);
const longestKey = 200;

/** Why a key cannot be one; undefined where it can. */
export function reservedName(key: string, plain: boolean): RefusalReason | undefined {
  if (plain && key === '<<') {
    return {
      read: key,
      expected: 'keys that stand here themselves (no merge keys)',
      suggestion: 'Write out what is merged: a file says each thing once, where it belongs.',
    };
  }
  if (reserved.has(key)) {
    return { read: key, expected: 'a key that is not a reserved word', suggestion: 'Choose another name.' };
  }
  if (key.trim() === '') return { read: '', expected: "a key before the ':'" };
  if (key.length > longestKey) return { read: key, expected: `a key of at most ${longestKey} characters` };
  if (/[\p{Cf}\n\t]/u.test(key)) {
    return { read: key, expected: 'a key of visible characters in one line', suggestion: 'Type it anew.' };
  }
  return undefined;
}

/** An error of the YAML library as what was expected and what was probably meant. */
export function syntaxReason(code: string, message: string, line: string): RefusalReason {
  return {
    read: line,
    ...(meant(code, message, line) ?? syntax[code] ?? { expected: 'YAML', suggestion: `${message}.` }),
  };
}

/** What a line tells beyond the code of its error. */
function meant(code: string, message: string, line: string): { expected: string; suggestion: string } | undefined {
  const colons = line.split(/:\s|:$/).length - 1;
  if (colons === 0 && /^[^\s:'"]+:\S/.test(line)) {
    return { expected: "'key: value'", suggestion: "Is the space after the ':' missing?" };
  }
  if (code === 'BAD_INDENT' && message.startsWith('Flow')) return syntax.BLOCK_IN_FLOW;
  if (code === 'BLOCK_AS_IMPLICIT_KEY' && colons < 2) {
    return { expected: alignment.expected, suggestion: 'The next line is indented as if it belonged to this value.' };
  }
  return undefined;
}

const alignment = {
  expected: 'lines of one mapping or list to begin in the same column',
  suggestion: 'Check the indentation of this line and the lines above it.',
};

const syntax: Readonly<Record<string, { readonly expected: string; readonly suggestion: string }>> = {
  TAB_AS_INDENT: {
    expected: 'indentation by spaces',
    suggestion: 'Replace the tabs at the start of the line by spaces.',
  },
  BAD_INDENT: alignment,
  MULTILINE_IMPLICIT_KEY: alignment,
  BLOCK_AS_IMPLICIT_KEY: {
    expected: "one ':' with a space after it in a line",
    suggestion: "Put a text that holds ': ' in quotes; begin a mapping on a line of its own.",
  },
  BLOCK_IN_FLOW: { expected: "',' between the parts of […] or {…}", suggestion: 'Is a closing ] or } missing?' },
  BAD_SCALAR_START: {
    expected: "a text that does not begin with '@', '`' or '%'",
    suggestion: 'Put it in quotes.',
  },
  BAD_DQ_ESCAPE: { expected: "an escape known in double quotes, such as '\\n'", suggestion: 'Use single quotes.' },
  MISSING_CHAR: {
    expected: "'key: value' or '- value', with brackets and quotes closed",
    suggestion: "Is a ':' or a closing mark missing?",
  },
  KEY_OVER_1024_CHARS: { expected: 'a key of at most 200 characters', suggestion: "Is a ':' one too many?" },
  UNEXPECTED_TOKEN: {
    expected: "'key: value' or '- value'",
    suggestion: 'Is a quote, bracket or comma too many or missing? A text that begins with one goes in quotes.',
  },
};
