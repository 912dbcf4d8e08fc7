const signs: Readonly<Record<string, string>> = { '&': '&amp;', '<': '&lt;', '>': '&gt;', '"': '&quot;' };
const escaped = (text: string): string => text.replace(/[&<>"]/g, (sign) => signs[sign]!);

/** A page of a heading and a few sentences, without style or script. */
export function plainPage(title: string, ...sentences: readonly string[]): string {
  const body = sentences.map((each) => `<p>${escaped(each)}</p>`).join('\n');
  return `<!doctype html>
<html lang="en">
<head><meta charset="utf-8"><meta name="viewport" content="width=device-width, initial-scale=1"><title>${escaped(title)}</title></head>
<body>
<h1>${escaped(title)}</h1>
${body}
</body>
</html>
`;
}

const newAddress =
  'Press Enter in the terminal where soundpost serve runs to get a new address, or end it with Ctrl-C and start it again.';

export const usedPage = plainPage(
  'This address was used before',
  'An address opens the workbench once only.',
  newAddress,
);

export const strangerPage = plainPage(
  'Open the workbench by its address',
  'This browser has not come in by the address that soundpost serve printed, or the server was started again since.',
  newAddress,
);
