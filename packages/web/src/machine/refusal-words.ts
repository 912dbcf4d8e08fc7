/** Of a refusal only what was read and what was expected: the place in the file is the field it is shown at. */
export function refusalWords(message: string): string {
  const [said = message] = message.split(/\n\s*\d+ \|/);
  const begins = said.search(/(?:^|: )(?:read '|nothing |expected )/);
  return begins < 0 ? said.trim() : said.slice(begins).replace(/^: /, '').trim();
}
